/** The lines a rule may read: those whose words were read without an issue. One message a line is enough. */
import type { ReadLine } from "../../grammar/journal.ts";
import { type IndexedRow, VOCABULARY } from "../../grammar/vocabulary.ts";

/** A line with its number in the file. */
export interface SoundLine {
  readonly lineIndex: number;
  readonly line: ReadLine;
}

/** The vocabulary's row of a line. */
export function rowOf(line: ReadLine): IndexedRow | undefined {
  return VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
}
