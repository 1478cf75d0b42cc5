/** Temperatures, bands and currents as the captain reads them. */
import { findUnit, fromSi } from "../../grammar/units.ts";
import type { Moon } from "../analysis/light.ts";
import type { TargetBand } from "../analysis/lure-water.ts";
import type { BandDepths } from "../analysis/temperature-at.ts";
import { lengthWords, speedWords, tempWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** The share of days a range should hold, as with depths: 80 %, so that many standard deviations to each side. */
const RANGE_SDS = 1.2816;

/** `48 F (46 to 50)`. */
export function tempRangeWords(gear: Gear, tempC: number, sdC: number): string {
  const low = numberOf(tempWords(gear, tempC - RANGE_SDS * sdC));
  const high = numberOf(tempWords(gear, tempC + RANGE_SDS * sdC));
  return `${tempWords(gear, tempC)} (${low} to ${high})`;
}

const numberOf = (words: string): string => words.split(" ")[0] ?? "";

/** `50 to 85 ft`, `57 ft to past 100 ft, the deepest read`, each stretch of a band after the other. */
export function bandDepthWords(gear: Gear, depths: readonly BandDepths[]): string {
  if (depths.length === 0) return "none where it was read";
  return depths
    .map(({ topM, bottomM, isOpenBelow }) => {
      if (isOpenBelow)
        return `${lengthWords(gear, topM)} to past ${lengthWords(gear, bottomM)}, the deepest read`;
      return extentWords(gear, topM, bottomM);
    })
    .join(" and ");
}

/** `50 to 85 ft`. */
export function extentWords(gear: Gear, topM: number, bottomM: number): string {
  const [top, bottom] = [lengthWords(gear, topM), lengthWords(gear, bottomM)];
  return top === bottom ? top : `${numberOf(top)} to ${bottom}`;
}

/** `your chinook band`, `the published chinook band`. */
export function bandName({ species, from, standing }: TargetBand): string {
  if (from === "captain") return `your ${species} band`;
  return standing === "seen"
    ? `the published ${species} band`
    : `the published ${species} band (from memory)`;
}

/** `45 to 52 F`. */
export function bandTempWords(gear: Gear, { tempC }: TargetBand): string {
  return `${numberOf(tempWords(gear, tempC.low))} to ${tempWords(gear, tempC.high)}`;
}

const QUARTERS = ["", "a quarter of a", "half a", "three quarters of a"];

/** A current's size: `half a mph`, `1.3 mph`; in quarters below one. */
export function currentWords(gear: Gear, speedMS: number): string {
  const unit = unitOf(speedWords(gear, 1));
  const row = findUnit(unit);
  const size = row === undefined ? speedMS : fromSi(Math.abs(speedMS), row);
  const quarters = Math.round(size * 4);
  return quarters < 4 && quarters > 0 ? `${QUARTERS[quarters]} ${unit}` : speedWords(gear, Math.abs(speedMS));
}

/** `0.3 to 0.7`: the range of a current's size, not below nothing. */
export function currentRangeWords(gear: Gear, speedMS: number, sdMS: number): string {
  const low = speedWords(gear, Math.max(0, speedMS - RANGE_SDS * sdMS));
  return `${numberOf(low)} to ${numberOf(speedWords(gear, speedMS + RANGE_SDS * sdMS))}`;
}

/** True when a current is told from none by these speeds. */
export const isTold = (speedMS: number, sdMS: number): boolean => Math.abs(speedMS) > RANGE_SDS * sdMS;

const unitOf = (words: string): string => words.split(" ")[1] ?? "";

/** A direction in three digits: `045`. */
export function directionWords(deg: number): string {
  return String(Math.round(deg) % 360).padStart(3, "0");
}

/** How far something lies deeper or shallower: `4 ft deeper`; empty below two feet. */
export function shiftWords(gear: Gear, deeperM: number): string {
  if (Math.abs(deeperM) < LEAST_SHIFT_M) return "";
  return `${lengthWords(gear, Math.abs(deeperM))} ${deeperM > 0 ? "deeper" : "shallower"}`;
}

/** Two feet: less is within what readings differ by (judgement). */
const LEAST_SHIFT_M = 0.6;

const PHASES = [
  "new moon",
  "waxing crescent",
  "first quarter",
  "waxing, more than half",
  "full moon",
  "waning, more than half",
  "last quarter",
  "waning crescent",
];

/** `full moon, 99 % lit, 20 degrees above the horizon`. */
export function moonWords({ phase, litShare, altitudeDeg }: Moon): string {
  const name = PHASES[Math.round(phase * 8) % 8] ?? "";
  const height = Math.round(Math.abs(altitudeDeg));
  return `${name}, ${Math.round(litShare * 100)} % lit, ${height} degrees ${altitudeDeg < 0 ? "below" : "above"} the horizon`;
}
