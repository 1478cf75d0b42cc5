/** The lines a rule may read: those whose words were read without an issue. One message a line is enough. */
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { type IndexedRow, VOCABULARY } from "../../grammar/vocabulary.ts";

/** A line with its number in the file. */
export interface SoundLine {
  readonly lineIndex: number;
  readonly line: ReadLine;
}

const linesOfParse = new WeakMap<Parse, readonly SoundLine[]>();

/** Every line without an issue, in order; kept for as long as the parse is. */
export function soundLines(parse: Parse): readonly SoundLine[] {
  const known = linesOfParse.get(parse);
  if (known !== undefined) return known;
  const lines = parse.journal.lines.flatMap((line, lineIndex) =>
    isRead(line) && parse.issues[lineIndex] === null ? [{ lineIndex, line }] : [],
  );
  linesOfParse.set(parse, lines);
  return lines;
}

/** The vocabulary's row of a line. */
export function rowOf(line: ReadLine): IndexedRow | undefined {
  return VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
}
