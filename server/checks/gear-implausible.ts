import type { Item, Part, Value } from "../../grammar/journal.ts";
import { findUnit } from "../../grammar/units.ts";
import { GEAR_BOUNDS, type GearBound, isWithin } from "../model/gear-bounds.ts";
import { kindDefined } from "../model/gear-lines.ts";
import { findItem, type SiRange, valueRange } from "../model/quantities.ts";
import { GEAR_IMPLAUSIBLE } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { plainPart, siOf, withPoint, writtenMeasure } from "./numbers.ts";
import { ownerNear } from "./owners.ts";
import type { SoundLine } from "./sound-lines.ts";
import { allUnderOpeners, type Stretch, soundLinesIn } from "./under-openers.ts";
import { meantUnit, usualUnits } from "./usual-units.ts";

const BOUNDED: ReadonlySet<string> = new Set(GEAR_BOUNDS.map((bound) => bound.verb));

/** Doubts gear of a size that none has: mostly a slip of the unit or the point. */
export const gearImplausible: Rule = (context) => {
  for (const sound of allUnderOpeners(context.analysis, boundedLines)) {
    const kind = boundedKind(sound);
    for (const bound of GEAR_BOUNDS) {
      const item = bound.verb === kind ? findItem(sound.line, bound.word) : undefined;
      if (item !== undefined) checkMeasure(context, sound, item, bound);
    }
  }
};

function boundedLines(stretch: Stretch): SoundLine[] {
  return soundLinesIn(stretch).filter((sound) => BOUNDED.has(boundedKind(sound) ?? ""));
}

/** The kind of a gear line, or the verb of a boat's property. */
function boundedKind({ line }: SoundLine): string | undefined {
  if (line.kind === "fact") return kindDefined(line.verb);
  return line.kind === "property" && line.block === "boat" ? line.verb : undefined;
}

function checkMeasure(context: CheckContext, { lineIndex }: SoundLine, item: Item, bound: GearBound): void {
  const { analysis, report } = context;
  const defaults = ownerNear(analysis, lineIndex)?.gear.defaults;
  const unit = meantUnit(bound.word, bound.verb, bound.dimension, defaults);
  const range = rangeIn(item.value, bound, unit);
  if (range === undefined) return;
  const place = { lineIndex, start: item.start, stop: item.stop };
  const write = (text: string, isPreferred: boolean): Fix => ({
    title: FIX_TITLES.write(text),
    edits: [replace(analysis.uri, valuePlace(lineIndex, item), text)],
    isPreferred,
  });
  if (!fits(range, bound)) {
    const slips = slipsOf(item.value, bound, unit);
    const written = writtenIn(item.value, unit);
    const fixes = slips.map((text) => write(text, slips.length === 1));
    report(GEAR_IMPLAUSIBLE, place, { kind: "beyond", written, bound, slips }, { fixes });
  } else if (bound.word === "temp" && range.low > range.high) {
    const meant = turned(item.value, unit);
    const fixes = meant === undefined ? [] : [write(meant, true)];
    report(GEAR_IMPLAUSIBLE, place, { kind: "upside-down", meant: meant ?? "" }, { fixes });
  }
}

function rangeIn(value: Value, { dimension }: GearBound, unit: string | undefined): SiRange | undefined {
  return valueRange(value, dimension, unit === undefined ? undefined : findUnit(unit));
}

function fits({ low, high }: SiRange, bound: GearBound): boolean {
  return isWithin(bound, low) && isWithin(bound, high);
}

/** The same numbers with a point before the last digit, or in other units that captains write there, where believed. */
function slipsOf(value: Value, bound: GearBound, unit: string | undefined): string[] {
  const typed =
    bound.dimension === "mass" && value.kind === "quantity" ? plainPart(value.parts, unit) : undefined;
  const pointed = typed === undefined ? undefined : withPoint(typed);
  if (pointed !== undefined && isWithin(bound, siOf(pointed))) return [writtenMeasure(pointed)];
  return usualUnits(bound.word, bound.verb, bound.dimension).flatMap((unit) => {
    const other = inUnit(value, unit);
    const range = other === undefined ? undefined : rangeIn(other, bound, unit);
    return other !== undefined && range !== undefined && fits(range, bound) ? [writtenIn(other, unit)] : [];
  });
}

/** A measure of one number to each end, in another unit; undefined for compound ones. */
function inUnit(value: Value, unit: string): Value | undefined {
  const change = ([part, ...rest]: readonly Part[]): Part[] | undefined =>
    part === undefined || rest.length > 0 ? undefined : [{ number: part.number, unit }];
  if (value.kind === "quantity") {
    const parts = change(value.parts);
    return parts === undefined ? undefined : { kind: "quantity", parts };
  }
  if (value.kind !== "range") return undefined;
  const [low, high] = [change(value.low), change(value.high)];
  return low === undefined || high === undefined ? undefined : { kind: "range", low, high };
}

/** As it is written, with the unit that is meant where none is; one unit serves both ends of a range. */
function writtenIn(value: Value, unit: string | undefined): string {
  const words = (parts: readonly Part[], meant: string | undefined): string =>
    parts.map((part) => [part.number, part.unit ?? meant ?? ""].join(" ").trim()).join(" ");
  if (value.kind === "quantity") return words(value.parts, unit);
  if (value.kind !== "range") return "";
  const lowUnit = value.low.at(-1)?.unit;
  const highUnit = value.high.at(-1)?.unit ?? unit;
  const isShared = lowUnit === highUnit && value.low.length === 1;
  const low = isShared ? (value.low[0]?.number ?? "") : words(value.low, undefined);
  return `${low} to ${words(value.high, unit)}`;
}

/** A range with its ends changed over; undefined where they have units of their own that differ. */
function turned(value: Value, unit: string | undefined): string | undefined {
  if (value.kind !== "range") return undefined;
  const shared = value.high.at(-1)?.unit ?? unit;
  const [low, high] = [value.low[0], value.high[0]];
  if (low === undefined || high === undefined || (low.unit !== null && low.unit !== shared)) return undefined;
  return `${high.number} to ${low.number} ${shared ?? ""}`.trim();
}
