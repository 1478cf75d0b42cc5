/**
 * Every threshold by name, with its default and where it comes from. A boat's `threshold NAME VALUE` line or the
 * editor's settings change it. Values in SI (temperatures in °C).
 */
import type { Dimension } from "../../grammar/units.ts";
import { findUnit } from "../../grammar/units.ts";
import type { Gear } from "./gear-types.ts";
import { partsToSi } from "./quantities.ts";

/** One threshold. `dimension` is null for a plain number. */
export interface ThresholdRow {
  readonly name: string;
  readonly dimension: Dimension | null;
  readonly defaultSi: number;
  /** The default as a captain would write it. */
  readonly written: string;
  readonly origin: "common practice" | "judgement" | "from memory";
  readonly doc: string;
}

const row = (
  name: string,
  dimension: Dimension | null,
  written: string,
  origin: ThresholdRow["origin"],
  doc: string,
): ThresholdRow => {
  const value = readThreshold(written.split(" "), dimension);
  if (value === undefined) throw new Error(`threshold ${name}: "${written}" can't be read`);
  return { name, dimension, defaultSi: value, written, origin, doc };
};

/** Reads the words of a threshold's value; undefined when they don't fit its dimension, or are below zero but no temperature. */
export function readThreshold(words: readonly string[], dimension: Dimension | null): number | undefined {
  const [number = "", unit, ...rest] = words;
  const value = Number(number);
  if (number === "" || !Number.isFinite(value) || rest.length > 0) return undefined;
  if (value < 0 && dimension !== "temperature") return undefined;
  if (dimension === null) return unit === undefined ? value : undefined;
  if (unit === undefined || findUnit(unit)?.dimension !== dimension) return undefined;
  return partsToSi([{ number, unit }], undefined, dimension);
}

/** The table of thresholds. */
export const THRESHOLDS = {
  readingStale: row(
    "reading-stale",
    "duration",
    "30 min",
    "judgement",
    "Age at which a reading is called stale.",
  ),
  readingUnused: row(
    "reading-unused",
    "duration",
    "120 min",
    "judgement",
    "Age past which a reading is not used.",
  ),
  readingAhead: row(
    "reading-ahead",
    "duration",
    "60 min",
    "judgement",
    "How far ahead the first reading may serve a line before it.",
  ),
  profileUnused: row(
    "profile-unused",
    "duration",
    "6 h",
    "judgement",
    "Age past which a temperature no longer tells what the water is like at its depth.",
  ),
  bottomHeld: row(
    "bottom-held",
    "duration",
    "60 min",
    "judgement",
    "How long a depth of the bottom is taken to hold.",
  ),
  touchingBottom: row(
    "touching-bottom",
    "length",
    "3 ft",
    "judgement",
    "How near the bottom a ball or lure may come before it is flagged.",
  ),
  longestOut: row(
    "longest-out",
    "length",
    "600 ft",
    "common practice",
    "More line out than this is doubted, unless the rig is stated to hold it.",
  ),
  counterShare: row(
    "deeper-than-out-share",
    null,
    "0.1",
    "judgement",
    "How much deeper than the cable out a reading may be before it is an error, as a share.",
  ),
  counterSlack: row("deeper-than-out-slack", "length", "6 ft", "judgement", "The same, on top of the share."),
  counterRounding: row(
    "deeper-than-out-ignored",
    "length",
    "1 ft",
    "judgement",
    "How much deeper than the cable out a reading may be before anything is said: readings are whole feet.",
  ),
  noDeeper: row(
    "no-deeper",
    null,
    "0.1",
    "judgement",
    "Depth gained for each length let out, as a share, below which more line is said to go no deeper.",
  ),
  crossingMargin: row(
    "crossing-margin",
    "length",
    "3 ft",
    "judgement",
    "How near to each other two lines may come before it is said that they may cross.",
  ),
  depthDisagrees: row(
    "depth-disagrees",
    "length",
    "3 ft",
    "judgement",
    "How far a measured depth may be from the computed one before anything is said: balls rise and fall in the waves.",
  ),
  counterDrift: row(
    "counter-drift",
    null,
    "0.02",
    "judgement",
    "How far a counter may be off before anything is said, as a share.",
  ),
  slowTroll: row(
    "slowest-troll",
    "speed",
    "0.5 mph",
    "common practice",
    "Slower than this with lines wet is doubted.",
  ),
  fastTroll: row(
    "fastest-troll",
    "speed",
    "6 mph",
    "common practice",
    "Faster than this with lines wet is doubted.",
  ),
  fastBoat: row(
    "impossible-troll",
    "speed",
    "25 mph",
    "common practice",
    "Faster than this with lines wet is an error.",
  ),
  strongestCurrent: row(
    "strongest-current",
    "speed",
    "3 mph",
    "judgement",
    "Two speeds that would need a stronger current are doubted.",
  ),
  wheelChange: row(
    "stuck-wheel-change",
    "speed",
    "0.4 mph",
    "judgement",
    "A wheel's speed that stays the same while the GPS changes by this on one course is doubted.",
  ),
  sameMinuteSpeed: row(
    "same-minute-speed",
    "speed",
    "0.5 mph",
    "judgement",
    "Speeds that one instrument shows in one minute and that are farther apart contradict each other.",
  ),
  sameMinuteDepth: row(
    "same-minute-depth",
    "length",
    "5 ft",
    "judgement",
    "Depths that one probe shows in one minute and that are farther apart contradict each other.",
  ),
  speedsTogether: row(
    "speeds-together",
    "duration",
    "5 min",
    "judgement",
    "Speeds read within this of each other are compared; farther apart the boat may have gone faster meanwhile.",
  ),
  turnSettles: row(
    "turn-settles",
    "duration",
    "3 min",
    "judgement",
    "Speeds, courses and positions within this of a turn may be of another heading, and are not compared.",
  ),
  currentHolds: row(
    "current-holds",
    "duration",
    "60 min",
    "judgement",
    "How long before and after it is read a current is taken to hold.",
  ),
  frozenCable: row(
    "probe-frozen-cable",
    "length",
    "20 ft",
    "judgement",
    "A probe's depth that stays the same while the cable moves by this is doubted.",
  ),
  temperatureJump: row(
    "temperature-jump",
    null,
    "8",
    "judgement",
    "Degrees F between two temperatures of one depth, read soon after each other, before they are doubted.",
  ),
  temperatureJumpTime: row(
    "temperature-jump-time",
    "duration",
    "10 min",
    "judgement",
    "How soon after each other: over a longer time the water may have changed.",
  ),
  fastestBoat: row(
    "fastest-boat",
    "speed",
    "50 mph",
    "judgement",
    "A way between two positions that would need a faster boat is doubted.",
  ),
  courseOff: row(
    "course-disagrees-by",
    "angle",
    "45 deg",
    "judgement",
    "How far a course may be from the way between two positions of one leg.",
  ),
  courseTime: row(
    "course-disagrees-time",
    "duration",
    "30 min",
    "judgement",
    "Positions farther apart in time than this are not taken to be of one leg.",
  ),
  courseDistance: row(
    "course-disagrees-distance",
    "length",
    "500 m",
    "judgement",
    "Positions nearer to each other than this tell no direction: whole minutes of a degree are too coarse.",
  ),
  coldWater: row("coldest-water", "temperature", "31 F", "judgement", "Colder fresh water is doubted."),
  warmWater: row("warmest-water", "temperature", "90 F", "judgement", "Warmer fresh water is doubted."),
  coldestPossible: row(
    "frozen-water",
    "temperature",
    "28 F",
    "judgement",
    "Colder than this is an error in any water.",
  ),
  warmestPossible: row(
    "impossible-water",
    "temperature",
    "110 F",
    "judgement",
    "Warmer than this is an error in any lake.",
  ),
} as const satisfies Record<string, ThresholdRow>;

/** Values of thresholds by name, in words, as a `threshold` line has them: `["45", "min"]`. */
export type ThresholdWords = ReadonlyMap<string, readonly string[]>;

/** Nothing chosen: every threshold that no book states has its default. */
export const NO_THRESHOLDS: ThresholdWords = new Map();

/** What a boat's book states, and what was chosen for all boats where the book says nothing that can be read. */
export function withChosen(book: ThresholdWords, chosen: ThresholdWords): ThresholdWords {
  const free = [...chosen].filter(([name]) => {
    const [row, words] = [findThreshold(name), book.get(name)];
    return words === undefined || (row !== undefined && readThreshold(words, row.dimension) === undefined);
  });
  return free.length === 0 ? book : new Map([...book, ...free]);
}

const byName: ReadonlyMap<string, ThresholdRow> = new Map(
  Object.values(THRESHOLDS).map((one) => [one.name, one]),
);

/** Finds a threshold by the name a captain writes. */
export function findThreshold(name: string): ThresholdRow | undefined {
  return byName.get(name);
}

/** A threshold's value for a boat, in SI. */
export function thresholdOf(gear: Gear, threshold: ThresholdRow): number {
  const words = gear.thresholds.get(threshold.name);
  return (words === undefined ? undefined : readThreshold(words, threshold.dimension)) ?? threshold.defaultSi;
}
