/** The lines of a journal for those who ask for few of them: a file that isn't open need not be read as a whole. */
import type { Parse } from "../../../grammar/parse.ts";
import { type Block, type LineReading, readLine } from "../../../grammar/read-line.ts";
import { lineEnd, lineText, textLines } from "../../../grammar/text-lines.ts";
import { VOCABULARY } from "../../../grammar/vocabulary.ts";
import { contentHash } from "../../workspace/content-hash.ts";
import { fileRecord } from "../../workspace/file-record.ts";
import { hasPlainClock } from "../../workspace/plain-clock.ts";
import type { Journals } from "./journals.ts";
import type { NamedFile } from "./named-file.ts";

/** A line as it reads, with the block it stands in. */
export interface AskedLine extends Pick<LineReading, "line" | "issue"> {
  readonly block: Block;
}

/** Gives a line by its number; undefined where there is none. */
export type AskLine = (lineIndex: number) => AskedLine | undefined;

/** A file as it is now: its lines, and the names that stand in them. */
export interface FileNow {
  readonly line: AskLine;
  /** A line as it is written, which costs less. */
  readonly raw: (lineIndex: number) => string;
  readonly names: NamedFile;
}

/** A file as it is now; what the index holds of it is not read again. Undefined where it can't be read. */
export function fileNow(journals: Journals, file: NamedFile): FileNow | undefined {
  const text = journals.text(file.uri);
  // The text may be newer than what the index holds of it.
  if (text !== undefined && journals.index.record(file.uri)?.hash === contentHash(text))
    return { ...textNow(text), names: file };
  const parse = journals.read(file.uri);
  if (parse === undefined) return undefined;
  const raw = (lineIndex: number): string => parse.journal.lines[lineIndex]?.raw ?? "";
  return { line: linesOfParse(parse), raw, names: fileRecord(file.uri, parse) };
}

/** The lines of a file that was read. */
export function linesOfParse({ journal, blocks, issues }: Parse): AskLine {
  return (lineIndex) => {
    const [line, block] = [journal.lines[lineIndex], blocks[lineIndex]];
    return line === undefined || block === undefined
      ? undefined
      : { line, block, issue: issues[lineIndex] ?? null };
  };
}

type ReadLineHere = LineReading & AskedLine;

/** The lines of a text, read when they are asked for: each with those above it, up to one that starts with a clock. */
export function linesOfText(text: string): AskLine {
  return textNow(text).line;
}

function textNow(text: string): Omit<FileNow, "names"> {
  const lines = textLines(text.startsWith("\ufeff") ? text.slice(1) : text);
  const read = new Map<number, ReadLineHere>();
  const isStart = (lineIndex: number): boolean =>
    lineIndex === 0 || read.has(lineIndex) || hasPlainClock(lines.text, lines.starts[lineIndex] ?? 0);
  const line: AskLine = (lineIndex) => {
    if (!(lineIndex >= 0 && lineIndex < lines.starts.length)) return undefined;
    let at = lineIndex;
    while (!isStart(at)) at--;
    // The block of a line with a clock is asked for only by those who write the line anew: it reads the same in any.
    for (let block: Block = "margin"; at <= lineIndex; at++) {
      const here: ReadLineHere = read.get(at) ?? {
        block,
        ...readLine(lineText(lines, at), lineEnd(lines, at), block, VOCABULARY),
      };
      read.set(at, here);
      block = here.next;
    }
    return read.get(lineIndex);
  };
  return { line, raw: (lineIndex) => lineText(lines, lineIndex) };
}
