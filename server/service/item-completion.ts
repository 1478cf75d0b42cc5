/** What may follow on a line whose names are given: units, attributes and flags, and the values of attributes. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Part, ReadLine } from "../../grammar/journal.ts";
import { findUnit, UNITS, type UnitRow } from "../../grammar/units.ts";
import type { IndexedRow, ItemRow, LinePlace } from "../../grammar/vocabulary.ts";
import { matchName } from "../model/match-name.ts";
import { defaultUnit, slotName } from "../model/quantities.ts";
import { gearAt } from "./definitions.ts";
import { lastValues } from "./last-values.ts";
import { namesOf } from "./name-completion.ts";
import type { Offer } from "./offers.ts";
import type { Snapshot } from "./snapshot.ts";
import type { Typing } from "./typing.ts";
import { usualWords } from "./usual-words.ts";

const AS_LAST = "as last on this rig";

/** Attributes and flags not given yet; those with a value from the last time on that rig first, all at once before. */
export function itemOffers({ snapshot, lineIndex, row, line, after }: Typing): Offer[] {
  const given = [...line.items.map(({ word }) => word), ...after];
  const open = row.items.filter((item) => item.many || !given.some((word) => isTaken(row, item, word)));
  const last = lastValues(snapshot, lineIndex, line);
  const again = open.flatMap((item) => {
    const value = last.get(item.word);
    return value === undefined ? [] : [`${item.word} ${value}`];
  });
  const all = row.verb === "set" && given.length === 0 && again.length > 1 ? [again.join(" ")] : [];
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
export function unitOffers(typing: Typing): Offer[] {
  const { line, row, issue } = typing;
  const last = line.items.at(-1);
  if (last === undefined || line.raw.slice(last.stop).trim() !== "") return [];
  if (issue?.code === "syntax" && issue.reason === "which-measure")
    return issue.words.flatMap((word) => unitsOf(typing, word)).map(unitOffer);
  const type = row.words.get(last.word)?.type;
  if (type?.kind !== "quantity") return [];
  const range =
    type.range && last.value.kind === "quantity"
      ? [{ label: "to", kind: CompletionItemKind.Keyword, detail: "a range: the other end follows" }]
      : [];
  if (lastPart(last.value)?.unit !== null) return range;
  return unitsOf(typing, last.word).map(unitOffer).concat(range);
}

/** Units that measure what an attribute says: the boat's own first, but for leadcore, which is counted in colors. */
function unitsOf({ snapshot, lineIndex, line, row }: Typing, word: string): UnitRow[] {
  const type = row.words.get(word)?.type;
  if (type?.kind !== "quantity") return [];
  const units = UNITS.filter((unit) => type.dimension === "any" || unit.dimension === type.dimension);
  const gear = gearAt(snapshot, lineIndex);
  if (type.dimension === "any" || gear === undefined) return units;
  const isLeadcore =
    word === "out" && gear.rigs.get(matchName(gear.rigs, slotName(line) ?? ""))?.kind === "leadcore";
  const own = isLeadcore ? findUnit("colors") : defaultUnit(type.dimension, row.verb, gear.defaults, word);
  return [...units.filter((unit) => unit === own), ...units.filter((unit) => unit !== own)];
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
