/** What a downrigger's ball would do on the next heavier ball and on the other cable of the book. */
import type { Ball, Gear, Rig } from "../model/gear-types.ts";
import type { CableSpread, Timeline } from "../model/timeline.ts";
import type { Trip } from "../model/trip.ts";
import { type DepthMemo, solveTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import { downriggerTask } from "./downrigger-input.ts";
import type { LineDepth } from "./line-depth.ts";
import { waterAndSpeed } from "./without-depth.ts";

/** One change of gear, with the ball's depth after it. */
export interface GearChange {
  readonly kind: "ball" | "cable";
  /** The piece of the book that would take the place of `instead`. */
  readonly name: string;
  readonly instead: string;
  readonly ballDepthM: number;
  /** How much deeper the ball would be, m; negative is shallower. */
  readonly deeperM: number;
}

/** The changes for one line; each is solved anew unless the memo has it. None without a ball. */
export function gearChanges(
  { gear }: Trip,
  timeline: Timeline,
  depth: LineDepth,
  memo: DepthMemo,
): GearChange[] {
  const { cableRig, ball, event } = depth;
  const rods = timeline.spreadAfter.get(event.lineIndex);
  const water = waterAndSpeed(depth);
  if (cableRig === undefined || ball === null || rods === undefined || !water.ok) return [];
  const ballName = rods.get(cableRig.name)?.setting.ball ?? cableRig.ball ?? "";
  const heavier = nextHeavier(gear, gear.balls.get(ballName));
  const other = otherCable(gear, cableRig);
  const changes: GearChange[] = [];
  const solve = (kind: GearChange["kind"], name: string, instead: string, rig: Rig, spread: CableSpread) => {
    const task = downriggerTask(gear, rig, spread, water);
    const answer = task.ok ? solveTask(task, memo) : task;
    if (!answer.ok) return;
    const ballDepthM = placeOf(answer.ball, depth.bottom?.waterM).depthM;
    changes.push({ kind, name, instead, ballDepthM, deeperM: ballDepthM - ball.depthM });
  };
  if (heavier !== undefined)
    solve("ball", heavier.name, ballName, cableRig, withBall(rods, cableRig.name, heavier.name));
  if (other !== undefined && cableRig.cable !== undefined)
    solve("cable", other, cableRig.cable, { ...cableRig, cable: other }, rods);
  return changes;
}

/** Less than this much heavier is the same ball. */
const HEAVIER = 1.01;

function nextHeavier(gear: Gear, now: Ball | undefined): Ball | undefined {
  const leastKg = (now?.massKg ?? Number.POSITIVE_INFINITY) * HEAVIER;
  return [...gear.balls.values()]
    .filter(({ massKg }) => massKg !== undefined && massKg > leastKg)
    .sort((a, b) => (a.massKg ?? 0) - (b.massKg ?? 0))[0];
}

function withBall(rods: CableSpread, rig: string, ball: string): CableSpread {
  const own = rods.get(rig);
  if (own === undefined) return rods;
  return new Map(rods).set(rig, { ...own, setting: { ...own.setting, ball } });
}

/** Wire for braid and braid for wire: a cable that some downrigger of the book carries. */
function otherCable(gear: Gear, rig: Rig): string | undefined {
  const material = gear.cables.get(rig.cable ?? "")?.material;
  if (material === undefined) return undefined;
  for (const { kind, cable } of gear.rigs.values()) {
    const other = gear.cables.get(cable ?? "");
    if (kind !== "downrigger" || other?.material === undefined || other.diameterM === undefined) continue;
    if (other.material !== material) return other.name;
  }
  return undefined;
}
