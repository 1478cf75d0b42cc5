import { type LongLine, lineInWaterM } from "./long-line.ts";
import type { LineInUse, LureForces } from "./lure.ts";
import { type Reason, whyNotInRange } from "./refusal.ts";

/** What a long line may be asked; beyond these a number is a slip of the pen, not a way to fish. */
const LONG_LINE_LIMITS = {
  outM: 2000,
  belowM: 200,
  leastSpeedMS: 0.1,
  speedMS: 10,
  pieces: 5,
} as const;

/** Why a long line cannot be solved as stated, as a plain reason for the captain, or `undefined`. */
export function whyNoLongLine(line: LongLine): Reason | undefined {
  return (
    whyNotInRange("the line out", line.outM, 0, LONG_LINE_LIMITS.outM, "m") ??
    whyNotInRange("the counter's scale", line.counterScale, 0.2, 5, "") ??
    whyNotInRange("the counter's offset", line.counterOffsetM, -50, 50, "m") ??
    whyNoSpeed(line) ??
    whyNotInRange("the water temperature", line.waterTemperatureC, -2, 45, "C") ??
    whyNotInRange("the salinity", line.salinityPsu, 0, 42, "psu") ??
    whyNoLine(line.main, "the line") ??
    whyNotInRange("the length that the rig holds", line.mainAtMostM ?? 0, 0, 20_000, "m") ??
    (line.backing === undefined ? undefined : whyNoLine(line.backing, "the backing")) ??
    (line.joint === undefined ? undefined : whyNoForces(line.joint, "the diver or weight")) ??
    whyNotBelow(line) ??
    whyNoForces(line.lure, "the lure") ??
    whyNothingOut(line)
  );
}

/** A sheared profile is checked by the solver that takes it. */
function whyNoSpeed({ flow }: LongLine): Reason | undefined {
  if (flow.type !== "uniform") return undefined;
  const { speedMS } = flow;
  if (Number.isFinite(speedMS) && speedMS >= 0 && speedMS < LONG_LINE_LIMITS.leastSpeedMS)
    return "the boat hardly moves, and such a line is only known while it is towed";
  return whyNotInRange("the speed", speedMS, 0, LONG_LINE_LIMITS.speedMS, "m/s");
}

function whyNothingOut(line: LongLine): Reason | undefined {
  const { mainM, backingM } = lineInWaterM(line);
  if (mainM + backingM <= 0) return "no line is out";
  return backingM > 0 && line.backing === undefined
    ? "more is out than the rig holds, and what the rest is isn't known"
    : undefined;
}

function whyNotBelow({ below }: LongLine): Reason | undefined {
  if (below.length > LONG_LINE_LIMITS.pieces) return "the leader has too many pieces";
  for (const piece of below) {
    const why =
      whyNotInRange("the leader", piece.lengthM, 0, LONG_LINE_LIMITS.belowM, "m") ??
      whyNoLine(piece.line, "the leader") ??
      (piece.end === undefined ? undefined : whyNoForces(piece.end, "the flasher"));
    if (why !== undefined) return why;
  }
  return undefined;
}

function whyNoLine({ make, dragMultiplier }: LineInUse, name: string): Reason | undefined {
  return (
    whyNotInRange(`the diameter of ${name}`, make.diameterM, 5e-5, 0.02, "m") ??
    whyNotInRange(`the mass of a meter of ${name}`, make.massKgM, 0, 2, "kg") ??
    whyNotInRange(`the section of ${name}`, make.displacedM2, 0, 3.2e-4, "m2") ??
    whyNotInRange(`the drag multiplier of ${name}`, dragMultiplier, 0, 20, "")
  );
}

function whyNoForces({ weightN, dragAreaM2, liftAreaM2 }: LureForces, name: string): Reason | undefined {
  return (
    whyNotInRange(`the weight of ${name}`, weightN, -200, 200, "N") ??
    whyNotInRange(`the drag area of ${name}`, dragAreaM2, 0, 1, "m2") ??
    whyNotInRange(`the lift area of ${name}`, liftAreaM2, -1, 1, "m2")
  );
}
