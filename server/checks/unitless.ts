/** Numbers of a file that stand without their unit, and the unit that the gear book means there. */
import type { Item, Part } from "../../grammar/journal.ts";
import type { Dimension } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { isColorsOrFeet } from "../model/leadcore-count.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Fix, Place } from "./check.ts";
import { insert } from "./edits.ts";
import { type Owner, ownerNear, ownerOf } from "./owners.ts";
import { rowOf, type SoundLine } from "./sound-lines.ts";
import { allUnderOpeners, onEachLine } from "./under-openers.ts";
import { meantUnit, usualUnits } from "./usual-units.ts";

/** A number without its unit. */
interface Unitless {
  /** As it is spelled. */
  readonly number: string;
  readonly place: Place;
  /** The attribute it belongs to; undefined where that isn't written. */
  readonly word: string | undefined;
  /** The unit it has by the book; undefined where the book states none. */
  readonly meant: string | undefined;
  /** Units that may be meant, the likeliest first. */
  readonly units: readonly string[];
}

const unitlessOfAnalysis = new WeakMap<JournalAnalysis, readonly Unitless[]>();

/** Every number without a unit that needs one, in order. Trips of a boat that no book describes are left out. */
export function unitlessNumbers(analysis: JournalAnalysis): readonly Unitless[] {
  const known = unitlessOfAnalysis.get(analysis);
  if (known !== undefined) return known;
  const found = allUnderOpeners(analysis, unitlessIn);
  unitlessOfAnalysis.set(analysis, found);
  return found;
}

const unitlessIn = onEachLine((sound, { analysis }) => ofLine(analysis, sound));

/** Writes a unit behind the number. */
export function unitFix(uri: string, { number, place }: Unitless, unit: string, isPreferred: boolean): Fix {
  const edits = [insert(uri, place.lineIndex, place.stop, ` ${unit}`)];
  return { title: FIX_TITLES.write(`${number} ${unit}`), edits, isPreferred };
}

function ofLine(analysis: JournalAnalysis, sound: SoundLine): Unitless[] {
  if (!sound.line.items.some(lacksUnit)) return [];
  const row = rowOf(sound.line);
  const isEvent = row?.place === "event";
  const owner = (isEvent ? ownerOf : ownerNear)(analysis, sound.lineIndex);
  if (owner === undefined ? isEvent : !owner.isDescribed) return [];
  return sound.line.items.flatMap((item) => {
    const type = row?.words.get(item.word)?.type;
    const dimension = type?.kind === "quantity" ? type.dimension : undefined;
    return dimension === "any" ? [] : ofItem(sound, item, dimension, owner);
  });
}

function lacksUnit({ value }: Item): boolean {
  const isBare = (parts: readonly Part[]): boolean => parts.some((part) => part.unit === null);
  if (value.kind === "quantity") return isBare(value.parts);
  if (value.kind === "range") return isBare(value.high);
  return value.kind === "point" && (isBare(value.depth) || isBare(value.temp));
}

/** A part that needs a unit of its own, with the parts before it in the value. */
interface Lacking {
  readonly before: readonly Part[];
  readonly part: Part;
  readonly word: string;
  readonly dimension: Dimension;
}

/** The last unit of a range serves both its ends; only where it is missing is a unit missing. */
function* lackingParts({ value, word }: Item, dimension: Dimension | undefined): Generator<Lacking> {
  if (value.kind === "quantity" && dimension !== undefined) yield* lacking([], value.parts, word, dimension);
  if (value.kind === "range" && dimension !== undefined)
    yield* lacking(value.low, value.high, word, dimension);
  if (value.kind === "point") {
    yield* lacking([], value.depth, "depth", "length");
    yield* lacking(value.depth, value.temp, "temp", "temperature");
  }
}

function* lacking(
  before: readonly Part[],
  parts: readonly Part[],
  word: string,
  dimension: Dimension,
): Generator<Lacking> {
  for (const [index, part] of parts.entries()) {
    if (part.unit === null) yield { before: [...before, ...parts.slice(0, index)], part, word, dimension };
  }
}

function ofItem(
  { line, lineIndex }: SoundLine,
  item: Item,
  dimension: Dimension | undefined,
  owner: Owner | undefined,
): Unitless[] {
  return [...lackingParts(item, dimension)].map(({ before, part, word, dimension: measured }) => {
    const defaults = owner?.gear.defaults;
    const isLeadcore = isColorsOrFeet(line, word, owner?.gear);
    const meant = isLeadcore ? undefined : meantUnit(word, line.verb, measured, defaults);
    const written = item.value.kind === "range" ? before.at(-1)?.unit : null;
    const known = usualUnits(word, line.verb, measured, defaults);
    const usual = isLeadcore ? ["colors", ...known.slice(0, 1)] : known;
    const units =
      written === null || written === undefined ? usual : [written, ...usual.filter((u) => u !== written)];
    const start = startOf(line.raw, item.valueStart, [...before, part]);
    const place = { lineIndex, start, stop: start + part.number.length };
    return { number: part.number, place, word: item.bare ? undefined : word, meant, units };
  });
}

/** Where the last of several numbers starts. */
function startOf(raw: string, from: number, parts: readonly Part[]): number {
  let start = from;
  let stop = from;
  for (const { number } of parts) {
    start = raw.indexOf(number, stop);
    stop = start + number.length;
  }
  return start;
}
