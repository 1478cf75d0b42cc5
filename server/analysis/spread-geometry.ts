/** Where lines are towed from, and how far that may be from the truth: the book says the side and little more. */
import type { Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";

/** Where a rig's line enters the water, across the boat. */
export interface TowPlace {
  readonly side: "port" | "center" | "starboard";
  /** m to starboard of the boat's middle; port is negative. */
  readonly acrossM: number;
  /** At the stated distance of a planer board; everything else is taken from the side alone. */
  readonly onBoard: boolean;
}

/** By how much, m to starboard, one rig may stand otherwise against another than where both are drawn. */
export interface ShiftRange {
  readonly fromM: number;
  /** The likeliest. */
  readonly usualM: number;
  readonly toM: number;
}

const SIGN = { port: -1, center: 0, starboard: 1 } as const;

/**
 * Where a rig's line goes in: a board at its distance, the middle at 0, a side at half the beam plus the boom.
 * `undefined` where no side is stated.
 */
export function towPlaceOf(
  { side, boardM: bookM, boomM = 0 }: Rig,
  setting: Setting,
  beamM: number = DEFAULTS.boatBeamM.value,
): TowPlace | undefined {
  if (side === undefined) return undefined;
  const boardM = setting.boardM ?? bookM;
  if (boardM !== undefined && side !== "center") return { side, acrossM: SIGN[side] * boardM, onBoard: true };
  const gunwaleM = 0.5 * beamM + boomM;
  // Not -0 for the middle.
  return { side, acrossM: side === "center" ? 0 : SIGN[side] * gunwaleM, onBoard: false };
}

/**
 * How the second of two rigs may be shifted against the first. Rigs of one side are drawn in one place: they stand
 * apart by a spacing in the order of the book, as far as anyone knows, and twice that to either hand at the most. Two
 * boards of one side keep the difference that is stated; in a turn every board may leave its distance by a share.
 */
export function shiftRange(one: TowPlace, other: TowPlace, isTurn: boolean): ShiftRange {
  const { rigSpacingM, sidePlaceM, boardPlaceShare } = DEFAULTS;
  const isOneSide = one.side === other.side;
  if (isOneSide && !one.onBoard && !other.onBoard) {
    const mostM = 2 * rigSpacingM.value;
    const outward = one.side === "port" ? -1 : 1;
    return { fromM: -mostM, usualM: outward * rigSpacingM.value, toM: mostM };
  }
  const boards = [one, other].filter((place) => place.onBoard).map((place) => Math.abs(place.acrossM));
  const gunwales = 2 - boards.length;
  const farthestM =
    isOneSide && gunwales === 0 ? Math.abs(one.acrossM - other.acrossM) : Math.max(0, ...boards);
  const offM = gunwales * sidePlaceM.value + (isTurn ? boardPlaceShare.value * farthestM : 0);
  return { fromM: -offM, usualM: 0, toM: offM };
}

/** The farthest apart across the boat that two rigs may stand: going straight, no two points of them are nearer. */
export function farthestAcrossM(one: TowPlace, other: TowPlace, { fromM, toM }: ShiftRange): number {
  const apartM = other.acrossM - one.acrossM;
  return Math.max(Math.abs(apartM + fromM), Math.abs(apartM + toM));
}
