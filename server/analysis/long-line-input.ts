/** Gear and setting of a line that is on no downrigger → the long line the solver takes, or why there is none. */
import type { Cable, Calibration, Gear, Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { sphereDragCoefficient } from "../physics/drag.ts";
import { lineMake } from "../physics/line-materials.ts";
import type { LongLine } from "../physics/long-line.ts";
import type { LongLineSpreads } from "../physics/long-line-parameters.ts";
import type { LineInUse, LureForces } from "../physics/lure.ts";
import { GRAVITY_M_S2 } from "../physics/water.ts";
import { calibrationOf, type SharedUsed, sharedDragUsed } from "./calibration-used.ts";
import { makeOf, type WaterAndSpeed } from "./downrigger-input.ts";
import { leaderPieces } from "./leader-pieces.ts";
import { type CableCalibration, longLineSpreads } from "./long-line-spreads.ts";
import { type NoTask, no, whyNoDrag } from "./no-task.ts";
import { keyFrom, settingKey, type TaskMemo, taskKept, waterKey } from "./task-memo.ts";
import { SEA_WATER_PSU } from "./water-density.ts";

/** What to solve: a long line, how well its inputs are known, and what was assumed. */
export interface LongLineTask {
  readonly ok: true;
  readonly line: LongLine;
  readonly spreads: LongLineSpreads;
  readonly calibration: Calibration | undefined;
  /** Calibrations of downriggers whose drag, as far as all lines share it, is carried to this line. */
  readonly sharedFrom: readonly Calibration[];
  /** What hangs on the main line's lower end. */
  readonly jointIs: "diver" | "weight" | undefined;
  /** What the book or the line doesn't say and was taken, as sentence parts. */
  readonly assumed: readonly string[];
}

const tasks: TaskMemo<LongLineTask | NoTask> = new WeakMap();

/** The task for a rig that is no downrigger and hangs on none; the very same for an equal setting in the same gear and water. */
export function longLineTask(
  gear: Gear,
  rig: Rig,
  setting: Setting,
  water: WaterAndSpeed,
): LongLineTask | NoTask {
  const keyOf = (): string => keyFrom([rig.name, waterKey(water), settingKey(setting)]);
  return taskKept(tasks, gear, rig, keyOf, () => buildTask(gear, rig, setting, water));
}

function buildTask(gear: Gear, rig: Rig, setting: Setting, water: WaterAndSpeed): LongLineTask | NoTask {
  const { outM } = setting;
  if (rig.kind === undefined) return no(`what kind of rig ${rig.name} is isn't in the gear book`);
  if (outM === undefined) {
    return no(`how much line ${rig.name} has out isn't stated`, { at: "line", rig: rig.name, word: "out" });
  }
  const main = mainLine(gear, rig);
  if (!main.ok) return main;
  const backing = backingOf(gear, rig, setting, outM);
  if (!backing.ok) return backing;
  const calibration = calibrationOf(gear, rig);
  const dragRatio = calibration?.dragRatio ?? main.calibration?.dragRatio;
  const noDrag = whyNoDrag(rig.name, dragRatio);
  if (noDrag !== undefined) return noDrag;
  const joint = jointOf(rig, setting, calibration);
  if (!joint.ok) return joint;
  const below = leaderPieces(gear, rig, setting);
  if (!below.ok) return below;
  const { mainAtMostM, line: backingLine } = backing;
  const shared = sharedFor(gear, joint.is, calibration, main.calibration);
  const rougher = (line: LineInUse): LineInUse => rougherBy(line, shared.factor);
  const line: LongLine = {
    outM,
    counterScale: calibration?.counterScale ?? DEFAULTS.lineCounterScale.value,
    counterOffsetM: calibration?.counterOffsetM ?? DEFAULTS.lineOutsetM.value,
    flow: water.flow,
    waterTemperatureC: water.waterTemperatureC,
    salinityPsu: gear.water === "salt" ? SEA_WATER_PSU : DEFAULTS.salinityPsu.value,
    main: rougher({ make: main.make, dragMultiplier: dragOf(calibration, main.calibration) }),
    ...(mainAtMostM === undefined ? {} : { mainAtMostM }),
    ...(backingLine === undefined ? {} : { backing: rougher(backingLine) }),
    ...(joint.forces === undefined ? {} : { joint: joint.forces }),
    below: below.pieces.map((piece) => ({ ...piece, line: rougher(piece.line) })),
    lure: below.lure,
  };
  const facts = { setting, cable: main.cable, jointIs: joint.is, water };
  const spreads = longLineSpreads(facts, calibration, main.calibration, shared.lnSd);
  const assumed = [...main.assumed, ...below.assumed];
  return { ok: true, line, spreads, calibration, sharedFrom: shared.from, jointIs: joint.is, assumed };
}

/**
 * A line whose drag was measured has what all lines share in it; a diver's areas were fitted beside the plain drag of
 * its line. All others take what the downriggers' calibrations tell of every line, and keep a spread of their own.
 */
function sharedFor(
  gear: Gear,
  jointIs: LongLineTask["jointIs"],
  own: Calibration | undefined,
  cable: CableCalibration | undefined,
): SharedUsed {
  const isMeasured = (own?.dragRatio ?? cable?.dragRatio) !== undefined || jointIs === "diver";
  return isMeasured ? { from: [], factor: 1, lnSd: DEFAULTS.sharedDrag.sd } : sharedDragUsed(gear);
}

function rougherBy(line: LineInUse, times: number): LineInUse {
  return times === 1 ? line : { ...line, dragMultiplier: line.dragMultiplier * times };
}

function dragOf(own: Calibration | undefined, cable: CableCalibration | undefined): number {
  return own?.dragRatio ?? cable?.dragRatio ?? DEFAULTS.lineDragMultiplier.value;
}

interface MainLine {
  readonly ok: true;
  readonly make: LineInUse["make"];
  readonly cable: Cable | undefined;
  readonly calibration: CableCalibration | undefined;
  readonly assumed: readonly string[];
}

/** The rig's line; leadcore and nylon have an ordinary kind that is taken where the book names none. */
function mainLine(gear: Gear, rig: Rig): MainLine | NoTask {
  const name = rig.cable ?? (rig.kind === "flat" ? rig.lureLine : undefined);
  if (name === undefined) return ordinaryLine(rig);
  const cable = gear.cables.get(name);
  if (cable === undefined) {
    const word = rig.cable === undefined ? "line" : "cable";
    return no(`line ${name} isn't in the gear book`, { at: "name", of: "rig", name: rig.name, word });
  }
  const calibration = cableCalibration(gear, cable);
  const made = makeOf(cable, calibration?.massPerLengthKgM);
  return made.ok ? { ok: true, make: made.make, cable, calibration, assumed: [] } : made;
}

function ordinaryLine(rig: Rig): MainLine | NoTask {
  const ordinary = { cable: undefined, calibration: undefined };
  if (rig.kind === "leadcore") {
    const { leadcoreDiameterM, leadcoreCoreM } = DEFAULTS;
    const make = lineMake("leadcore", leadcoreDiameterM.value, undefined, leadcoreCoreM.value);
    const assumed = [`${rig.name}'s leadcore is taken as ordinary, since the gear book names none`];
    return make.ok ? { ok: true, make, ...ordinary, assumed } : no(make.why);
  }
  if (rig.kind !== "flat") {
    const lack = { at: "gear", of: "rig", name: rig.name, word: "cable" } as const;
    return no(`${rig.name} has no line in the gear book (cable NAME on its rig line)`, lack);
  }
  const make = lineMake("mono", DEFAULTS.lureLineDiameterM.value);
  const assumed = [`${rig.name}'s line is taken as 0.4 mm nylon, since the gear book names none`];
  return make.ok ? { ok: true, make, ...ordinary, assumed } : no(make.why);
}

/** What was measured of a line holds until a later line of the book replaces it. */
function cableCalibration(gear: Gear, cable: Cable): CableCalibration | undefined {
  const calibration = gear.calibrations.get(cable.name);
  const isReplaced = (cable.origin.from ?? "") > (calibration?.origin.from ?? "");
  return isReplaced ? undefined : calibration;
}

interface Backing {
  readonly ok: true;
  readonly mainAtMostM: number | undefined;
  readonly line: LineInUse | undefined;
}

/** Colors with more behind them (`10 colors 50 ft`) and what a rig holds both end the main line. */
function backingOf(gear: Gear, rig: Rig, setting: Setting, outM: number): Backing | NoTask {
  const { outColorsM } = setting;
  const counted = outColorsM !== undefined && outColorsM < outM ? outColorsM : undefined;
  const limits = [counted, rig.holdsM].filter((limit) => limit !== undefined);
  const mainAtMostM = limits.length === 0 ? undefined : Math.min(...limits);
  if (mainAtMostM === undefined || outM <= mainAtMostM)
    return { ok: true, mainAtMostM: undefined, line: undefined };
  const lack = { of: "rig", name: rig.name, word: "backing" } as const;
  if (rig.backing === undefined)
    return no(
      counted === undefined
        ? `more is out than ${rig.name} holds, and the gear book names no backing (backing NAME on its rig line)`
        : `the backing of ${rig.name} isn't in the gear book (backing NAME on its rig line)`,
      { at: "gear", ...lack },
    );
  const cable = gear.cables.get(rig.backing);
  if (cable === undefined)
    return no(`backing ${rig.backing} isn't in the gear book`, { at: "name", ...lack });
  const made = makeOf(cable, undefined);
  if (!made.ok) return made;
  const line = { make: made.make, dragMultiplier: DEFAULTS.lineDragMultiplier.value };
  return { ok: true, mainAtMostM, line };
}

interface Joint {
  readonly ok: true;
  readonly is: LongLineTask["jointIs"];
  readonly forces: LureForces | undefined;
}

function jointOf(rig: Rig, setting: Setting, calibration: Calibration | undefined): Joint | NoTask {
  if (rig.kind === "diver") return diverOf(rig, setting, calibration);
  const { inlineWeightKg } = rig;
  if (inlineWeightKg === undefined) return { ok: true, is: undefined, forces: undefined };
  if (!(inlineWeightKg > 0)) {
    const lack = { at: "number", value: inlineWeightKg } as const;
    return no(`the in-line weight of ${rig.name} is to be above zero`, lack);
  }
  return { ok: true, is: "weight", forces: leadForces(inlineWeightKg) };
}

/** A diver's pull comes from what was measured on this boat and from nothing else. */
function diverOf(rig: Rig, setting: Setting, calibration: Calibration | undefined): Joint | NoTask {
  const { liftAreaM2, dragAreaM2 } = calibration ?? {};
  if (liftAreaM2 === undefined || dragAreaM2 === undefined) {
    return no(
      `${rig.name}'s diver was never measured; touch bottom with it at two lengths or more (touch ${rig.name} out 60 ft bottom 30 ft), then deepwake calibrate gives the line for the gear book`,
    );
  }
  if (!(liftAreaM2 > 0 && dragAreaM2 > 0))
    return no(`the lift and drag areas on ${rig.name}'s calibrate line must be above zero`, {
      at: "number",
      value: undefined,
    });
  if (setting.dial !== undefined && rig.dial !== undefined && setting.dial !== rig.dial) {
    const lack = { at: "line", rig: rig.name, word: "dial" } as const;
    return no(`${rig.name}'s diver was measured at dial ${rig.dial}, and ${setting.dial} is set`, lack);
  }
  return { ok: true, is: "diver", forces: { weightN: 0, liftAreaM2, dragAreaM2 } };
}

/** Reynolds number of a few centimeters of lead at trolling speed; the coefficient hardly depends on it. */
const SINKER_REYNOLDS = 2e4;
const FRESH_KG_M3 = 1000;

/** An in-line sinker as a lead ball of the same mass. */
function leadForces(massKg: number): LureForces {
  const leadKgM3 = DEFAULTS.ballDensityKgM3.value;
  const diameterM = Math.cbrt((6 * massKg) / (Math.PI * leadKgM3));
  const coefficient = DEFAULTS.ballDragMultiplier.value * sphereDragCoefficient(SINKER_REYNOLDS);
  return {
    weightN: massKg * GRAVITY_M_S2 * (1 - FRESH_KG_M3 / leadKgM3),
    dragAreaM2: coefficient * 0.25 * Math.PI * diameterM * diameterM,
    liftAreaM2: 0,
  };
}
