import { constantDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { type SolvedLine, solveTowedLine, type TowedLine } from "../../server/physics/towed-line.ts";

/** Lake water at 10 C. */
export const WATER = { densityKgM3: 999.7, kinematicViscosityM2S: 1.307e-6 } as const;

/** One cable with a body at its end, by a few plain numbers. */
export interface CableAndBody {
  readonly lengthM: number;
  readonly diameterM: number;
  readonly weightNPerM: number;
  readonly coefficient: number;
  readonly tangential: number;
  readonly bodyWeightN: number;
  readonly bodyDragM2: number;
  readonly speedMS: number;
}

export function lineOf(cable: CableAndBody): TowedLine {
  const { lengthM, diameterM, weightNPerM, bodyWeightN, bodyDragM2 } = cable;
  return {
    segments: [
      {
        lengthM,
        diameterM,
        weightNPerM,
        normalDrag: constantDrag(cable.coefficient),
        tangentialCoefficient: cable.tangential,
      },
    ],
    bodies: [{ node: 1, weightN: bodyWeightN, dragAreaM2: bodyDragM2, liftAreaM2: 0, forceXN: 0 }],
  };
}

/** The solved line, or a thrown reason. */
export function solved(line: TowedLine, speedMS: number): SolvedLine {
  const answer = solveTowedLine(line, WATER, uniformFlow(speedMS));
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

/** Throws unless two numbers agree to within `allowed`. */
export function expectNear(name: string, actual: number, expected: number, allowed: number): void {
  if (!(Math.abs(actual - expected) <= allowed))
    throw new Error(`${name}: got ${actual}, expected ${expected} ± ${allowed}`);
}
