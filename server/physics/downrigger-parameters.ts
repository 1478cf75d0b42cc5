import { type CalibrationSpread, calibrationAxes } from "./calibration-spread.ts";
import { DEFAULTS } from "./defaults.ts";
import type { Downrigger, RodOnCable } from "./downrigger.ts";
import { type FlowChange, withFlowChange } from "./flow-change.ts";
import { changedFlow } from "./flow-profile.ts";
import type { LineInUse, LureForces } from "./lure.ts";

/** Standard deviations of what is not known exactly about a downrigger. A calibration brings narrower ones. */
export interface DownriggerSpreads {
  /** Of the speed through the water, m/s. It depends on where the speed was read, so it has no default. */
  readonly speedMS: number;
  /** Of the speed on top, m/s, where the stream is sheared; `speedMS` is then that of the deep speed alone. */
  readonly surfaceSpeedMS?: number;
  /** What one standard deviation of a sheared stream's shape changes. */
  readonly shape?: FlowChange;
  /** Of the logarithm of what all lines share of the error in their drag. */
  readonly lnDragShared: number;
  /** Of the logarithm of the cable's own drag multiplier. */
  readonly lnDragCable: number;
  /** Of the logarithm of the drag multiplier of lure lines and rod lines. */
  readonly lnDragLines: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
  /** Drag and counter as a calibration knows them, tied together; takes the place of the cable's and counter's own. */
  readonly calibration?: CalibrationSpread;
  /** Of the rods' pull, N, all together; a rod without a line to its release has none. */
  readonly rodPullN: number;
  /** Relative, of the ball's mass. */
  readonly ballMassShare: number;
  /** Relative, of each of a lure's weight, drag and lift; they move only that lure. */
  readonly lureShare: number;
}

/** One uncertain input of a rig, as a way to move the rig by so many standard deviations. */
export interface RigParameter {
  /** A stable key for messages and docs. */
  readonly key: string;
  readonly moved: (rig: Downrigger, deviations: number) => Downrigger;
  /** It moves the lures on their releases and leaves the cable where it is. */
  readonly luresOnly?: true;
  /** It changes how much cable is out and nothing else. */
  readonly lengthOnly?: true;
  /** It moves depths so little, and so evenly, that one side of the band stands for both. */
  readonly mirrors?: true;
}

/** The spreads of a rig that was never calibrated, from the table of defaults. */
export function defaultSpreads(speedSdMS: number): DownriggerSpreads {
  return {
    speedMS: speedSdMS,
    lnDragShared: DEFAULTS.sharedDrag.sd,
    lnDragCable: DEFAULTS.cableDragMultiplier.sd,
    lnDragLines: DEFAULTS.lineDragMultiplier.sd,
    counterScale: DEFAULTS.counterScale.sd,
    counterOffsetM: DEFAULTS.counterOffsetM.sd,
    rodPullN: DEFAULTS.rodPullN.sd,
    ballMassShare: DEFAULTS.ballMassScale.sd,
    lureShare: DEFAULTS.spoonWeightN.sd,
  };
}

/**
 * The independent parameters with those spreads; the ones with none are left out. A calibration's parameters hang
 * together, so they come as one parameter for each of its axes.
 */
export function rigParameters(spreads: DownriggerSpreads): RigParameter[] {
  const rows: readonly (RigParameter & { readonly sd: number })[] = [
    { key: "speed", sd: spreads.speedMS, moved: (rig, d) => deeperFaster(rig, d * spreads.speedMS) },
    {
      key: "surface-speed",
      sd: spreads.surfaceSpeedMS ?? 0,
      moved: (rig, d) => higherFaster(rig, d * (spreads.surfaceSpeedMS ?? 0)),
    },
    ...shapeOfCurrent(spreads),
    {
      key: "drag-shared",
      sd: spreads.lnDragShared,
      moved: (rig, d) => rougherLines(rougherCable(rig, d * spreads.lnDragShared), d * spreads.lnDragShared),
    },
    ...cableAndCounter(spreads),
    {
      key: "drag-lines",
      sd: spreads.lnDragLines,
      moved: (rig, d) => rougherLines(rig, d * spreads.lnDragLines),
      mirrors: true,
    },
    { key: "rod-pull", sd: spreads.rodPullN, moved: (rig, d) => harderRods(rig, d * spreads.rodPullN) },
    {
      key: "ball-mass",
      sd: spreads.ballMassShare,
      moved: (rig, d) => heavierBall(rig, d * spreads.ballMassShare),
      mirrors: true,
    },
    ...(["weightN", "dragAreaM2", "liftAreaM2"] as const).map((field) => ({
      key: LURE_KEYS[field],
      sd: spreads.lureShare,
      luresOnly: true as const,
      moved: (rig: Downrigger, d: number) => otherLures(rig, field, d * spreads.lureShare),
    })),
  ];
  return rows.filter((row) => row.sd > 0);
}

function shapeOfCurrent({ shape }: DownriggerSpreads): (RigParameter & { readonly sd: number })[] {
  if (shape === undefined) return [];
  const moved = (rig: Downrigger, d: number): Downrigger => ({
    ...rig,
    flow: withFlowChange(rig.flow, shape, d, 0),
  });
  return [{ key: "current-shape", sd: 1, moved }];
}

function cableAndCounter(spreads: DownriggerSpreads): (RigParameter & { readonly sd: number })[] {
  if (spreads.calibration !== undefined)
    return calibrationAxes(spreads.calibration).map((axis) => ({ ...axis, sd: 1 }));
  return [
    {
      key: "drag-cable",
      sd: spreads.lnDragCable,
      moved: (rig, d) => rougherCable(rig, d * spreads.lnDragCable),
    },
    {
      key: "counter-scale",
      sd: spreads.counterScale,
      moved: (rig, d) => ({ ...rig, counterScale: Math.max(0, rig.counterScale + d * spreads.counterScale) }),
      lengthOnly: true,
    },
    {
      key: "counter-offset",
      sd: spreads.counterOffsetM,
      moved: (rig, d) => ({ ...rig, counterOffsetM: rig.counterOffsetM + d * spreads.counterOffsetM }),
      lengthOnly: true,
    },
  ];
}

const LURE_KEYS = { weightN: "lure-weight", dragAreaM2: "lure-drag", liftAreaM2: "lure-lift" } as const;

/** The rig at so many m/s more at every depth, never going astern. */
export function fasterRig(rig: Downrigger, byMS: number): Downrigger {
  return { ...rig, flow: changedFlow(rig.flow, (speedMS) => Math.max(0, speedMS + byMS)) };
}

/** The rig with its deep water faster by so much, the top as it was and the layers between in proportion. */
function deeperFaster(rig: Downrigger, byMS: number): Downrigger {
  const flow = changedFlow(rig.flow, (speedMS, deepShare) => Math.max(0, speedMS + deepShare * byMS));
  return { ...rig, flow };
}

/** The rig with its top water faster by so much, the deep as it was; nothing changes in a uniform stream. */
function higherFaster(rig: Downrigger, byMS: number): Downrigger {
  const flow = changedFlow(rig.flow, (speedMS, deepShare) => Math.max(0, speedMS + (1 - deepShare) * byMS));
  return { ...rig, flow };
}

/** The rig with so many metres more on its counter, never fewer than none. */
export function longerRig(rig: Downrigger, byM: number): Downrigger {
  return { ...rig, outM: Math.max(0, rig.outM + byM) };
}

function rougher<T extends { readonly dragMultiplier: number }>(line: T, lnMore: number): T {
  return { ...line, dragMultiplier: line.dragMultiplier * Math.exp(lnMore) };
}

function rougherCable(rig: Downrigger, lnMore: number): Downrigger {
  return { ...rig, cable: rougher<LineInUse>(rig.cable, lnMore) };
}

function rougherLines(rig: Downrigger, lnMore: number): Downrigger {
  return withRods(rig, (rod) => ({
    ...rod,
    lureLine: rougher(rod.lureLine, lnMore),
    ...(rod.rodLine === undefined ? {} : { rodLine: rougher(rod.rodLine, lnMore) }),
  }));
}

/** The rig with every rod that is clipped pulling so many N more, never less than nothing. */
export function harderRods(rig: Downrigger, moreN: number): Downrigger {
  return withRods(rig, (rod) => {
    if (rod.rodLine === undefined) return rod;
    const tipTensionN = Math.max(0, rod.rodLine.tipTensionN + moreN);
    return { ...rod, rodLine: { ...rod.rodLine, tipTensionN } };
  });
}

function heavierBall(rig: Downrigger, share: number): Downrigger {
  return { ...rig, ball: { ...rig.ball, massKg: rig.ball.massKg * Math.max(0.1, 1 + share) } };
}

function otherLures(rig: Downrigger, field: keyof LureForces, share: number): Downrigger {
  return withRods(rig, (rod) => ({ ...rod, lure: { ...rod.lure, [field]: rod.lure[field] * (1 + share) } }));
}

function withRods(rig: Downrigger, change: (rod: RodOnCable) => RodOnCable): Downrigger {
  return { ...rig, rods: rig.rods.map(change) };
}
