/** A trip's summary in the captain's plain words, for the hover on the trip line and the terminal. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Extent, SpeciesCount, TripSummary } from "../analysis/summary.ts";
import { ageWords, clockWords, countWords, lengthWords, speedWords, tempWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { DEPTH_CAUTION } from "./depth-sentences.ts";
import { byHand, effortUnit, effortWords } from "./effort-words.ts";
import { listWords } from "./water-sentences.ts";
import { waterSummarySentences } from "./water-summary-sentences.ts";

/** What every figure about limits and depths carries. */
export const SUMMARY_CAUTION = `${DEPTH_CAUTION} Limits are as you entered them; the agency's current rules decide.`;

const HOUR_MS = 3_600_000;

/** The summary, one line an entry. */
export function summarySentences(day: TripAnalysis): string[] {
  const { summary, trip } = day;
  const lines = [
    timeSentence(day),
    rodSentence(trip.gear, summary),
    fishSentence(summary.species),
    biteSentence(summary),
    rateSentence(trip.gear, summary),
    speedSentence(trip.gear, summary),
    temperatureSentence(trip.gear, summary),
    caughtSentence(trip.gear, summary),
    depthSentence(summary),
    ...waterSummarySentences(day),
    ...doubtSentences(summary),
  ];
  return lines.filter((line) => line !== "");
}

function timeSentence({ summary, trip }: TripAnalysis): string {
  if (summary.hours === null) return "No hours: the log has no clock times to count from.";
  const clock = (ms: number | null): string => (ms === null ? "" : clockWords(ms, trip.zone));
  const from = summary.departMs === null ? "" : `left ${clock(summary.departMs)}`;
  const to = summary.returnMs === null ? "" : `back ${clock(summary.returnMs)}`;
  const when = [from, to].filter((part) => part !== "").join(", ");
  return `${ageWords(summary.hours * HOUR_MS)}${when === "" ? "" : `: ${when}`}.`;
}

function rodSentence(gear: Gear, summary: TripSummary): string {
  if (summary.rodHoursByRig.length === 0) return "No lines in the water.";
  const assumed =
    summary.assumedPulls === 0
      ? ""
      : ` ${countWords(summary.assumedPulls, "line")} never pulled, taken to be out at the end.`;
  const fishing = effortWords(oneDecimal(summary.rodHoursFishing), effortUnit(gear, summary));
  const held = byHand(gear, summary);
  const ofThem =
    held === undefined ? "" : ` (${oneDecimal(held.hours)} of them angler-hours on ${listWords(held.rigs)})`;
  return `${fishing} fishing${ofThem}, ${oneDecimal(summary.rodHoursWet)} wet, on ${countWords(summary.rodHoursByRig.length, "rig")}.${assumed}`;
}

function fishSentence(species: readonly SpeciesCount[]): string {
  if (species.length === 0) return "No fish landed.";
  const of = ({ species: name, kept, released, unsaid }: SpeciesCount): string => {
    const parts = [
      kept > 0 ? `${kept} kept` : "",
      released > 0 ? `${released} released` : "",
      unsaid > 0 ? `${unsaid} neither kept nor released as written` : "",
    ];
    return `${name} ${parts.filter((part) => part !== "").join(", ")}`;
  };
  return `Landed: ${species.map(of).join("; ")}.`;
}

function biteSentence(summary: TripSummary): string {
  const parts: [number, string][] = [
    [summary.landed, "landed"],
    [summary.lost, "lost"],
    [summary.broke, "broke off"],
    [summary.missed, "missed"],
    [summary.open, "with no end written"],
  ];
  const said = parts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  return said.length === 0 ? "No bites." : `Bites: ${said.join(", ")}.`;
}

function rateSentence(gear: Gear, summary: TripSummary): string {
  const { landedPerRodHour, landed, rodHoursFishing } = summary;
  const unit = effortUnit(gear, summary);
  if (landedPerRodHour === null || oneDecimal(rodHoursFishing) === "0") return "";
  const { range } = landedPerRodHour;
  if (landed === 0) {
    return `Nothing landed in ${effortWords(oneDecimal(rodHoursFishing), unit)}; up to one per ${perHours(range.high)} would fit as well.`;
  }
  return `One landed per ${effortWords(perHours(landedPerRodHour.rate), unit).replace(/^1 /u, "")}; one per ${perHours(range.high)} to one per ${perHours(range.low)} would fit as well.`;
}

/** Hours for one, in halves below ten: `2½`. */
function perHours(rate: number): string {
  const hours = 1 / rate;
  if (hours >= 10) return String(Math.round(hours));
  const halves = Math.max(1, Math.round(hours * 2));
  const whole = Math.floor(halves / 2);
  return `${whole === 0 ? "" : whole}${halves % 2 === 1 ? "½" : ""}`;
}

function oneDecimal(value: number): string {
  return String(Number(value.toFixed(1)));
}

function extentWords(of: Extent | null, words: (value: number) => string): string {
  if (of === null) return "";
  const [low, high] = [words(of.low), words(of.high)];
  return low === high ? low : `${low.split(" ")[0]} to ${high}`;
}

function sentenceOf(parts: readonly [string, string][]): string {
  const said = parts.filter(([, value]) => value !== "").map(([label, value]) => `${label} ${value}`);
  return said.join(", ");
}

function speedSentence(gear: Gear, { speedsMS }: TripSummary): string {
  const words = (value: number): string => speedWords(gear, value);
  const said = sentenceOf([
    ["at the ball", extentWords(speedsMS.down, words)],
    ["on top", extentWords(speedsMS.surface, words)],
    ["over ground", extentWords(speedsMS.ground, words)],
  ]);
  return said === "" ? "" : `Speed ${said}.`;
}

function temperatureSentence(gear: Gear, { tempsC }: TripSummary): string {
  const words = (value: number): string => tempWords(gear, value);
  const said = sentenceOf([
    ["at the probe", extentWords(tempsC.down, words)],
    ["on top", extentWords(tempsC.surface, words)],
  ]);
  return said === "" ? "" : `Water ${said}.`;
}

function caughtSentence(gear: Gear, { caughtAt }: TripSummary): string {
  const known = caughtAt.filter((one) => one.depthM !== null);
  if (known.length === 0) return "";
  const words = known.map(
    (one) =>
      `${lengthWords(gear, one.depthM ?? 0)} (${one.species ?? "fish"}, ${one.rig}${one.lure === undefined ? "" : `, ${one.lure}`})`,
  );
  return `Caught at about ${words.join("; ")}.`;
}

/** What the figures leave out, and what they take otherwise than it is written. */
function doubtSentences({ unreadLines, slippedLines, misplacedLines }: TripSummary): string[] {
  const [line, lines] = ["line of this trip", "lines of this trip"];
  const count = (n: number): string => `${n} ${n === 1 ? line : lines}`;
  return [
    unreadLines === 0
      ? ""
      : `${count(unreadLines)} can't be read, or only in part; the figures leave that out.`,
    slippedLines === 0
      ? ""
      : `The time of ${count(slippedLines)} is in doubt; the figures take it half a day or a day later, where it fits.`,
    misplacedLines === 0
      ? ""
      : `${count(misplacedLines)} ${misplacedLines === 1 ? "is" : "are"} out of the order of time; the figures take the clock as written.`,
  ];
}

function depthSentence({ depthsComputed, depthLines }: TripSummary): string {
  if (depthLines === 0) return "";
  return `True depth known for ${depthsComputed} of ${countWords(depthLines, "line")} set or moved.`;
}
