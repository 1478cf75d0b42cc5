/** The name under a column and what kind of name it is. */
import type { ReadLine } from "../../grammar/journal.ts";
import { type IndexedRow, type SlotRow, VOCABULARY } from "../../grammar/vocabulary.ts";

/** A name on a line. */
export interface NamedPlace {
  readonly of: SlotRow["of"];
  readonly text: string;
  /** Its columns, quotes included. */
  readonly start: number;
  readonly stop: number;
}

/** The row that tells how a line is read. */
export function rowOf(line: ReadLine): IndexedRow | undefined {
  return VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
}

/** The name in a slot or after an attribute at a column; its end counts as part of it. */
export function nameAt(line: ReadLine, column: number): NamedPlace | undefined {
  const row = rowOf(line);
  const index = line.slots.findIndex((one) => isWithin(column, one.start, one.stop));
  const slot = line.slots[index];
  const of = row?.slots[Math.min(index, row.slots.length - 1)]?.of;
  if (slot !== undefined && of !== undefined) {
    return { of, text: slot.text, start: slot.start, stop: slot.stop };
  }
  const item = line.items.find((one) => isWithin(column, one.valueStart, one.stop));
  const type = item === undefined ? undefined : row?.words.get(item.word)?.type;
  if (item?.value.kind !== "name" || type?.kind !== "name") return undefined;
  return { of: type.of, text: item.value.text, start: item.valueStart, stop: item.stop };
}

/** A cursor behind a word is at that word too. */
export function isWithin(column: number, start: number, stop: number): boolean {
  return column >= start && column <= stop;
}
