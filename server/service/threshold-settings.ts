/** Thresholds as they stand in an editor's settings: `{ "reading-stale": "45 min", "no-deeper": 0.2 }`. */
import { splitNumber } from "../../grammar/number-text.ts";
import { nearest } from "../checks/nearest.ts";
import {
  findThreshold,
  readThreshold,
  THRESHOLDS,
  type ThresholdRow,
  type ThresholdWords,
} from "../model/thresholds.ts";

/** What was chosen, and what of it can't be used and why. */
export interface ThresholdSettings {
  readonly chosen: ThresholdWords;
  readonly problems: readonly string[];
}

/** Reads the section `deepwake.thresholds`. What can't be used is left out and told; a default is no choice. */
export function readThresholdSettings(section: Readonly<Record<string, unknown>>): ThresholdSettings {
  const chosen = new Map<string, readonly string[]>();
  const problems: string[] = [];
  for (const [name, value] of Object.entries(section)) {
    const row = findThreshold(name);
    if (row === undefined) {
      problems.push(unknownName(name));
      continue;
    }
    const words = wordsOf(value);
    const si = words === undefined ? undefined : readThreshold(words, row.dimension);
    if (words === undefined || si === undefined || !isPossible(row, si)) problems.push(unusable(row, value));
    else if (si !== row.defaultSi) chosen.set(name, words);
  }
  return { chosen, problems };
}

/** The number and the unit, with or without a blank between them. */
function wordsOf(value: unknown): string[] | undefined {
  if (typeof value === "number") return [String(value)];
  if (typeof value !== "string") return undefined;
  const words = value.trim().split(/\s+/u);
  const split = splitNumber(words[0] ?? "");
  return split === undefined || split.unit === "" ? words : [split.number, split.unit, ...words.slice(1)];
}

/** Lengths, times, speeds and shares are not below nothing. */
function isPossible({ dimension }: ThresholdRow, si: number): boolean {
  return dimension === "temperature" || si >= 0;
}

function unusable({ name, written }: ThresholdRow, value: unknown): string {
  return (
    `The setting deepwake.thresholds.${name} is ${JSON.stringify(value)}, which can't be used. ` +
    `Write it like ${JSON.stringify(written)}. Until then ${written} holds.`
  );
}

function unknownName(name: string): string {
  const [near] = nearest(
    name,
    Object.values(THRESHOLDS).map((row) => row.name),
  );
  const meant = near === undefined ? "" : ` Did you mean ${near}?`;
  return `There is no threshold called ${JSON.stringify(name)} to set in deepwake.thresholds.${meant}`;
}
