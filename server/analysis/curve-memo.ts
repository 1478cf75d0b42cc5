/** Lines drawn through the water, kept by value, and how near each two of them come. */
import type { Approach } from "../physics/closest-approach.ts";
import type { CurvePart } from "../physics/rig-curves.ts";

/** The lines of one rig, and of the rods on its cable, as they hang in one water, speed and turn. */
export interface DrawnRig {
  /** Tells apart what was drawn from different settings. */
  readonly id: number;
  readonly parts: readonly CurvePart[];
}

/** Two parts of two rigs and where they come nearest. */
export interface PartsApproach extends Approach {
  readonly part: CurvePart;
  readonly otherPart: CurvePart;
}

/** What was drawn and compared. */
export interface CurveMemo {
  readonly drawn: Map<string, DrawnRig | null>;
  /** Keys of what is towed, by the very task; each is long, and most are asked for often. */
  readonly keys: WeakMap<object, string>;
  readonly approaches: Map<string, PartsApproach | null>;
}

/** A memo with nothing in it. */
export function createCurveMemo(): CurveMemo {
  return { drawn: new Map(), keys: new WeakMap(), approaches: new Map() };
}

/** Enough for the turns of some seasons; past it the memo starts anew, approaches with it. */
const MOST_DRAWN = 2000;
/** All pairs of a turn with ten rigs are 45. */
const MOST_APPROACHES = 20_000;

/** What is towed, written out; once for each. */
export function towedKey({ keys }: CurveMemo, towed: object): string {
  const known = keys.get(towed);
  if (known !== undefined) return known;
  const key = JSON.stringify(towed);
  keys.set(towed, key);
  return key;
}

let lastId = 0;

/** The rig drawn before from the same key, or a new one; null where it can't be drawn. */
export function drawnRig(
  { drawn }: CurveMemo,
  key: string,
  draw: () => readonly CurvePart[] | undefined,
): DrawnRig | null {
  const known = drawn.get(key);
  if (known !== undefined) return known;
  const parts = draw();
  const rig = parts === undefined ? null : { id: ++lastId, parts };
  if (drawn.size >= MOST_DRAWN) drawn.clear();
  drawn.set(key, rig);
  return rig;
}

/** The approach found before under the same key, or a new one; null where there is none. */
export function keptApproach(
  { approaches }: CurveMemo,
  key: string,
  find: () => PartsApproach | undefined,
): PartsApproach | null {
  const known = approaches.get(key);
  if (known !== undefined) return known;
  const found = find() ?? null;
  if (approaches.size >= MOST_APPROACHES) approaches.clear();
  approaches.set(key, found);
  return found;
}
