/** What the findings in a file hang on, as one short text: equal texts, equal findings. */
import type { SeverityChoices } from "../checks/run-checks.ts";
import { type BookFile, type FileGear, fileGear } from "../model/gear-lines.ts";
import type { ThresholdWords } from "../model/thresholds.ts";
import { contentHash } from "./content-hash.ts";
import type { FileRecord } from "./index-view.ts";

/** What the captain chose for all files. */
export interface CheckChoices {
  readonly severities: SeverityChoices;
  /** Hold for boats whose book does not state them. */
  readonly thresholds: ThresholdWords;
  /** The day it is; nothing is said of days to come without it. */
  readonly today?: string | undefined;
}

/**
 * The key of a file: its own text, the gear of its boats in the books within reach with the lines it stands in, and
 * the severities and thresholds chosen. A boat that no book describes leans on all of every book, for what it may have been meant.
 */
export function readingKey(record: FileRecord, books: readonly BookFile[], choices: CheckChoices): string {
  const gears = books.map((book) => ({ uri: book.uri, gear: fileGear(book) }));
  const boats = boatsLeanedOn(record, gears);
  const parts = gears.flatMap(({ uri, gear }) => {
    const hashes = boats === null ? [gearHash(gear, EVERYTHING)] : boats.map((boat) => gearHash(gear, boat));
    return hashes.every((hash) => hash === "") ? [] : [uri, ...hashes];
  });
  const severities = [...choices.severities].map(([slug, choice]) => `${slug}=${choice}`).sort();
  const thresholds = [...choices.thresholds].map(([name, words]) => `${name} ${words.join(" ")}`).sort();
  return contentHash(
    [record.hash, isAhead(record, choices) ? "ahead" : "", ...severities, ...thresholds, ...parts].join("\n"),
  );
}

/** A file with a day to come hangs on what day it is. */
function isAhead({ trips }: FileRecord, { today }: CheckChoices): boolean {
  return today !== undefined && trips.some(({ date }) => date > today);
}

/** Stands for the whole of a book; no boat is called so, since names hold no line ends. */
const EVERYTHING = "\n";

/** The boats whose gear a file's lines are looked up in; null where that is any boat's. */
function boatsLeanedOn(record: FileRecord, gears: readonly { gear: FileGear }[]): readonly string[] | null {
  if (record.boats.length === 0 || (record.hasLooseGear && record.kind === "gear")) return null;
  const described = new Set([
    ...record.describes,
    ...gears.flatMap(({ gear }) => gear.boats.map(({ boat }) => boat)),
  ]);
  return record.boats.every((boat) => described.has(boat)) ? record.boats : null;
}

const hashesOfGear = new WeakMap<FileGear, Map<string, string>>();

/** The hash of a boat's lines and of those above any boat; empty where there are none. */
function gearHash(gear: FileGear, boat: string): string {
  const known = hashesOfGear.get(gear) ?? new Map<string, string>();
  hashesOfGear.set(gear, known);
  const hash = known.get(boat) ?? hashOf(gear, boat);
  known.set(boat, hash);
  return hash;
}

function hashOf(gear: FileGear, boat: string): string {
  const lines = [...gear.boats, ...gear.properties, ...gear.lines].filter(
    (one) => boat === EVERYTHING || one.boat === boat || one.boat === null,
  );
  if (lines.length === 0) return "";
  return contentHash(
    lines.map(({ line, lineIndex, boat: of }) => `${lineIndex} ${of} ${line.raw}`).join("\n"),
  );
}
