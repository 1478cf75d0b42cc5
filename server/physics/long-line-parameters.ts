import { type CalibrationSpread, calibrationSteps } from "./calibration-spread.ts";
import { DEFAULTS } from "./defaults.ts";
import { type FlowChange, withFlowChange } from "./flow-change.ts";
import { changedFlow } from "./flow-profile.ts";
import type { LongLine, PieceBelow } from "./long-line.ts";
import type { LineInUse, LureForces } from "./lure.ts";

/** How well a diver's areas are known: standard deviations of their logarithms, and their correlation. */
export interface DiverSpread {
  readonly lnLiftSd: number;
  readonly lnDragSd: number;
  /** -1 to 1. */
  readonly link: number;
}

/** Standard deviations of what is not known exactly about a long line. A calibration brings narrower ones. */
export interface LongLineSpreads {
  /** Of the speed through the water, m/s; it depends on where the speed was read. */
  readonly speedMS: number;
  /** Of the speed on top, m/s, where the stream is sheared; `speedMS` is then that of the deep speed alone. */
  readonly surfaceSpeedMS?: number;
  /** What one standard deviation of a sheared stream's shape changes. */
  readonly shape?: FlowChange;
  /** Of the logarithm of what all lines share of the error in their drag. */
  readonly lnDragShared: number;
  /** Of the logarithm of the main line's own drag multiplier. */
  readonly lnDragMain: number;
  /** Of the logarithm of the drag multiplier of backing and leaders. */
  readonly lnDragLines: number;
  /** Relative, of the main line's weight in the water. */
  readonly weightShare: number;
  /** Relative, of the length the counter shows. */
  readonly counterScale: number;
  /** Of the length out, m, whatever its size: half a color, the mark at the water line. */
  readonly outM: number;
  /** Relative, of a diver's areas or an in-line weight, each. */
  readonly jointShare: number;
  /** A measured diver's areas, tied together; takes the place of `jointShare`. */
  readonly diver?: DiverSpread;
  /** Drag and counter as a calibration knows them, tied together; takes the place of the main line's and counter's own. */
  readonly calibration?: CalibrationSpread;
  /** Relative, of each of a lure's weight, drag and lift; a flasher's drag goes with the lure's. */
  readonly lureShare: number;
}

/**
 * One uncertain input of a long line, as a way to move the line by so many standard deviations; the very line where it has
 * no say in it.
 */
export interface LongLineParameter {
  readonly key: string;
  readonly moved: (line: LongLine, deviations: number) => LongLine;
}

/** The spreads of a line that was never calibrated and whose length was read off a counter. */
export function defaultLongLineSpreads(speedSdMS: number): LongLineSpreads {
  return {
    speedMS: speedSdMS,
    lnDragShared: DEFAULTS.sharedDrag.sd,
    lnDragMain: DEFAULTS.lineDragMultiplier.sd,
    lnDragLines: DEFAULTS.lineDragMultiplier.sd,
    weightShare: DEFAULTS.lineWeightScale.sd,
    counterScale: DEFAULTS.lineCounterScale.sd,
    outM: DEFAULTS.lineOutsetM.sd,
    jointShare: DEFAULTS.inlineWeightScale.sd,
    lureShare: DEFAULTS.spoonWeightN.sd,
  };
}

/** The independent parameters with those spreads; the ones with none are left out. */
export function longLineParameters(spreads: LongLineSpreads): LongLineParameter[] {
  const { speedMS, lnDragShared, lnDragLines, weightShare, lureShare } = spreads;
  const rows: readonly Row[] = [
    { key: "speed", sd: speedMS, moved: (line, d) => deeperFaster(line, d * speedMS) },
    {
      key: "surface-speed",
      sd: spreads.surfaceSpeedMS ?? 0,
      moved: (line, d) => higherFaster(line, d * (spreads.surfaceSpeedMS ?? 0)),
    },
    ...shapeOfCurrent(spreads),
    {
      key: "drag-shared",
      sd: lnDragShared,
      moved: (line, d) => rougherOthers(rougherMain(line, d * lnDragShared), d * lnDragShared),
    },
    ...mainAndCounter(spreads),
    { key: "drag-lines", sd: lnDragLines, moved: (line, d) => rougherOthers(line, d * lnDragLines) },
    { key: "line-weight", sd: weightShare, moved: (line, d) => heavierMain(line, d * weightShare) },
    ...jointRows(spreads),
    ...FIELDS.map((field): Row => {
      const moved = (line: LongLine, d: number): LongLine => otherLure(line, field, d * lureShare);
      return { key: `lure-${KEYS[field]}`, sd: lureShare, moved };
    }),
  ];
  return rows.filter((row) => row.sd > 0);
}

type Row = LongLineParameter & { readonly sd: number };
const FIELDS = ["weightN", "dragAreaM2", "liftAreaM2"] as const;

function shapeOfCurrent({ shape }: LongLineSpreads): Row[] {
  if (shape === undefined) return [];
  const moved = (line: LongLine, d: number): LongLine => ({
    ...line,
    flow: withFlowChange(line.flow, shape, d, LEAST_SPEED_MS),
  });
  return [{ key: "current-shape", sd: 1, moved }];
}

function mainAndCounter({ calibration, lnDragMain, counterScale, outM }: LongLineSpreads): Row[] {
  if (calibration !== undefined) {
    return calibrationSteps(calibration).map(({ key, lnDrag, counterScale: scale, counterOffsetM }) => ({
      key,
      sd: 1,
      moved: (line, d) => ({
        ...rougherMain(line, d * lnDrag),
        counterScale: Math.max(0, line.counterScale + d * scale),
        counterOffsetM: line.counterOffsetM + d * counterOffsetM,
      }),
    }));
  }
  return [
    { key: "drag-main", sd: lnDragMain, moved: (line, d) => rougherMain(line, d * lnDragMain) },
    {
      key: "counter-scale",
      sd: counterScale,
      moved: (line, d) => ({ ...line, counterScale: Math.max(0, line.counterScale + d * counterScale) }),
    },
    { key: "line-out", sd: outM, moved: (line, d) => longerLine(line, d * outM) },
  ];
}

function jointRows({ diver, jointShare }: LongLineSpreads): Row[] {
  if (diver === undefined) {
    return FIELDS.map((field) => ({
      key: `joint-${KEYS[field]}`,
      sd: jointShare,
      moved: (line, d) => otherJoint(line, field, d * jointShare),
    }));
  }
  const { lnLiftSd, lnDragSd, link } = diver;
  const moved =
    (lnLift: number, lnDrag: number) =>
    (line: LongLine, d: number): LongLine =>
      otherAreas(line, d * lnLift, d * lnDrag);
  return [
    { key: "diver-pull", sd: lnLiftSd, moved: moved(lnLiftSd, lnDragSd * link) },
    { key: "diver-drag", sd: lnDragSd, moved: moved(0, lnDragSd * Math.sqrt(Math.max(0, 1 - link * link))) },
  ];
}

const KEYS = { weightN: "weight", dragAreaM2: "drag", liftAreaM2: "lift" } as const;

/** The least speed, m/s, that a band's slow side is solved at. */
const LEAST_SPEED_MS = 0.02;

/** The line at so many m/s more at every depth, never going astern nor coming to a stop. */
export function fasterLine(line: LongLine, byMS: number): LongLine {
  return { ...line, flow: changedFlow(line.flow, (speedMS) => Math.max(LEAST_SPEED_MS, speedMS + byMS)) };
}

/** The line with its deep water faster by so much, the top as it was. */
function deeperFaster(line: LongLine, byMS: number): LongLine {
  const faster = (speedMS: number, deepShare: number) => Math.max(LEAST_SPEED_MS, speedMS + deepShare * byMS);
  return { ...line, flow: changedFlow(line.flow, faster) };
}

/** The line with its top water faster by so much, the deep as it was; nothing changes in a uniform stream. */
function higherFaster(line: LongLine, byMS: number): LongLine {
  const faster = (speedMS: number, deepShare: number) =>
    Math.max(LEAST_SPEED_MS, speedMS + (1 - deepShare) * byMS);
  return { ...line, flow: changedFlow(line.flow, faster) };
}

/** The line with so many meters more on its counter, never fewer than none. */
export function longerLine(line: LongLine, byM: number): LongLine {
  return { ...line, outM: Math.max(0, line.outM + byM) };
}

function rougher(line: LineInUse, lnMore: number): LineInUse {
  return { ...line, dragMultiplier: line.dragMultiplier * Math.exp(lnMore) };
}

function rougherMain(line: LongLine, lnMore: number): LongLine {
  return { ...line, main: rougher(line.main, lnMore) };
}

function rougherOthers(line: LongLine, lnMore: number): LongLine {
  if (line.backing === undefined && line.below.length === 0) return line;
  return {
    ...line,
    ...(line.backing === undefined ? {} : { backing: rougher(line.backing, lnMore) }),
    below: line.below.map((piece) => ({ ...piece, line: rougher(piece.line, lnMore) })),
  };
}

const WATER_KG_M3 = 1000;

/** The weight in the water changes; the water pushed aside stays. */
function heavierMain(line: LongLine, share: number): LongLine {
  const { make } = line.main;
  const moreKgM = share * (make.massKgM - WATER_KG_M3 * make.displacedM2);
  const massKgM = Math.max(0, make.massKgM + moreKgM);
  return { ...line, main: { ...line.main, make: { ...make, massKgM } } };
}

function scaled(forces: LureForces, field: keyof LureForces, share: number): LureForces {
  return { ...forces, [field]: forces[field] * Math.max(0, 1 + share) };
}

function otherJoint(line: LongLine, field: keyof LureForces, share: number): LongLine {
  return !line.joint?.[field] ? line : { ...line, joint: scaled(line.joint, field, share) };
}

function otherAreas(line: LongLine, lnLift: number, lnDrag: number): LongLine {
  const { joint } = line;
  if (joint === undefined) return line;
  const { liftAreaM2, dragAreaM2 } = joint;
  return {
    ...line,
    joint: {
      ...joint,
      liftAreaM2: liftAreaM2 * Math.exp(lnLift),
      dragAreaM2: dragAreaM2 * Math.exp(lnDrag),
    },
  };
}

function otherLure(line: LongLine, field: keyof LureForces, share: number): LongLine {
  if (line.lure[field] === 0 && line.below.every(({ end }) => !end?.[field])) return line;
  const below = line.below.map(
    (piece): PieceBelow =>
      piece.end === undefined ? piece : { ...piece, end: scaled(piece.end, field, share) },
  );
  return { ...line, lure: scaled(line.lure, field, share), below };
}
