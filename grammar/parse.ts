/** The one entry point from text: `parse(text)` → journal and issues. Never fails; lines may be unreadable. */

import { FORMAT_NAME } from "./format-name.ts";
import type { Issue } from "./issues.ts";
import type { Journal } from "./journal.ts";
import { type Block, readLine } from "./read-line.ts";
import { lineEnd, lineText, type NextLines, nextLines, type TextLines, textLines } from "./text-lines.ts";
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

/** The text that a parse was read from, with its lines; for reading the next version. */
const linesOfParse = new WeakMap<Parse, TextLines>();

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
  const before = previous === undefined ? undefined : linesOfParse.get(previous);
  const content = bom ? text.slice(1) : text;
  const next: NextLines =
    before === undefined ? { ...textLines(content), head: 0, tail: 0 } : nextLines(before, content);
  const { head, tail } = next;
  const old = previous?.journal.lines ?? [];
  let lines = old.slice(0, head);
  let issues = previous?.issues.slice(0, head) ?? [];
  let blocks = previous?.blocks.slice(0, head) ?? [];
  // The block of the first line that changed is the one it stood in: it depends on the lines above alone.
  let block: Block = previous?.blocks[head] ?? "margin";
  const count = next.starts.length;
  const shift = old.length - count;
  for (let index = head; index < count; index++) {
    if (index >= count - tail && previous?.blocks[index + shift] === block) {
      lines = lines.concat(old.slice(index + shift));
      issues = issues.concat(previous.issues.slice(index + shift));
      blocks = blocks.concat(previous.blocks.slice(index + shift));
      break;
    }
    const raw = lineText(next, index);
    const reading = readLine(
      previous === undefined ? raw : apart(raw),
      lineEnd(next, index),
      block,
      vocabulary,
    );
    lines.push(reading.line);
    issues.push(reading.issue);
    blocks.push(block);
    block = reading.next;
  }
  const parse: Parse = { journal: { format: FORMAT_NAME, bom, lines }, issues, blocks };
  linesOfParse.set(parse, next);
  return parse;
}

/** The same letters on their own: a piece of a text keeps the whole text in memory, and a line outlasts many versions. */
function apart(raw: string): string {
  return ` ${raw}`.slice(1);
}
