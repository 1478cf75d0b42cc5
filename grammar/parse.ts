/** The one entry point from text: `parse(text)` → journal and issues. Never fails; lines may be unreadable. */

import { FORMAT_NAME } from "./format-name.ts";
import type { Issue } from "./issues.ts";
import type { Journal, Line } from "./journal.ts";
import { type Block, readLine } from "./read-line.ts";
import { VOCABULARY, type Vocabulary } from "./vocabulary.ts";

/** A journal read: its lines, at most one issue for each, and the block each stands in. */
export interface Parse {
  readonly journal: Journal;
  /** Aligned with `journal.lines`. */
  readonly issues: readonly (Issue | null)[];
  /** The block each line stands in, aligned with `journal.lines`. */
  readonly blocks: readonly Block[];
}

const BOM = "\ufeff";
const LF = 10;
const CR = 13;

/** Reads a whole file's text. */
export function parse(text: string, vocabulary: Vocabulary = VOCABULARY): Parse {
  return reparse(undefined, text, vocabulary);
}

/**
 * Reads a text again after an edit: lines before and after the edit that stand in the same block keep their very
 * values, so that what was computed from them can be kept too. The result equals `parse(text)`.
 */
export function reparse(
  previous: Parse | undefined,
  text: string,
  vocabulary: Vocabulary = VOCABULARY,
): Parse {
  const bom = text.startsWith(BOM);
  const spans = new LineSpans(text, bom ? 1 : 0);
  const old = previous?.journal.lines ?? [];
  const same = (line: Line | undefined, index: number): boolean =>
    line !== undefined && spans.holds(index, line);
  const most = Math.min(old.length, spans.length);
  let head = 0;
  while (head < most && same(old[head], head)) head++;
  let tail = 0;
  while (tail < most - head && same(old[old.length - 1 - tail], spans.length - 1 - tail)) tail++;

  let lines = old.slice(0, head);
  let issues = previous?.issues.slice(0, head) ?? [];
  let blocks = previous?.blocks.slice(0, head) ?? [];
  let block: Block = head === 0 ? "margin" : blockAfter(previous, head, vocabulary);
  const shift = old.length - spans.length;
  for (let index = head; index < spans.length; index++) {
    if (index >= spans.length - tail && previous?.blocks[index + shift] === block) {
      lines = lines.concat(old.slice(index + shift));
      issues = issues.concat(previous.issues.slice(index + shift));
      blocks = blocks.concat(previous.blocks.slice(index + shift));
      break;
    }
    const reading = readLine(spans.text(index), spans.end(index), block, vocabulary);
    lines.push(reading.line);
    issues.push(reading.issue);
    blocks.push(block);
    block = reading.next;
  }
  return { journal: { format: FORMAT_NAME, bom, lines }, issues, blocks };
}

/** The block that follows a journal's first `count` lines. */
export function blockAfter(previous: Parse | undefined, count: number, vocabulary: Vocabulary): Block {
  const line = previous?.journal.lines[count - 1];
  const block = previous?.blocks[count - 1];
  if (line === undefined || block === undefined) return "margin";
  return readLine(line.raw, line.end, block, vocabulary).next;
}

/** Where the lines of a text lie; flat numbers, since a season's text has many lines. */
export class LineSpans {
  readonly length: number;
  readonly #text: string;
  /** Start and end of each line's content, one after the other. */
  readonly #edges: number[] = [];

  /** Splits at LF, CRLF and CR, as the LSP does. A text always has at least one line. */
  constructor(text: string, from: number) {
    this.#text = text;
    let start = from;
    for (let at = from; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code !== LF && code !== CR) continue;
      this.#edges.push(start, at);
      if (code === CR && text.charCodeAt(at + 1) === LF) at++;
      start = at + 1;
    }
    this.#edges.push(start, text.length);
    this.length = this.#edges.length / 2;
  }

  start(index: number): number {
    return this.#edges[2 * index] ?? 0;
  }

  /** Where its content stops, before the line end. */
  stop(index: number): number {
    return this.#edges[2 * index + 1] ?? this.start(index);
  }

  text(index: number): string {
    return this.#text.slice(this.#edges[2 * index], this.#edges[2 * index + 1]);
  }

  end(index: number): Line["end"] {
    const stop = this.#edges[2 * index + 1] ?? this.#text.length;
    if (stop >= this.#text.length) return "";
    if (this.#text.charCodeAt(stop) === LF) return "\n";
    return this.#text.charCodeAt(stop + 1) === LF ? "\r\n" : "\r";
  }

  /** True when a line read before stands at that place unchanged. */
  holds(index: number, line: Line): boolean {
    const start = this.#edges[2 * index] ?? 0;
    const stop = this.#edges[2 * index + 1] ?? 0;
    if (line.raw.length !== stop - start || line.end !== this.end(index)) return false;
    return this.#text.startsWith(line.raw, start);
  }
}
