/** What may follow on a line whose names are given: units, attributes and flags, and the values of attributes. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Part, ReadLine } from "../../grammar/journal.ts";
import { UNITS, type UnitRow } from "../../grammar/units.ts";
import type { IndexedRow, ItemRow, LinePlace } from "../../grammar/vocabulary.ts";
import { defaultUnit } from "../model/quantities.ts";
import { gearAt } from "./definitions.ts";
import { lastValues } from "./last-values.ts";
import { namesOf } from "./name-completion.ts";
import type { Offer } from "./offers.ts";
import type { Snapshot } from "./snapshot.ts";
import { usualWords } from "./usual-words.ts";

const AS_LAST = "as last on this rig";

/** Attributes and flags not given yet; those with a value from the last time on that rig first, all at once before. */
export function itemOffers(snapshot: Snapshot, lineIndex: number, row: IndexedRow, line: ReadLine): Offer[] {
  const open = row.items.filter(
    (item) => item.many || !line.items.some((given) => isTaken(row, item, given.word)),
  );
  const last = lastValues(snapshot, lineIndex, line);
  const again = open.flatMap((item) => {
    const value = last.get(item.word);
    return value === undefined ? [] : [`${item.word} ${value}`];
  });
  const all = row.verb === "set" && line.items.length === 0 && again.length > 1 ? [again.join(" ")] : [];
  const suggested = [...all, ...again].map((label) => ({
    label,
    kind: CompletionItemKind.Snippet,
    detail: AS_LAST,
  }));
  const words = open.filter(
    (item) => !(item.bare && (item.type.kind === "name" || item.type.kind === "point")),
  );
  const place = line.kind === "property" ? line.block : "margin";
  return [...suggested, ...words.map((item) => wordOffer(item, place, row.verb))];
}

function wordOffer({ word, type, doc }: ItemRow, place: LinePlace, verb: string): Offer {
  const kind = type.kind === "flag" ? CompletionItemKind.EnumMember : CompletionItemKind.Property;
  return { label: word, kind, detail: doc, about: { of: "item", place, verb, word } };
}

function isTaken(row: IndexedRow, item: ItemRow, given: string): boolean {
  if (given === item.word) return true;
  return item.group !== undefined && row.words.get(given)?.group === item.group;
}

/** Units for a last number that has none yet, the boat's own first; `to` where a range may follow. */
export function unitOffers({
  snapshot,
  lineIndex,
  line,
  row,
}: {
  snapshot: Snapshot;
  lineIndex: number;
  line: ReadLine;
  row: IndexedRow;
}): Offer[] {
  const last = line.items.at(-1);
  if (last === undefined || line.raw.slice(last.stop).trim() !== "") return [];
  const type = row.words.get(last.word)?.type;
  if (type?.kind !== "quantity") return [];
  const range =
    type.range && last.value.kind === "quantity"
      ? [{ label: "to", kind: CompletionItemKind.Keyword, detail: "a range: the other end follows" }]
      : [];
  if (lastPart(last.value)?.unit !== null) return range;
  const units = UNITS.filter((unit) => type.dimension === "any" || unit.dimension === type.dimension);
  const gear = gearAt(snapshot, lineIndex);
  const own =
    type.dimension === "any" || gear === undefined
      ? undefined
      : defaultUnit(type.dimension, row.verb, gear.defaults, last.word);
  return [...units.filter((unit) => unit === own), ...units.filter((unit) => unit !== own)]
    .map(unitOffer)
    .concat(range);
}

function lastPart(value: ReadLine["items"][number]["value"]): Part | undefined {
  if (value.kind === "quantity") return value.parts.at(-1);
  return value.kind === "range" ? value.high.at(-1) : undefined;
}

function unitOffer({ unit, doc }: UnitRow): Offer {
  return { label: unit, kind: CompletionItemKind.Unit, detail: doc };
}

/** Values of an attribute: the last on that rig first, then every name that may stand there. */
export function valueOffers(snapshot: Snapshot, lineIndex: number, item: ItemRow, line: ReadLine): Offer[] {
  const last = lastValues(snapshot, lineIndex, line).get(item.word);
  const names =
    item.type.kind === "name"
      ? [...namesOf(snapshot, lineIndex, item.type.of, line, item.word), ...usualWords(item.word)]
      : [];
  if (last === undefined) return names;
  const same = names.find((name) => name.label === last);
  const detail = same === undefined ? AS_LAST : `${AS_LAST}: ${same.detail}`;
  return [{ label: last, kind: CompletionItemKind.Value, detail }, ...names];
}
