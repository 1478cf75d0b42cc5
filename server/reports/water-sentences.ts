/** The water at a lure, in the captain's plain words, with the readings it leans on. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { BandNow, LureWater } from "../analysis/lure-water.ts";
import type { TempPoint } from "../analysis/temperature-points.ts";
import type { LeftOut, ProfileNode, WaterProfile } from "../analysis/water-profile.ts";
import { clockWords, lengthWords, tempWords } from "../model/figures.ts";
import { bandDepthWords, bandName, bandTempWords, shiftWords, tempRangeWords } from "./water-words.ts";

/** The water at a line's lure, one sentence an entry; empty where nothing is known of it. */
export function lureWaterSentences(day: TripAnalysis, depth: LineDepth): string[] {
  const water = day.water.lureOf(depth);
  if (water === undefined) return [];
  const known = said.get(water.profile) ?? new Map<string, string[]>();
  said.set(water.profile, known);
  const spread = water.at?.kind === "known" ? water.at.sdC : 0;
  const key = [water.depthM, spread, ...day.water.bands.map((band) => band.species)].join(" ");
  const sentences = known.get(key) ?? [
    ...temperatureSentence(day, water),
    ...water.bands.flatMap((band) => bandSentences(day, band)),
    ...leftOutSentences(day, water.profile.leftOut),
  ];
  known.set(key, sentences);
  return sentences;
}

/** Kept with the profile, which stands for the readings, the gear and the day they were made from. */
const said = new WeakMap<WaterProfile, Map<string, string[]>>();

/** The short form beside a line: `48 F`; empty where it isn't known. */
export function temperatureLabel(day: TripAnalysis, depth: LineDepth): string {
  const at = day.water.lureOf(depth)?.at;
  return at?.kind === "known" ? tempWords(day.trip.gear, at.tempC) : "";
}

function temperatureSentence(day: TripAnalysis, { at }: LureWater): string[] {
  const { gear } = day.trip;
  if (at === undefined) return [];
  if (at.kind === "known")
    return [
      `Water there: about ${tempRangeWords(gear, at.tempC, at.sdC)}, from ${sourcesOf(day, at.between)}.`,
    ];
  if (at.kind === "gap")
    return [
      `Water there: not known; nothing was read between ${lengthWords(gear, at.topM)} and ${lengthWords(gear, at.bottomM)}.`,
    ];
  return [
    `Water there: not known; the deepest reading is ${tempWords(gear, at.tempC)} at ${lengthWords(gear, at.deepestM)}.`,
  ];
}

/** Every reading that some depths of a profile were made of, each instrument with its clocks. */
export function sourcesOf({ trip }: TripAnalysis, nodes: readonly ProfileNode[]): string {
  const clocks = new Map<string, Set<number>>();
  for (const point of nodes.flatMap((node) => node.points)) {
    const where = instrumentWords(point);
    clocks.set(where, (clocks.get(where) ?? new Set<number>()).add(point.timeMs));
  }
  const said = [...clocks].map(([where, times]) => {
    const sorted = [...times].sort((a, b) => a - b).map((ms) => clockWords(ms, trip.zone));
    return `${where} at ${listWords(sorted)}`;
  });
  return listWords(said);
}

function sourceWords({ trip }: TripAnalysis, point: TempPoint): string {
  return `${instrumentWords(point)} at ${clockWords(point.timeMs, trip.zone)}`;
}

function instrumentWords({ source, event }: TempPoint): string {
  if (source === "profile") return "the profile";
  return source === "probe" ? `${event.rig ?? "the"}'s probe` : "the surface";
}

/** `a`, `a and b`, `a, b and c`. */
export function listWords(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** Where the band lies, and the lure against it; nothing where neither is known. */
export function bandSentences(day: TripAnalysis, now: BandNow): string[] {
  const { gear, zone } = day.trip;
  if (now.lure === undefined && now.depths === undefined) return [];
  const where = now.depths === undefined ? "" : `: ${bandDepthWords(gear, now.depths)}`;
  const figures = `(${bandTempWords(gear, now.band)}${where})`;
  const shift = now.movedM === undefined ? "" : shiftWords(gear, now.movedM);
  const since = now.movedSinceMs === undefined ? "" : clockWords(now.movedSinceMs, zone);
  const moved = shift === "" ? "" : ` It lies ${shift} than at ${since}.`;
  const source = now.band.source === "" ? "" : ` Source: ${now.band.source}.`;
  return [`${standingWords(now)} ${figures}.${moved}${source}`];
}

function standingWords({ lure, isSure, band }: BandNow): string {
  const name = bandName(band);
  if (lure === undefined) return name.slice(0, 1).toUpperCase() + name.slice(1);
  if (!isSure) return `At the edge of ${name}, more likely ${SIDES[lure]}`;
  if (lure === "inside") return `Inside ${name}`;
  return lure === "too-warm" ? `Above ${name}, in warmer water` : `Below ${name}, in colder water`;
}

const SIDES = {
  inside: "inside",
  "too-warm": "above, in warmer water",
  "too-cold": "below, in colder water",
} as const;

/** What was not used, so that nobody wonders. */
export function leftOutSentences(day: TripAnalysis, leftOut: readonly LeftOut[]): string[] {
  const { gear } = day.trip;
  const repeated = leftOut.filter(({ why }) => why === "repeated");
  const depths = [...new Set(repeated.map(({ point }) => lengthWords(gear, point.depthM)))];
  const contradicted = leftOut.flatMap(({ point, by }) => {
    if (by === undefined) return [];
    const newer = `${tempWords(gear, by.tempC)} at ${lengthWords(gear, by.depthM)} by ${sourceWords(day, by)}`;
    return [
      `${tempWords(gear, point.tempC)} at ${lengthWords(gear, point.depthM)} by ${sourceWords(day, point)} is left out: ${newer} speaks against it.`,
    ];
  });
  return [
    ...(depths.length === 0
      ? []
      : [`Left out: ${depths.join(", ")}, where one profile has two temperatures.`]),
    ...contradicted.slice(0, MOST_LEFT_OUT),
  ];
}

const MOST_LEFT_OUT = 2;
