/** How much to let out for a depth: the inverse of a line's depth, for every kind of rig, in what the captain counts. */
import { cableRigOf } from "../model/trip.ts";
import { once } from "../physics/downrigger-band.ts";
import { type CounterReading, counterReading, counterUnit } from "./counter-reading.ts";
import { deepestReach, type Reach } from "./deepest-reach.ts";
import type { DepthMemo } from "./depth-memo.ts";
import type { DepthPlace } from "./depth-place.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";
import { cableLetOut } from "./let-out-cable.ts";
import { longLineLetOut } from "./let-out-long-line.ts";
import type { Invertible, LineToSet, TargetOf } from "./line-to-set.ts";

export type { LineToSet } from "./line-to-set.ts";

/** A length and the depth it brings, m. */
type LetOutReach = CounterReading & { readonly depthM: number };

/** So much is let out, or the reason there is none. */
export type LetOut =
  | (CounterReading & {
      readonly ok: true;
      readonly of: TargetOf;
      /** The length before it was rounded to what can be counted, m. */
      readonly exactM: number;
      /** The depth with the rounded length out, with its range: solved when it is looked at; none without an answer. */
      readonly band: DepthPlace | undefined;
    })
  | {
      readonly ok: false;
      readonly why: string;
      readonly of?: TargetOf;
      /** Where it is not reachable at this speed. */
      readonly deepest?: LetOutReach | undefined;
    };

const NOT_REACHABLE = "not reachable at this speed";

/** A line in its water, asked for any number of depths: what they have in common is worked out once. */
export type LetOutAsked = (depthM: number) => LetOut;

/** Answers one depth in `unit`, else in the unit the rig is counted in. */
export function letOut(
  line: LineToSet,
  water: WaterAndSpeed,
  depthM: number,
  memo: DepthMemo,
  unit: string = counterUnit(line.gear, line.rig),
): LetOut {
  return letOutAsker(line, water, memo, unit)(depthM);
}

/** The same for several depths of one line in the same water. */
export function letOutAsker(
  line: LineToSet,
  water: WaterAndSpeed,
  memo: DepthMemo,
  unit: string = counterUnit(line.gear, line.rig),
): LetOutAsked {
  const { gear, rig } = line;
  const rigged =
    cableRigOf(gear, rig.name) === undefined
      ? longLineLetOut(line, water, memo)
      : cableLetOut(line, water, memo);
  if (!rigged.ok) return () => rigged;
  const { of, mostM } = rigged;
  const deepest = once(() => deepestReach((outM) => rigged.depthAt(outM), mostM));
  return (depthM) => {
    const found = rigged.lengthFor(depthM);
    if (found === undefined) return unreachable(line, rigged, depthM, unit, deepest);
    if (!found.ok) return { ...found, of };
    const reading = counterReading(gear, rig, found.outM, mostM, unit);
    const band = once(() => rigged.placeAt(reading));
    return {
      ok: true,
      of,
      exactM: found.outM,
      ...reading,
      get band() {
        const place = band();
        return "ok" in place ? undefined : place;
      },
    };
  };
}

/** How deep it comes at all is looked for when it is asked for. */
function unreachable(
  { gear, rig }: LineToSet,
  { of, mostM }: Invertible,
  wantedM: number,
  unit: string,
  deepest: () => Reach | undefined,
): LetOut {
  return {
    ok: false,
    of,
    why: NOT_REACHABLE,
    get deepest() {
      const found = deepest();
      if (found === undefined || found.depthM >= wantedM) return undefined;
      return { ...counterReading(gear, rig, found.outM, mostM, unit), depthM: found.depthM };
    },
  };
}
