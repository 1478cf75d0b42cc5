/** The temperature at one depth of a profile, how well it is known, and where it is not. */
import type { ProfileNode, WaterProfile } from "./water-profile.ts";

/** A temperature, or why there is none. */
export type TempAtDepth =
  | {
      readonly kind: "known";
      readonly tempC: number;
      readonly sdC: number;
      /** The readings on both sides. */
      readonly between: readonly ProfileNode[];
    }
  | { readonly kind: "below-readings"; readonly deepestM: number; readonly tempC: number }
  | { readonly kind: "gap"; readonly topM: number; readonly bottomM: number };

/** Depths are read in whole feet: that much below the deepest reading is still at it, m. */
const AT_READING_M = 0.6;
/** The water above the first reading is taken to be mixed that far up, m (judgement). */
const MIXED_M = 3;
/** A wider gap between two readings that differ by more than this says nothing of the water between (judgement). */
const WIDEST_GAP_M = 15.5;
const SAME_WATER_C = 2.5;

/** Spread of a reading, C; what a minute of age adds to its depth, m; the share of a gap's span that is guessed. */
const SPREADS = { readingC: 0.25, driftMPerHour: 1, gapShare: 0.1 } as const;

/** The temperature at a depth that is known within `depthSdM`. */
export function temperatureAt(profile: WaterProfile, depthM: number, depthSdM = 0): TempAtDepth | undefined {
  const { nodes, curve, deepestM } = profile;
  const [first, last] = [nodes[0], nodes.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  if (depthM > deepestM + AT_READING_M) return { kind: "below-readings", deepestM, tempC: last.tempC };
  if (depthM < first.depthM - Math.max(MIXED_M, AT_READING_M)) {
    return { kind: "gap", topM: 0, bottomM: first.depthM };
  }
  const heldM = Math.min(Math.max(depthM, first.depthM), deepestM);
  const [above, below] = neighbors(nodes, heldM);
  if (isGap(above, below, heldM)) return { kind: "gap", topM: above.depthM, bottomM: below.depthM };
  const tempC = curve?.at(heldM) ?? first.tempC;
  const slope = curve?.slopeAt(heldM) ?? 0;
  return {
    kind: "known",
    tempC,
    sdC: spreadC(above, below, heldM, slope, depthSdM),
    between: [above, below],
  };
}

/** The readings on both sides of a depth; the same one twice where the depth is that of a reading. */
function neighbors(nodes: readonly ProfileNode[], depthM: number): [ProfileNode, ProfileNode] {
  let i = 0;
  while (i < nodes.length - 1 && (nodes[i] as ProfileNode).depthM < depthM) i++;
  const below = nodes[i] as ProfileNode;
  return [below.depthM <= depthM ? below : (nodes[i - 1] as ProfileNode), below];
}

/** True where the depth is too far between two readings that differ. */
export function isGap(above: ProfileNode, below: ProfileNode, depthM: number): boolean {
  const isAtReading = Math.min(depthM - above.depthM, below.depthM - depthM) <= AT_READING_M;
  const isWide = below.depthM - above.depthM > WIDEST_GAP_M;
  return isWide && !isAtReading && Math.abs(above.tempC - below.tempC) > SAME_WATER_C;
}

/** The reading's own spread, its layer's rise and fall since, the line's depth, and the shape between readings. */
function spreadC(
  above: ProfileNode,
  below: ProfileNode,
  depthM: number,
  slope: number,
  depthSdM: number,
): number {
  const ageHours = Math.max(above.ageMs, below.ageMs) / 3_600_000;
  const stepM = below.depthM - above.depthM;
  const share = stepM === 0 ? 0 : (depthM - above.depthM) / stepM;
  const shapeC = SPREADS.gapShare * Math.abs(above.tempC - below.tempC) * 4 * share * (1 - share);
  const shiftM = Math.hypot(depthSdM, SPREADS.driftMPerHour * ageHours);
  return Math.hypot(SPREADS.readingC, shapeC, slope * shiftM);
}

/** Where the water is between two temperatures, shallowest first; an open end lies at the deepest reading. */
export interface BandDepths {
  readonly topM: number;
  readonly bottomM: number;
  /** The band goes on below the deepest reading. */
  readonly isOpenBelow: boolean;
}

/** The depths at which the water lies inside a band; wide gaps between readings are left out. */
export function bandDepths(profile: WaterProfile, lowC: number, highC: number): BandDepths[] {
  const { nodes, deepestM } = profile;
  const first = nodes[0];
  const isIn = ({ tempC }: ProfileNode): boolean => tempC >= lowC - EDGE_C && tempC <= highC + EDGE_C;
  const found: { topM: number; bottomM: number; isOpenBelow: boolean }[] = [];
  const add = (topM: number, bottomM: number): void => {
    const last = found.at(-1);
    if (last !== undefined && topM - last.bottomM < TOUCHING_M) last.bottomM = bottomM;
    else found.push({ topM, bottomM, isOpenBelow: false });
  };
  if (first !== undefined && isIn(first)) add(first.depthM <= MIXED_M ? 0 : first.depthM, first.depthM);
  nodes.slice(1).forEach((below, i) => {
    const above = nodes[i];
    if (above === undefined) return;
    const isKnown = !isGap(above, below, (above.depthM + below.depthM) / 2);
    const within = isKnown ? stretchWithin(profile, above, below, lowC, highC) : undefined;
    if (within !== undefined) add(...within);
    else if (isIn(below)) add(below.depthM, below.depthM);
  });
  const last = found.at(-1);
  if (last !== undefined && deepestM - last.bottomM < TOUCHING_M) last.isOpenBelow = true;
  return found;
}

const EDGE_C = 0.005;
const TOUCHING_M = 0.05;

/** Between two readings the curve only rises or only falls, so a band takes one stretch of it. */
function stretchWithin(
  { curve }: WaterProfile,
  above: ProfileNode,
  below: ProfileNode,
  lowC: number,
  highC: number,
): [number, number] | undefined {
  const [coldC, warmC] = [Math.min(above.tempC, below.tempC), Math.max(above.tempC, below.tempC)];
  if (coldC > highC + EDGE_C || warmC < lowC - EDGE_C) return undefined;
  const depthOf = (tempC: number): number => {
    if (tempC <= coldC) return above.tempC < below.tempC ? above.depthM : below.depthM;
    if (tempC >= warmC) return above.tempC < below.tempC ? below.depthM : above.depthM;
    return crossing(curve, above, below, tempC);
  };
  if (above.tempC === below.tempC) return [above.depthM, below.depthM];
  const ends = [depthOf(lowC), depthOf(highC)];
  return [Math.min(...ends), Math.max(...ends)];
}

/** By halves, to a few millimeters. */
function crossing(
  curve: WaterProfile["curve"],
  above: ProfileNode,
  below: ProfileNode,
  tempC: number,
): number {
  let [topM, bottomM] = [above.depthM, below.depthM];
  const isRising = above.tempC < below.tempC;
  while (bottomM - topM > 0.005) {
    const middleM = (topM + bottomM) / 2;
    const isBelow = (curve?.at(middleM) ?? above.tempC) < tempC === isRising;
    if (isBelow) topM = middleM;
    else bottomM = middleM;
  }
  return (topM + bottomM) / 2;
}
