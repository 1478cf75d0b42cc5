import { constantDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { type SolvedLine, solveTowedLine } from "../../server/physics/towed-line.ts";

/** One line with a constant drag coefficient and none along it, and what pulls at its lower end. */
export interface Line {
  readonly lengthM: number;
  readonly weightNPerM: number;
  readonly coefficient: number;
  readonly diameterM: number;
  readonly speedMS: number;
  readonly endWeightN: number;
  readonly endDragAreaM2: number;
  readonly endForceXN: number;
  readonly densityKgM3: number;
}

/** A meter of line without weight or drag, in still water of 1000 kg/m3. */
export const RESTING: Line = {
  lengthM: 1,
  weightNPerM: 0,
  coefficient: 0,
  diameterM: 0.001,
  speedMS: 0,
  endWeightN: 0,
  endDragAreaM2: 0,
  endForceXN: 0,
  densityKgM3: 1000,
};

/** Its shape and forces; throws where the solver refuses. */
export function solved(line: Line): SolvedLine {
  const answer = solveTowedLine(
    {
      segments: [
        {
          lengthM: line.lengthM,
          diameterM: line.diameterM,
          weightNPerM: line.weightNPerM,
          normalDrag: constantDrag(line.coefficient),
          tangentialCoefficient: 0,
        },
      ],
      bodies: [
        {
          node: 1,
          weightN: line.endWeightN,
          dragAreaM2: line.endDragAreaM2,
          liftAreaM2: 0,
          forceXN: line.endForceXN,
        },
      ],
    },
    { densityKgM3: line.densityKgM3, kinematicViscosityM2S: 1.3e-6 },
    uniformFlow(line.speedMS),
  );
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}
