/** What the gear book's calibrate lines say of one downrigger: its own, and what other rigs' tell of every line. */
import type { Calibration, Gear, Rig } from "../model/gear-types.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { type DownriggerSpreads, defaultSpreads } from "../physics/downrigger-band.ts";
import { type FittedDrag, sharedDragFrom } from "../physics/shared-drag.ts";

/** The calibration of a rig, as the solver takes it. */
interface CalibrationUsed {
  /** The rig's own line, while it holds. */
  readonly own: Calibration | undefined;
  /** Lines of other rigs, or of this one before its gear was changed, that narrow a rig without a line. */
  readonly shared: readonly Calibration[];
  readonly cableDrag: number;
  /** Factor on the drag of fishing lines. */
  readonly linesDrag: number;
  /** But for the speed's. */
  readonly spreads: StillSpreads;
}

type StillSpreads = Omit<DownriggerSpreads, "speedMS">;

const sinceOfRigs = new WeakMap<Rig, { readonly gear: Gear; readonly since: string }>();

/** Day on which the rig as it is began: the latest of its own line, its cable's and its ball's; empty without dates. */
export function gearSince(gear: Gear, rig: Rig): string {
  const known = sinceOfRigs.get(rig);
  if (known?.gear === gear) return known.since;
  const since = findSince(gear, rig);
  sinceOfRigs.set(rig, { gear, since });
  return since;
}

function findSince(gear: Gear, rig: Rig): string {
  const line = rig.cable ?? (rig.kind === "flat" ? rig.lureLine : undefined);
  const parts = [rig.origin, gear.cables.get(line ?? "")?.origin, gear.balls.get(rig.ball ?? "")?.origin];
  const dates = parts.map((origin) => origin?.from ?? "").sort();
  return dates.at(-1) ?? "";
}

/** A calibration holds until the rig, its cable or its ball is replaced by a later line. */
export function calibrationOf(gear: Gear, rig: Rig): Calibration | undefined {
  const calibration = gear.calibrations.get(rig.name);
  if (calibration === undefined) return undefined;
  return gearSince(gear, rig) > (calibration.origin.from ?? "") ? undefined : calibration;
}

/** Judgement, near what a fit of six mixed readings leaves (docs/physics.md). */
export const CALIBRATED_SD = { dragShare: 0.1, counterScale: 0.015, counterOffsetM: 0.3 } as const;

/** What is known of a rig's drag and counter on that day. */
export function calibrationUsed(gear: Gear, rig: Rig): CalibrationUsed {
  const { speedMS, ...spreads } = defaultSpreads(0);
  const own = calibrationOf(gear, rig);
  if (own?.dragRatio !== undefined)
    return { own, shared: [], cableDrag: own.dragRatio, linesDrag: 1, spreads: ownSpreads(own, spreads) };
  const { from: shared, factor, lnSd } = sharedDragUsed(gear);
  const narrowed = { ...spreads, lnDragShared: lnSd };
  return {
    own,
    shared,
    cableDrag: DEFAULTS.cableDragMultiplier.value * factor,
    linesDrag: factor,
    spreads: own === undefined ? narrowed : { ...narrowed, ...counterSpreads(own, spreads) },
  };
}

/** What other rigs' calibrations tell of a line that was never measured. */
export interface SharedUsed {
  readonly from: readonly Calibration[];
  /** Factor on the drag of every line. */
  readonly factor: number;
  /** What stays open of the part that all lines share, standard deviation of its logarithm. */
  readonly lnSd: number;
}

/** The part of the drag that all lines of the boat share, as its downriggers' calibrations of that day tell it. */
export function sharedDragUsed(gear: Gear): SharedUsed {
  const from = dragLines(gear);
  const { lnShift, lnSd } = sharedDragFrom(from.map(fittedDrag));
  return { from, factor: Math.exp(lnShift), lnSd };
}

/** Calibrations of downriggers that state a drag. A line that outlived its cable still tells what all lines share. */
function dragLines(gear: Gear): Calibration[] {
  return [...gear.calibrations.values()].filter(
    (line) => (line.dragRatio ?? 0) > 0 && gear.rigs.get(line.of)?.kind === "downrigger",
  );
}

function fittedDrag(line: Calibration): FittedDrag {
  return { lnDrag: Math.log(line.dragRatio ?? 1), lnDragSd: lnDragSdOf(line) };
}

function lnDragSdOf({ dragRatio = 1, dragError }: Calibration): number {
  return dragError === undefined ? CALIBRATED_SD.dragShare : Math.max(1e-3, Math.abs(dragError / dragRatio));
}

function counterSpreads(
  own: Calibration,
  before: StillSpreads,
): Pick<DownriggerSpreads, "counterScale" | "counterOffsetM"> {
  const { counterScale, counterScaleError, counterOffsetM, counterOffsetErrorM } = own;
  return {
    counterScale:
      counterScale === undefined ? before.counterScale : (counterScaleError ?? CALIBRATED_SD.counterScale),
    counterOffsetM:
      counterOffsetM === undefined
        ? before.counterOffsetM
        : (counterOffsetErrorM ?? CALIBRATED_SD.counterOffsetM),
  };
}

/** A fit took up what the ball's mass is off, so that no longer counts. */
function ownSpreads(own: Calibration, before: StillSpreads): StillSpreads {
  const counter = counterSpreads(own, before);
  return {
    ...before,
    ...counter,
    lnDragShared: 0,
    lnDragCable: lnDragSdOf(own),
    ballMassShare: 0,
    calibration: {
      lnDragSd: lnDragSdOf(own),
      counterScaleSd: counter.counterScale,
      counterOffsetSdM: counter.counterOffsetM,
      dragWithScale: linkOf(own.dragScaleLink),
      dragWithOffset: linkOf(own.dragOffsetLink),
      scaleWithOffset: linkOf(own.scaleOffsetLink),
    },
  };
}

/** A stated correlation, kept where a covariance can have it. */
export function linkOf(link = 0): number {
  return Math.min(0.999, Math.max(-0.999, link));
}
