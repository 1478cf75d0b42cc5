/**
 * A text that is edited, kept as its lines. An edit puts new lines in place of those it touches and reads nothing; the
 * lines that changed are read once, when the parse is asked for. What is kept is what `parse` would give for the text.
 */
import { FORMAT_NAME } from "./format-name.ts";
import type { Issue } from "./issues.ts";
import type { Line } from "./journal.ts";
import { blockAfter, LineSpans, type Parse } from "./parse.ts";
import { type Block, readLine } from "./read-line.ts";
import { VOCABULARY, type Vocabulary } from "./vocabulary.ts";

/** A place in a text: its line from 0, and the UTF-16 code units before it there. A byte order mark is one. */
export interface TextPlace {
  readonly line: number;
  readonly character: number;
}

interface Unread {
  readonly kind: "unread";
  readonly raw: string;
  readonly end: Line["end"];
}

const BOM = "\ufeff";
/** More new lines than this are put in by copying, since a call takes only so many arguments. */
const MOST_SPLICED = 5_000;

/** One text and its parse through any number of edits. */
export class LineEditor {
  readonly #vocabulary: Vocabulary;
  #bom: boolean;
  /** Aligned: the lines, what is wrong with each, the block it stands in and the block after it. */
  #lines: (Line | Unread)[];
  #issues: (Issue | null)[];
  #blocks: Block[];
  #after: Block[];
  #parse: Parse | undefined;
  /** The lines from the first edited one to behind the last, in the text as it is now. */
  #dirty = { from: 0, to: 0 };
  #linesRead = 0;

  constructor(parse: Parse, vocabulary: Vocabulary = VOCABULARY) {
    const { lines, bom } = parse.journal;
    this.#vocabulary = vocabulary;
    this.#bom = bom;
    this.#parse = parse;
    this.#lines = lines;
    this.#issues = [...parse.issues];
    this.#blocks = [...parse.blocks];
    this.#after = [...parse.blocks.slice(1), blockAfter(parse, lines.length, vocabulary)];
  }

  /** How many lines were read since the start: what edits cost. */
  get linesRead(): number {
    return this.#linesRead;
  }

  /** A line's text without its end, as a client has it: with the byte order mark where it is the first. */
  lineText(line: number): string | undefined {
    const raw = this.#lines[line]?.raw;
    return line === 0 && this.#bom && raw !== undefined ? BOM + raw : raw;
  }

  /** Puts a text between two places; a place outside of the text is taken to be the nearest in it. */
  replace(from: TextPlace, to: TextPlace, text: string): void {
    const [start, stop] = inOrder(this.#clamp(from), this.#clamp(to));
    const head = (this.lineText(start.line) ?? "").slice(0, start.character);
    const tail = (this.lineText(stop.line) ?? "").slice(stop.character) + (this.#lines[stop.line]?.end ?? "");
    this.#put(start.line, stop.line + 1, head + text + tail);
  }

  /** Puts another text in place of the whole; lines at both ends that are the same stay. */
  replaceAll(text: string): void {
    const bom = text.startsWith(BOM);
    const fresh = linesOf(bom ? text.slice(1) : text);
    const old = this.#lines;
    const most = Math.min(fresh.length, old.length);
    let head = 0;
    while (head < most && isSame(fresh[head], old[head])) head++;
    let tail = 0;
    while (tail < most - head && isSame(fresh[fresh.length - 1 - tail], old[old.length - 1 - tail])) tail++;
    this.#bom = bom;
    this.#splice(head, old.length - tail, fresh.slice(head, fresh.length - tail));
  }

  /** The text as it is now, read. */
  parse(): Parse {
    this.#parse ??= this.#read();
    return this.#parse;
  }

  /** Puts a text of whole lines in place of the lines from `first` to before `stop`. */
  #put(first: number, stop: number, text: string): void {
    const above = this.#lines[first - 1];
    if (text.startsWith("\n") && above?.end === "\r") {
      // A line feed that comes to stand behind a carriage return is one line end with it.
      this.#put(first - 1, stop, `${this.lineText(first - 1)}\r${text}`);
      return;
    }
    if (first === 0) this.#bom = text.startsWith(BOM);
    const fresh = linesOf(first === 0 && this.#bom ? text.slice(1) : text);
    // What follows the end of the last of these lines is the next line, which stays.
    if (stop < this.#lines.length) fresh.pop();
    this.#splice(first, stop, fresh);
  }

  #splice(first: number, stop: number, fresh: Unread[]): void {
    if (this.#parse !== undefined) this.#startEdits(first);
    this.#lines = spliced(this.#lines, first, stop, fresh);
    this.#issues = spliced(this.#issues, first, stop, Array<null>(fresh.length).fill(null));
    for (const blocks of ["blocks", "after"] as const) this.#spliceBlocks(blocks, first, stop, fresh.length);
    const grown = fresh.length - (stop - first);
    const { from, to } = this.#dirty;
    this.#dirty = { from: Math.min(from, first), to: Math.max(to + grown, first + fresh.length) };
  }

  #spliceBlocks(which: "blocks" | "after", first: number, stop: number, count: number): void {
    const unknown = Array<Block>(count).fill("margin");
    if (which === "blocks") this.#blocks = spliced(this.#blocks, first, stop, unknown);
    else this.#after = spliced(this.#after, first, stop, unknown);
  }

  /** The parse that was handed out stays as it is; edits go into copies. */
  #startEdits(first: number): void {
    this.#parse = undefined;
    this.#lines = this.#lines.slice();
    this.#issues = this.#issues.slice();
    this.#blocks = this.#blocks.slice();
    this.#dirty = { from: first, to: first };
  }

  #read(): Parse {
    const { from, to } = this.#dirty;
    let block: Block = from === 0 ? "margin" : (this.#after[from - 1] ?? "margin");
    for (let index = from; index < this.#lines.length; index++) {
      const line = this.#lines[index];
      if (index >= to && this.#blocks[index] === block) break;
      if (line !== undefined && (line.kind === "unread" || this.#blocks[index] !== block)) {
        this.#readLine(index, line, block);
      }
      block = this.#after[index] ?? "margin";
    }
    const lines = this.#lines.filter((line) => line.kind !== "unread");
    const journal = { format: FORMAT_NAME, bom: this.#bom, lines } as const;
    return { journal, issues: this.#issues, blocks: this.#blocks };
  }

  #readLine(index: number, { raw, end }: Line | Unread, block: Block): void {
    const { line, issue, next } = readLine(raw, end, block, this.#vocabulary);
    this.#lines[index] = line;
    this.#issues[index] = issue;
    this.#blocks[index] = block;
    this.#after[index] = next;
    this.#linesRead++;
  }

  #clamp({ line, character }: TextPlace): TextPlace {
    const last = this.#lines.length - 1;
    if (line > last) return { line: last, character: this.lineText(last)?.length ?? 0 };
    if (!(line >= 0)) return { line: 0, character: 0 };
    const longest = this.lineText(line)?.length ?? 0;
    return { line, character: Math.min(Math.max(character, 0), longest) };
  }
}

function linesOf(text: string): Unread[] {
  const spans = new LineSpans(text, 0);
  return Array.from({ length: spans.length }, (_, index) => ({
    kind: "unread",
    raw: spans.text(index),
    end: spans.end(index),
  }));
}

function isSame(a: Unread | undefined, b: Line | Unread | undefined): boolean {
  return a !== undefined && a.raw === b?.raw && a.end === b.end;
}

function inOrder(a: TextPlace, b: TextPlace): [TextPlace, TextPlace] {
  const isSwapped = b.line < a.line || (b.line === a.line && b.character < a.character);
  return isSwapped ? [b, a] : [a, b];
}

/** The array with others in place of a part; the very array where that is quicker than a copy. */
function spliced<T>(all: T[], first: number, stop: number, fresh: readonly T[]): T[] {
  if (fresh.length > MOST_SPLICED) return all.slice(0, first).concat(fresh, all.slice(stop));
  all.splice(first, stop - first, ...fresh);
  return all;
}
