/** Gear, setting and water of a cable with its rods → the physical downrigger the solver takes, or why there is none. */

import type { Ball, Cable, Calibration, Gear, Lure, Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import type { CableSpread } from "../model/timeline.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import {
  completeDownrigger,
  type Downrigger,
  defaultRodLine,
  type RodOnCable,
} from "../physics/downrigger.ts";
import type { DownriggerSpreads } from "../physics/downrigger-band.ts";
import type { FlowChange } from "../physics/flow-change.ts";
import type { FlowProfile } from "../physics/flow-profile.ts";
import { type LineMaterial, lineMake } from "../physics/line-materials.ts";
import { type LineInUse, type LureForces, liftAreaForDive, lureForces } from "../physics/lure.ts";
import { waterAt } from "../physics/water.ts";
import { calibrationUsed } from "./calibration-used.ts";
import { type NoTask, no, whyNoDrag } from "./no-task.ts";
import { refusalWords } from "./refusal-words.ts";
import { keyFrom, rodsKey, type TaskMemo, taskKept, waterKey } from "./task-memo.ts";
import { SEA_WATER_PSU } from "./water-density.ts";

/** What to solve: a downrigger, how well its inputs are known, and what was assumed. */
export interface DownriggerTask {
  readonly ok: true;
  readonly downrigger: Downrigger;
  readonly spreads: DownriggerSpreads;
  readonly calibration: Calibration | undefined;
  /** Calibrations of other rigs that narrow this one's range. */
  readonly sharedFrom: readonly Calibration[];
}

/** The water and speed a line runs in. */
export interface WaterAndSpeed {
  readonly flow: FlowProfile;
  /** Of the one speed, or of the deep one in a sheared stream. */
  readonly speedSdMS: number;
  /** Of the speed on top in a sheared stream. */
  readonly surfaceSpeedSdMS?: number;
  /** What one standard deviation of a sheared stream's shape changes. */
  readonly shape?: FlowChange;
  readonly waterTemperatureC: number;
}

const tasks: TaskMemo<DownriggerTask | NoTask> = new WeakMap();

/** The task for a cable rig and the rods clipped to it; the very same for equal settings in the same gear and water. */
export function downriggerTask(
  gear: Gear,
  rig: Rig,
  rods: CableSpread,
  water: WaterAndSpeed,
): DownriggerTask | NoTask {
  const keyOf = (): string => keyFrom([waterKey(water), rodsKey(rig, rods)]);
  return taskKept(tasks, gear, rig, keyOf, () => inWater(rigAtRest(gear, rig, rods), water));
}

/** A rig with its rods, whatever water it is in and however well its speed is known. */
interface RigAtRest extends Pick<DownriggerTask, "ok" | "calibration" | "sharedFrom"> {
  readonly downrigger: Omit<Downrigger, "flow" | "waterTemperatureC">;
  readonly spreads: Omit<DownriggerSpreads, "speedMS">;
}

const rigsAtRest: TaskMemo<RigAtRest | NoTask> = new WeakMap();

/** Kept like a task, so that a rig's parts are the very same in every water. */
function rigAtRest(gear: Gear, rig: Rig, rods: CableSpread): RigAtRest | NoTask {
  const keyOf = (): string => rodsKey(rig, rods);
  return taskKept(rigsAtRest, gear, rig, keyOf, () => buildRig(gear, rig, rods));
}

function inWater(atRest: RigAtRest | NoTask, water: WaterAndSpeed): DownriggerTask | NoTask {
  if (!atRest.ok) return atRest;
  const { flow, waterTemperatureC } = water;
  const downrigger: Downrigger = { flow, ...atRest.downrigger, waterTemperatureC };
  return { ...atRest, downrigger, spreads: spreadsIn(atRest.spreads, water) };
}

function buildRig(gear: Gear, rig: Rig, rods: CableSpread): RigAtRest | NoTask {
  const own = rods.get(rig.name)?.setting;
  if (own?.outM === undefined) {
    return no(`how much cable ${rig.name} has out isn't stated`, { at: "line", rig: rig.name, word: "out" });
  }
  const cable = cableOf(gear, rig);
  if (!cable.ok) return cable;
  const ballName = own.ball ?? rig.ball;
  if (ballName === undefined) {
    const lack = { at: "gear", of: "rig", name: rig.name, word: "ball" } as const;
    return no(`${rig.name} has no ball in the gear book (ball NAME on its rig line)`, lack);
  }
  const ball = gear.balls.get(ballName);
  if (ball?.massKg === undefined) {
    const lack = { at: "name", of: "rig", name: rig.name, word: "ball" } as const;
    return no(
      `the weight of ball ${ballName} isn't in the gear book`,
      own.ball === undefined ? lack : undefined,
    );
  }
  const { own: calibration, shared: sharedFrom, cableDrag, linesDrag, spreads } = calibrationUsed(gear, rig);
  const noDrag = whyNoDrag(rig.name, calibration?.dragRatio);
  if (noDrag !== undefined) return noDrag;
  const built: RodOnCable[] = [];
  for (const [name, { setting, isClipped }] of rods) {
    if (!isClipped) continue;
    const rod = rodOnCable(gear, name, setting);
    if (!rod.ok) return rod;
    if (rod.rod !== undefined) built.push(draggingBy(rod.rod, linesDrag));
  }
  const { flow, waterTemperatureC, ...downrigger } = completeDownrigger({
    outM: own.outM,
    counterScale: calibration?.counterScale ?? DEFAULTS.counterScale.value,
    counterOffsetM: calibration?.counterOffsetM ?? DEFAULTS.counterOffsetM.value,
    salinityPsu: gear.water === "salt" ? SEA_WATER_PSU : DEFAULTS.salinityPsu.value,
    cable: { make: cable.make, dragMultiplier: cableDrag },
    ball: ballForces(ball, ball.massKg),
    ...(rig.probeAboveBallM === undefined ? {} : { probeAboveBallM: rig.probeAboveBallM }),
    rods: built,
  });
  return { ok: true, downrigger, spreads, calibration, sharedFrom };
}

function cableOf(gear: Gear, rig: Rig): { ok: true; make: LineInUse["make"] } | NoTask {
  const lack = { of: "rig", name: rig.name, word: "cable" } as const;
  if (rig.cable === undefined) {
    const why = `${rig.name} has no cable in the gear book (cable NAME on its rig line)`;
    return no(why, { at: "gear", ...lack });
  }
  const cable = gear.cables.get(rig.cable);
  if (cable === undefined) return no(`cable ${rig.cable} isn't in the gear book`, { at: "name", ...lack });
  return makeOf(cable, gear.calibrations.get(cable.name)?.massPerLengthKgM);
}

/** How a line of the book is made; a weight that was measured takes the place of the reckoned one. */
export function makeOf(
  cable: Cable,
  weighedKgM: number | undefined,
): { ok: true; make: LineInUse["make"] } | NoTask {
  const { name } = cable;
  const lacking = (why: string, word: string): NoTask => no(why, { at: "gear", of: "cable", name, word });
  if (cable.diameterM === undefined)
    return lacking(`the diameter of cable ${name} isn't in the gear book (diameter 0.9 mm)`, "diameter");
  const material = MATERIALS[cable.material ?? ""];
  if (material === undefined)
    return lacking(
      `what cable ${name} is made of isn't in the gear book (steel, braid or the like)`,
      "steel",
    );
  if (cable.material === "weighted" && (weighedKgM ?? cable.massPerLengthKgM) === undefined)
    return lacking(`the weight of weighted line ${name} isn't in the gear book (weight 2.1 g/m)`, "weight");
  const make = lineMake(material, cable.diameterM, weighedKgM ?? cable.massPerLengthKgM, cable.coreDiameterM);
  if (make.ok) return { ok: true, make };
  return no(`${refusalWords(undefined, make)} (cable ${name})`, { at: "number", value: make.outside?.value });
}

/** A weighted line fills its circle like strands of wire; what it weighs has to be stated. */
const MATERIALS: Readonly<Record<string, LineMaterial>> = {
  steel: "steel",
  weighted: "steel",
  braid: "braid",
  copper: "copper",
  mono: "mono",
  fluoro: "fluorocarbon",
  leadcore: "leadcore",
};

/** Drag against a smooth sphere of the same weight, where the book doesn't say; flat and long ones are guesses. */
const SHAPE_DRAG: Readonly<Record<string, number>> = {
  sphere: DEFAULTS.ballDragMultiplier.value,
  finned: DEFAULTS.ballDragMultiplier.value,
  pancake: DEFAULTS.ballDragMultiplier.value,
  torpedo: DEFAULTS.ballDragMultiplier.value,
};

function ballForces(
  ball: Ball,
  massKg: number,
): { massKg: number; dragMultiplier: number; dragAreaM2?: number } {
  const dragMultiplier =
    ball.dragRatio ?? SHAPE_DRAG[ball.shape ?? "sphere"] ?? DEFAULTS.ballDragMultiplier.value;
  return {
    massKg,
    dragMultiplier,
    ...(ball.dragAreaM2 === undefined ? {} : { dragAreaM2: ball.dragAreaM2 }),
  };
}

/** With the speed's error; a stream with a speed on top of its own has that speed's too, and that of its shape. */
function spreadsIn(
  spreads: RigAtRest["spreads"],
  { speedSdMS, surfaceSpeedSdMS, shape }: WaterAndSpeed,
): DownriggerSpreads {
  return {
    ...spreads,
    speedMS: speedSdMS,
    ...(surfaceSpeedSdMS === undefined ? {} : { surfaceSpeedMS: surfaceSpeedSdMS }),
    ...(shape === undefined ? {} : { shape }),
  };
}

/** The rod with its lines dragging so many times as much. */
function draggingBy(rod: RodOnCable, factor: number): RodOnCable {
  if (factor === 1) return rod;
  const times = <T extends { readonly dragMultiplier: number }>(line: T): T => ({
    ...line,
    dragMultiplier: line.dragMultiplier * factor,
  });
  return {
    ...rod,
    lureLine: times(rod.lureLine),
    ...(rod.rodLine === undefined ? {} : { rodLine: times(rod.rodLine) }),
  };
}

/** A rod clipped to the cable; undefined rod where nothing says that one is. */
function rodOnCable(
  gear: Gear,
  name: string,
  setting: Setting,
): { ok: true; rod: RodOnCable | undefined } | NoTask {
  if (setting.lure === undefined && setting.setbackM === undefined) return { ok: true, rod: undefined };
  const rig = gear.rigs.get(name);
  if (rig?.kind === "stacked" && setting.aboveM === undefined) {
    const lack = { at: "line", rig: name, word: "above" } as const;
    return no(`how far above the ball ${name} is clipped isn't stated (above 20 ft)`, lack);
  }
  const line = lureLineOf(gear, rig);
  if (!line.ok) return line;
  const setbackM = setting.setbackM ?? 0;
  const forces = forcesOf(gear.lures.get(setting.lure ?? ""), line.line);
  const rodLine = defaultRodLine(rig?.rodPullN);
  return {
    ok: true,
    rod: {
      id: name,
      releaseAboveBallM: setting.aboveM ?? rig?.releaseAboveBallM ?? DEFAULTS.releaseAboveBallM.value,
      setbackM,
      lureLine: line.line,
      lure: forces,
      rodLine: rig?.tipHeightM === undefined ? rodLine : { ...rodLine, tipHeightM: rig.tipHeightM },
    },
  };
}

/** The line of a rod's lure: the one its rig names, else nylon of the default diameter. */
export function lureLineOf(gear: Gear, rig: Rig | undefined): { ok: true; line: LineInUse } | NoTask {
  const named = rig?.lureLine === undefined ? undefined : gear.cables.get(rig.lureLine);
  const dragMultiplier = DEFAULTS.lineDragMultiplier.value;
  const made =
    named === undefined ? lineMake("mono", DEFAULTS.lureLineDiameterM.value) : makeOf(named, undefined);
  if (!made.ok) return no(made.why, "lack" in made ? made.lack : undefined);
  return { ok: true, line: { make: "make" in made ? made.make : made, dragMultiplier } };
}

/** Pull of a lure on its line. A stated `pulls-down` sets the lift, at the speed and lead it is taken to hold for. */
export function forcesOf(lure: Lure | undefined, line: LineInUse): LureForces {
  const kind = lure?.kind === "plug" ? "plug" : lure?.kind === "fly" ? "fly" : "spoon";
  if (lure?.pullsDownM === undefined) return lureForces(kind);
  const diveM = (lure.pullsDownM.low + lure.pullsDownM.high) / 2;
  if (!(diveM > 0)) return lureForces(kind);
  const key = JSON.stringify([kind, diveM, line]);
  const known = fittedForces.get(key);
  if (known !== undefined) return known;
  if (fittedForces.size > 500) fittedForces.clear();
  // A lure that states how deep it dives keeps that depth at any speed (common practice): no weight of its own.
  const forces = fitDive({ ...lureForces(kind), weightN: 0 }, diveM, line);
  fittedForces.set(key, forces);
  return forces;
}

/** Fits are kept by value: a lure's dive does not change from line to line. */
const fittedForces = new Map<string, LureForces>();

function fitDive(lure: LureForces, diveM: number, line: LineInUse): LureForces {
  const water = waterAt(DEFAULTS.waterTemperatureC.value, DEFAULTS.salinityPsu.value);
  if (!water.ok) return lure;
  const on = { lureLine: line, setbackM: DEFAULTS.pullsDownLeadM.value, lure };
  const fitted = liftAreaForDive(diveM, on, DEFAULTS.pullsDownSpeedMS.value, water);
  return fitted.ok ? { ...lure, liftAreaM2: fitted.liftAreaM2 } : lure;
}
