/** Rigs drawn roughly in a turn, to tell which of them can't come near each other without drawing them well. */
import { closestApproach } from "../physics/closest-approach.ts";
import { type Curve, type CurvePoint, distanceM, shiftedCurve } from "../physics/curve.ts";
import { boxAround, boxesApartM, type CurveBox } from "../physics/curve-box.ts";
import { roughDownriggerCurves, roughLongLineCurves, roughlyOffM } from "../physics/rough-curves.ts";
import type { WetRig, WetTask } from "./spread-at.ts";
import type { ShiftRange } from "./spread-geometry.ts";

/** About where a rig's lines run. */
export interface RoughRig {
  readonly boxes: readonly CurveBox[];
  /** The farthest that any of it is from where the rig is towed, m. */
  readonly reachM: number;
}

const known = new WeakMap<WetTask["task"], Map<string, RoughRig | undefined>>();

/** Draws a rig's lines roughly, once for a task and turn; undefined where only drawing them well can tell. */
export function roughRig(
  { place }: WetRig,
  { kind, task }: WetTask,
  turnRadiusM: number,
): RoughRig | undefined {
  const ofTask = known.get(task) ?? new Map<string, RoughRig | undefined>();
  known.set(task, ofTask);
  const key = `${turnRadiusM} ${place.acrossM}`;
  if (ofTask.has(key)) return ofTask.get(key);
  const top = { behindM: 0, acrossM: place.acrossM, depthM: 0 };
  const { flow } = kind === "downrigger" ? task.downrigger : task.line;
  const curves =
    kind === "downrigger"
      ? roughDownriggerCurves(task.downrigger, { flow, turnRadiusM }, top)
      : roughLongLineCurves(task.line, { flow, turnRadiusM }, top);
  const reachM = curves === undefined ? Number.NaN : reachOf(curves, top);
  const rig =
    curves === undefined || !Number.isFinite(reachM) ? undefined : { boxes: curves.map(boxAround), reachM };
  ofTask.set(key, rig);
  return rig;
}

/** The farthest that any point of some curves is from a place, m. */
function reachOf(curves: readonly Curve[], from: CurvePoint): number {
  let reachM = 0;
  for (const curve of curves) for (const point of curve) reachM = Math.max(reachM, distanceM(point, from));
  return reachM;
}

/**
 * True where two rigs are sure not to come within the margin of each other: they stay farther apart, by more than rough
 * drawings are off, with the second as far as it may be to one side or to the other. `nearness` then finds nothing.
 */
export function isClear(
  one: RoughRig | undefined,
  other: RoughRig | undefined,
  range: ShiftRange,
  marginM: number,
): boolean {
  if (one === undefined || other === undefined) return false;
  const withinM = marginM + roughlyOffM(one.reachM) + roughlyOffM(other.reachM);
  return [range.fromM, range.toM].some((acrossM) => !isWithin(one, other, acrossM, withinM));
}

function isWithin(one: RoughRig, other: RoughRig, acrossM: number, withinM: number): boolean {
  return other.boxes.some((box) => {
    const near = one.boxes.filter((part) => boxesApartM(part, box, acrossM) <= withinM);
    if (near.length === 0) return false;
    const curve = shiftedCurve(box.curve, 0, acrossM);
    return near.some((part) => closestApproach(part.curve, curve, withinM) !== undefined);
  });
}
