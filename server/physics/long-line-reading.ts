import type { MeasuredAs } from "./calibration-reading.ts";
import { whyNoLongLine } from "./check-long-line.ts";
import { DEFAULTS } from "./defaults.ts";
import { type LongLine, lineInWaterM, towedLineOf } from "./long-line.ts";
import { type LongLineParameter, type LongLineSpreads, longLineParameters } from "./long-line-parameters.ts";
import type { Reason } from "./refusal.ts";
import type { Expectation } from "./robust-fit.ts";
import { type SolvedNode, solveTowedLine, type TowedLine } from "./towed-line.ts";
import { waterAt } from "./water.ts";

/** One reading that tells of a long line: at a probe clipped on it, or of what touched the bottom. */
export interface LongLineReading {
  /** The line as it was set. */
  readonly line: LongLine;
  /** How well its inputs are known before any fit. */
  readonly spreads: LongLineSpreads;
  /** "ball" stands for what touches: the deeper of joint and lure. */
  readonly as: MeasuredAs;
  /** How far above the joint the probe is clipped, along the line, m. */
  readonly probeAboveJointM: number | undefined;
  readonly measuredM: number;
  /** The instrument's own error, m. */
  readonly sdM: number;
}

/** Each step's error bound while slopes are taken. */
const TOLERANCE = 1e-8;

/** Why a reading of a long line cannot be used, as a plain reason, or `undefined`. */
export function whyNoLineReading(reading: LongLineReading): Reason | undefined {
  const { line, as, probeAboveJointM, measuredM, sdM } = reading;
  if (![measuredM, sdM].every(Number.isFinite)) return "a number of the reading is missing";
  if (measuredM < 0) return "a depth or distance below zero can't be";
  if (sdM <= 0) return "the reading states no error";
  const why = whyNoLongLine(line);
  if (why !== undefined || !as.startsWith("probe")) return why;
  if (probeAboveJointM === undefined) return "where the probe is clipped isn't known";
  return probeAboveJointM >= lineInWaterM(line).mainM
    ? "the probe is clipped above the line that is out"
    : undefined;
}

/** The value that the model gives for a reading with its line as stated, m; undefined where it has no answer. */
export function expectedOnLine(line: LongLine, reading: LongLineReading): number | undefined {
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  if (!water.ok) return undefined;
  const isProbe = reading.as.startsWith("probe");
  const towed = towedLineOf(line, water);
  const asked = isProbe ? splitAbove(towed, reading.probeAboveJointM ?? 0) : towed;
  const solved = solveTowedLine(asked, water, line.flow, { xM: 0, zM: 0 }, TOLERANCE);
  if (!solved.ok) return undefined;
  const nodes = solved.nodes.slice(MAIN_NODE);
  const place = isProbe ? nodes[0] : deepest(nodes);
  const value = reading.as.endsWith("depth") ? place?.zM : place?.xM;
  return value !== undefined && Number.isFinite(value) ? value : undefined;
}

/** The node at the main line's lower end; backing is the segment above it. */
const MAIN_NODE = 2;

/** The line with a node so far above the main line's lower end. */
function splitAbove({ segments, bodies }: TowedLine, aboveM: number): TowedLine {
  const [backing, main, ...below] = segments;
  if (backing === undefined || main === undefined) return { segments, bodies };
  const upper = { ...main, lengthM: Math.max(0, main.lengthM - aboveM) };
  const lower = { ...main, lengthM: Math.min(aboveM, main.lengthM) };
  return {
    segments: [backing, upper, lower, ...below],
    bodies: bodies.map((body) => ({ ...body, node: body.node + 1 })),
  };
}

function deepest(nodes: readonly SolvedNode[]): SolvedNode | undefined {
  return nodes.reduce<SolvedNode | undefined>(
    (best, node) => (best === undefined || node.zM > best.zM ? node : best),
    undefined,
  );
}

/** One parameter of a fit as it moves a line. */
export interface LineStep {
  readonly step: number;
  readonly moved: (line: LongLine, by: number) => LongLine;
}

/**
 * What the model expects of a reading on a line, how that answers to the fitted parameters, and the spread around it
 * from the instrument, from the inputs that are not fitted (`open`), and from the model itself.
 */
export function expectOnLine(
  reading: LongLineReading,
  line: LongLine,
  fitted: readonly LineStep[],
  open: readonly LongLineParameter[],
): Expectation | undefined {
  const expectedM = expectedOnLine(line, reading);
  if (expectedM === undefined) return undefined;
  const change = (other: LongLine): number => (expectedOnLine(other, reading) ?? expectedM) - expectedM;
  const slopes = fitted.map(({ step, moved }) => change(moved(line, step)) / step);
  let variance = reading.sdM ** 2 + (DEFAULTS.modelDepthShare.value * expectedM) ** 2;
  for (const { moved } of open) variance += change(moved(line, 1)) ** 2;
  return { expectedM, slopes, sdM: Math.sqrt(variance) };
}

/** The inputs of a reading's line that a fit leaves open: all but those with these keys. */
export function openParameters(
  { spreads }: LongLineReading,
  fitted: ReadonlySet<string>,
): LongLineParameter[] {
  return longLineParameters(spreads).filter(({ key }) => !fitted.has(key));
}
