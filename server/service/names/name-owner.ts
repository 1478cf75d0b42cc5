/** Whose a line is, from a file's record alone: the trip or boat opened above it. */
import { countUpTo } from "../../model/sorted.ts";
import type { NamedFile } from "./named-file.ts";

/** An opener, and the lines up to the next one. */
export interface NameOwner {
  readonly boat: string;
  readonly openerIndex: number;
  /** Line of the next opener; infinite for the last. */
  readonly stop: number;
  /** The trip's day; undefined under a boat. */
  readonly date: string | undefined;
}

const ownersOfRecord = new WeakMap<NamedFile, readonly NameOwner[]>();

/** The owner of a line: the last opener above it, else the first trip below; undefined in a book without boats. */
export function nameOwner(record: NamedFile, lineIndex: number): NameOwner | undefined {
  const owners = ownersIn(record);
  const above = countUpTo(owners, lineIndex, ({ openerIndex }) => openerIndex);
  return owners[above - 1] ?? owners.find(({ date }) => date !== undefined);
}

function ownersIn(record: NamedFile): readonly NameOwner[] {
  const known = ownersOfRecord.get(record);
  if (known !== undefined) return known;
  const boats = record.places.filter(({ kind, role }) => kind === "boat" && role === "definition");
  const openers = [
    ...record.trips.map(({ lineIndex, boat, date }) => ({ openerIndex: lineIndex, boat, date })),
    ...boats.map(({ name, range }) => ({ openerIndex: range.lineIndex, boat: name, date: undefined })),
  ].sort((a, b) => a.openerIndex - b.openerIndex);
  const owners = openers.map((opener, index) => ({
    ...opener,
    stop: openers[index + 1]?.openerIndex ?? Number.POSITIVE_INFINITY,
  }));
  ownersOfRecord.set(record, owners);
  return owners;
}
