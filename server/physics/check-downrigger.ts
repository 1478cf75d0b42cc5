import type { Downrigger, RodOnCable } from "./downrigger.ts";
import { cableOutM } from "./downrigger-cable.ts";
import { whyNoFlow } from "./flow-profile.ts";
import type { LineInUse } from "./lure.ts";
import { whyNotInRange } from "./refusal.ts";

/** What a downrigger may be asked; beyond these a number is a slip of the pen, not a way to fish. */
export const DOWNRIGGER_LIMITS = { lengthM: 2000, speedMS: 10, massKg: 200, rods: 12 } as const;

/** Why a downrigger cannot be solved as stated, as a plain reason for the captain, or `undefined`. */
export function whyNoDownrigger(rig: Downrigger): string | undefined {
  const { lengthM, speedMS } = DOWNRIGGER_LIMITS;
  return (
    whyNotInRange("the cable out on the counter", rig.outM, 0, lengthM, "m") ??
    whyNotInRange("the counter's scale", rig.counterScale, 0.2, 5, "") ??
    whyNotInRange("the counter's offset", rig.counterOffsetM, -50, 50, "m") ??
    whyNoFlow(rig.flow, 0, speedMS) ??
    whyNotInRange("the water temperature", rig.waterTemperatureC, -2, 45, "C") ??
    whyNotInRange("the salinity", rig.salinityPsu, 0, 42, "psu") ??
    whyNoLine(rig.cable, "the cable") ??
    whyNoBall(rig) ??
    whyNotInRange("the probe's height above the ball", rig.probeAboveBallM ?? 0, 0, lengthM, "m") ??
    whyNoRods(rig)
  );
}

function whyNoLine(line: LineInUse, name: string): string | undefined {
  return (
    whyNotInRange(`the diameter of ${name}`, line.make.diameterM, 5e-5, 0.02, "m") ??
    whyNotInRange(`the mass of a metre of ${name}`, line.make.massKgM, 0, 2, "kg") ??
    whyNotInRange(`the section of ${name}`, line.make.displacedM2, 0, 3.2e-4, "m2") ??
    whyNotInRange(`the drag multiplier of ${name}`, line.dragMultiplier, 0, 20, "")
  );
}

function whyNoBall(rig: Downrigger): string | undefined {
  const { massKg, densityKgM3, dragMultiplier, dragAreaM2 = 0 } = rig.ball;
  const why =
    whyNotInRange("the ball's mass", massKg, 0, DOWNRIGGER_LIMITS.massKg, "kg") ??
    whyNotInRange("the ball's density", densityKgM3, 1, 25_000, "kg/m3") ??
    whyNotInRange("the ball's drag multiplier", dragMultiplier, 0, 20, "") ??
    whyNotInRange("the ball's drag area", dragAreaM2, 0, 1, "m2");
  if (why !== undefined) return why;
  if (massKg === 0) return "the ball has no mass";
  return densityKgM3 < 1050 ? "the ball is not heavier than water, so it would not sink" : undefined;
}

function whyNoRods(rig: Downrigger): string | undefined {
  if (rig.rods.length > DOWNRIGGER_LIMITS.rods)
    return `${rig.rods.length} rods on one cable are more than ${DOWNRIGGER_LIMITS.rods}`;
  for (const rod of rig.rods) {
    const why = whyNoRod(rod);
    if (why !== undefined) return why;
    if (rod.releaseAboveBallM > 0 && rod.releaseAboveBallM > cableOutM(rig))
      return `the release of ${rod.id} is above the water: it sits farther above the ball than there is cable out`;
  }
  return undefined;
}

function whyNoRod(rod: RodOnCable): string | undefined {
  const { lengthM } = DOWNRIGGER_LIMITS;
  const { rodLine, lure, id } = rod;
  return (
    whyNotInRange(`the height of ${id}'s release above the ball`, rod.releaseAboveBallM, 0, lengthM, "m") ??
    whyNotInRange(`the setback of ${id}`, rod.setbackM, 0, lengthM, "m") ??
    whyNoLine(rod.lureLine, `${id}'s line`) ??
    whyNotInRange(`the weight of ${id}'s lure`, lure.weightN, -200, 200, "N") ??
    whyNotInRange(`the drag area of ${id}'s lure`, lure.dragAreaM2, 0, 1, "m2") ??
    whyNotInRange(`the lift area of ${id}'s lure`, lure.liftAreaM2, -1, 1, "m2") ??
    (rodLine === undefined
      ? undefined
      : (whyNotInRange(`the pull of ${id}'s rod`, rodLine.tipTensionN, 0, 500, "N") ??
        whyNotInRange(`the height of ${id}'s rod tip`, rodLine.tipHeightM, 0, 30, "m") ??
        whyNotInRange(`the place of ${id}'s rod tip`, rodLine.tipBehindM, -50, 50, "m") ??
        whyNotInRange(`the diameter of ${id}'s rod line`, rodLine.diameterM, 5e-5, 0.02, "m") ??
        whyNotInRange(`the drag multiplier of ${id}'s rod line`, rodLine.dragMultiplier, 0, 20, "")))
  );
}
