/** Long lines in feet and mph, for the tests. */
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import type { LineMaterial } from "../../server/physics/line-materials.ts";
import type { LongLine } from "../../server/physics/long-line.ts";
import { type BandedLongLine, solveLongLineBand } from "../../server/physics/long-line-band.ts";
import { defaultLongLineSpreads, longLineParameters } from "../../server/physics/long-line-parameters.ts";
import { type LineInUse, type LureForces, lureForces } from "../../server/physics/lure.ts";
import { FOOT_M, MPH_MS, make } from "./rig-maker.ts";

/** A line of a material and a diameter in mm, as rough as lines are taken to be. */
export function lineInUse(material: LineMaterial, diameterMm: number): LineInUse {
  return { make: make(material, diameterMm), dragMultiplier: 1.2 };
}

/** A main line out at a speed with a 30 ft nylon leader and a spoon, and any changes. */
export function longLine(
  main: LineInUse,
  outFt: number,
  speedMph: number,
  change: Partial<LongLine> = {},
): LongLine {
  return {
    outM: outFt * FOOT_M,
    counterScale: 1,
    counterOffsetM: 0,
    flow: uniformFlow(speedMph * MPH_MS),
    waterTemperatureC: 10,
    salinityPsu: 0,
    main,
    below: [{ lengthM: 30 * FOOT_M, line: lineInUse("mono", 0.4) }],
    lure: lureForces("spoon"),
    ...change,
  };
}

/** A diver that pulls down about as one of a hand's size does. */
export const DIVER: LureForces = { weightN: 0, liftAreaM2: 0.0165, dragAreaM2: 0.0105 };

/** The answer with its band, or a thrown reason. */
export function banded(line: LongLine): BandedLongLine {
  const answer = solveLongLineBand(line, longLineParameters(defaultLongLineSpreads(0.1 * MPH_MS)));
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

/** The lure's depth in feet. */
export const lureFt = (line: LongLine): number => banded(line).lure.depthM / FOOT_M;
