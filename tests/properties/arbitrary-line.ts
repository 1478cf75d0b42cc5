/** Typed lines of every kind, made from the vocabulary's rows, as they are when a canonical line is read. */
import fc from "fast-check";
import type { Item, Line, Part, ReadLine, Slot, Value } from "../../grammar/journal.ts";
import { type IndexedRow, type ItemRow, type SlotRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { anyClock, anyDate, anyName, anyOffset, anyValue, type Name, wouldJoin } from "./arbitrary-value.ts";

/** A typed line and the row it was made from. */
export interface Made {
  readonly row: IndexedRow;
  readonly line: ReadLine;
}

const NOWHERE = { start: 0, valueStart: 0, stop: 0 };

/** A line of any row. */
export const anyLine: fc.Arbitrary<Made> = fc.constantFrom(...VOCABULARY.rows).chain(lineOf);

/** An event that opens nothing. */
export const anyEvent: fc.Arbitrary<Made> = fc
  .constantFrom(...VOCABULARY.rows.filter((row) => row.place === "event" && row.verb !== "note"))
  .chain(lineOf);

/** A line of that row. */
export function lineOf(row: IndexedRow): fc.Arbitrary<Made> {
  const isProperty = row.place === "boat" || row.place === "trip";
  const date = row.place === "trip" ? fc.constant(null) : fc.option(anyDate, { freq: 3 });
  const clock = isProperty
    ? fc.constant(null)
    : fc.option(fc.tuple(anyClock, fc.option(anyOffset), fc.boolean()));
  const comment = fc.option(
    fc.string({ maxLength: 10 }).map((text) => `#${text.replaceAll(/[\r\n]/gu, "")}`),
  );
  return fc.tuple(date, clock, comment, slotsOf(row), itemsOf(row)).map(([on, at, remark, slots, items]) => {
    const read = {
      raw: "",
      end: "" as const,
      date: on,
      clock: at?.[0] ?? null,
      offset: at?.[1] ?? null,
      approx: at?.[2] ?? false,
      verb: row.verb,
      slots,
      items,
      comment: remark,
      verbStart: 0,
      verbStop: 0,
    };
    const { place } = row;
    const line: ReadLine =
      place === "boat" || place === "trip"
        ? { kind: "property", block: place, ...read }
        : { kind: "fact", ...read };
    return { row, line };
  });
}

/** Names that the row would misread are put in quotes: that is how the language lets them be written. */
function quoteTraps(row: IndexedRow, { text, quoted }: Name): Name {
  return { text, quoted: quoted || row.bareItems.some((item) => item.word === text.toLowerCase()) };
}

function slotsOf(row: IndexedRow): fc.Arbitrary<Slot[]> {
  const one = (slot: SlotRow): fc.Arbitrary<Slot[]> => {
    const name =
      slot.of === "date"
        ? anyDate.map((text): Name => ({ text, quoted: false }))
        : slot.of === "count"
          ? fc.nat(99).map((n): Name => ({ text: String(n), quoted: false }))
          : anyName.map((typed) => quoteTraps(row, typed));
    const count = slot.rest ? 4 : 1;
    return fc.array(
      name.map((typed) => ({ ...typed, start: 0, stop: 0 })),
      { minLength: 1, maxLength: count },
    );
  };
  return fc.tuple(...row.slots.map(one)).map((slots) => slots.flat());
}

function itemsOf(row: IndexedRow): fc.Arbitrary<Item[]> {
  const pool = [...row.items, ...row.items.filter((item) => item.many)];
  const wanted = fc.shuffledSubarray(pool, { maxLength: Math.min(6, pool.length) });
  const needed = row.needs.length === 0 ? fc.constant(undefined) : fc.constantFrom(...row.needs);
  return fc
    .tuple(needed, wanted)
    .chain(([need, rows]) => {
      const first = row.items.filter((item) => item.word === need);
      const kept: ItemRow[] = [];
      for (const item of [...first, ...rows]) if (!clashes(kept, item)) kept.push(item);
      return fc.shuffledSubarray(kept, { minLength: kept.length });
    })
    .chain((rows) => fc.tuple(...rows.map((item) => anyItem(row, item))))
    .map(withoutTraps);
}

function clashes(before: readonly ItemRow[], item: ItemRow): boolean {
  return before.some(
    (other) =>
      (other.word === item.word && !item.many) ||
      (other.group !== undefined && other.group === item.group && other.word !== item.word),
  );
}

function anyItem(row: IndexedRow, item: ItemRow): fc.Arbitrary<Item> {
  const isText = item.type.kind === "name";
  const rivals = row.bareItems.filter((other) => (other.type.kind === "name") === isText);
  const canBeBare = item.bare && (!isText || rivals[0] === item);
  return fc.boolean().chain((wish) => {
    const bare = item.type.kind === "point" || (canBeBare && wish);
    return anyValue(item.type, bare && rivals.length > 1).map((value): Item => {
      const typed: Value =
        value.kind === "name" ? { kind: "name", ...quoteTraps(row, value) } : amount(row, item, value);
      const quoted: Value = typed.kind === "name" && bare ? { ...typed, quoted: true } : typed;
      return { word: item.word, bare, value: quoted, ...NOWHERE };
    });
  });
}

/** Lines that alter an amount take it without a sign: with one it would be a change, which isn't read. */
function amount(row: IndexedRow, { type }: ItemRow, value: Value): Value {
  const isLength = type.kind === "quantity" && type.dimension === "length";
  if (!isLength || value.kind !== "quantity" || !["move", "again", "change"].includes(row.verb)) return value;
  const parts = value.parts.map(({ number, unit }) => ({ number: number.replace(/^[+-]/u, ""), unit }));
  return { ...value, parts };
}

/** A bare measure that another item's measure would take for its own finer part gets its word. */
function withoutTraps(items: readonly Item[]): Item[] {
  const lasts = items.map((item) => partsOf(item.value).at(-1));
  return items.map((item) => {
    const first = partsOf(item.value)[0];
    return item.value.kind !== "point" && lasts.some((last) => wouldJoin(last, first))
      ? { ...item, bare: false }
      : item;
  });
}

function partsOf(value: Value): readonly Part[] {
  if (value.kind === "quantity") return value.parts;
  if (value.kind === "range") return [...value.low, ...value.high];
  return value.kind === "point" ? [...value.depth, ...value.temp] : [];
}

/** A line without its text and offsets: what it says. */
export function meaning(line: Line | undefined): unknown {
  if (line?.kind !== "fact" && line?.kind !== "property") return line;
  const { raw, end, verbStart, verbStop, slots, items, ...rest } = line;
  return {
    ...rest,
    slots: slots.map(({ text, quoted }) => ({ text, quoted })),
    items: items.map(({ word, bare, value }) => ({ word, bare, value })),
  };
}
