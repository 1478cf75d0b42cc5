/** What a line still waits for, as far as it is typed. */
import type { Item, ReadLine } from "../../grammar/journal.ts";
import { findItem, type IndexedRow, type ItemRow, type SlotRow } from "../../grammar/vocabulary.ts";

/** The name that has to come next; undefined when all are there. A slot that takes every piece never ends. */
export function openSlot(line: ReadLine, row: IndexedRow): SlotRow | undefined {
  const next = row.slots[line.slots.length] ?? row.slots.at(-1);
  return next !== undefined && (line.slots.length < row.slots.length || next.rest) ? next : undefined;
}

/** The attribute that still lacks its value, or a range that lacks its upper end. */
export function openWord(line: ReadLine, row: IndexedRow): ItemRow | "range" | undefined {
  const last = /\S+(?=\s*$)/u.exec(line.raw);
  if (last === null || line.items.some((item) => isValueAt(item, last.index))) return undefined;
  const item = findItem(row, last[0]);
  if (item === undefined) return last[0].toLowerCase() === "to" ? "range" : undefined;
  return item.type.kind === "flag" ? undefined : item;
}

function isValueAt({ value, valueStart, stop }: Item, offset: number): boolean {
  return value.kind !== "unread" && valueStart <= offset && offset < stop;
}
