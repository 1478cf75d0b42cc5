/** The shape of the vocabulary table, and the small constructors its rows are written with. */
import type { Dimension } from "../units.ts";

/** What a name stands for; the model resolves it, completion offers it. */
export type NameKind =
  | "rig"
  | "cable"
  | "ball"
  | "lure"
  | "species"
  | "species-group"
  | "boat"
  | "guest"
  | "place"
  | "spot"
  | "upkeep"
  | "calibrated"
  | "check"
  | "threshold"
  | "zone"
  | "unit"
  | "text"
  | "compass"
  | "clip";

/** How the value after a word is read. */
export type ValueType =
  | { readonly kind: "flag" }
  | { readonly kind: "quantity"; readonly dimension: Dimension | "any"; readonly range: boolean }
  | { readonly kind: "number"; readonly what: "count" | "bearing" | "dial" | "ratio" }
  | { readonly kind: "name"; readonly of: NameKind }
  | { readonly kind: "position" }
  | { readonly kind: "clock"; readonly range: boolean }
  | { readonly kind: "date" }
  | { readonly kind: "point" };

/** One attribute or flag of a line. */
export interface ItemRow {
  readonly word: string;
  readonly aliases: readonly string[];
  /** Words of the trade for it that are not read; whoever writes one is told this one. */
  readonly not: readonly string[];
  readonly type: ValueType;
  /** May appear more than once on a line. */
  readonly many: boolean;
  /** May be written without its word: a measure by its dimension, a quoted text by being quoted. */
  readonly bare: boolean;
  /** Of the measures that may be written without their word, the one that a number without a unit is. */
  readonly plain: boolean;
  /** Words of one group exclude each other on a line. */
  readonly group: string | undefined;
  readonly doc: string;
}

/** A mandatory place for a name (or number) right after the verb. */
export interface SlotRow {
  readonly label: string;
  readonly of: NameKind | "date" | "count" | "value";
  /** Takes every piece that is left, one at least. */
  readonly rest: boolean;
}

/** Where a verb may stand. */
export type Place = "opener" | "gear" | "event" | "boat" | "trip";

/** One kind of line. */
export interface VerbRow {
  readonly verb: string;
  readonly aliases: readonly string[];
  /** Words of the trade for it that are not read; whoever starts a line with one is told this one. */
  readonly not: readonly string[];
  readonly place: Place;
  readonly slots: readonly SlotRow[];
  readonly items: readonly ItemRow[];
  /** One of these words has to be given. */
  readonly needs: readonly string[];
  /** What the line means, in the captain's words. */
  readonly doc: string;
  /** A line as it is typed; parsed by the suite. */
  readonly example: string;
}

type Options = {
  many?: boolean;
  bare?: boolean;
  plain?: boolean;
  group?: string;
  aliases?: string;
  not?: string;
};

const item = (word: string, type: ValueType, doc: string, o: Options = {}): ItemRow => ({
  word,
  aliases: o.aliases === undefined ? [] : o.aliases.split(" "),
  not: o.not === undefined ? [] : o.not.split(" "),
  type,
  many: o.many ?? false,
  bare: o.bare ?? false,
  plain: o.plain ?? false,
  group: o.group,
  doc,
});

/** A word that says something by being there. */
export const flag = (word: string, doc: string, o: Options = {}): ItemRow =>
  item(word, { kind: "flag" }, doc, o);

/** A number with a unit, compound quantities included. */
export const measure = (word: string, dimension: Dimension | "any", doc: string, o: Options = {}): ItemRow =>
  item(word, { kind: "quantity", dimension, range: false }, doc, o);

/** A measure, or a range of measures: `65 to 80 ft`. */
export const span = (word: string, dimension: Dimension, doc: string, o: Options = {}): ItemRow =>
  item(word, { kind: "quantity", dimension, range: true }, doc, o);

/** A number without a unit. */
export const number = (
  word: string,
  what: "count" | "bearing" | "dial" | "ratio",
  doc: string,
  o: Options = {},
): ItemRow => item(word, { kind: "number", what }, doc, o);

/** A word followed by a name. */
export const name = (word: string, of: NameKind, doc: string, o: Options = {}): ItemRow =>
  item(word, { kind: "name", of }, doc, o);

/** A word followed by a position. */
export const position = (word: string, doc: string, o: Options = {}): ItemRow =>
  item(word, { kind: "position" }, doc, o);

/** A word followed by a clock time, or by two joined with `to`. */
export const clock = (word: string, doc: string, o: Options & { range?: boolean } = {}): ItemRow =>
  item(word, { kind: "clock", range: o.range ?? false }, doc, o);

/** A depth and a temperature side by side. */
export const point = (word: string, doc: string): ItemRow =>
  item(word, { kind: "point" }, doc, { many: true, bare: true });

/** A mandatory slot. */
export const slot = (label: string, of: SlotRow["of"], rest = false): SlotRow => ({ label, of, rest });

/** One kind of line. */
export const line = (
  place: Place,
  verb: string,
  slots: readonly SlotRow[],
  items: readonly ItemRow[],
  doc: string,
  example: string,
  o: { aliases?: string; needs?: string; not?: string } = {},
): VerbRow => ({
  verb,
  aliases: o.aliases === undefined ? [] : o.aliases.split(" "),
  not: o.not === undefined ? [] : o.not.split(" "),
  place,
  slots,
  items,
  needs: o.needs === undefined ? [] : o.needs.split(" "),
  doc,
  example,
});
