/** The place in a line's words that the reader has reached, and the first thing found wrong with it. */
import type { Issue } from "./issues.ts";
import type { Span } from "./journal.ts";
import type { Piece } from "./line-parts.ts";

const COMMA = 44;

/** Walks the words of one line; keeps the first issue and drops the rest, so that a line never has two. */
export class Cursor {
  readonly raw: string;
  pieces: readonly Piece[];
  at = 0;
  issue: Issue | null = null;

  constructor(raw: string, words: readonly Piece[]) {
    this.raw = raw;
    this.pieces = hasSeparator(words) ? withoutSeparators(words) : words;
  }

  get done(): boolean {
    return this.at >= this.pieces.length;
  }

  /** The word `ahead` places on, with its quotes; empty past the end. */
  text(ahead = 0): string {
    return this.pieces[this.at + ahead]?.image ?? "";
  }

  isQuoted(ahead = 0): boolean {
    return this.pieces[this.at + ahead]?.kind === "text";
  }

  isClock(ahead = 0): boolean {
    return this.pieces[this.at + ahead]?.kind === "clock";
  }

  /** Where the piece with that index starts; the end of the last piece when past the end. */
  startOf(index: number): number {
    return this.pieces[index]?.startOffset ?? this.endOf(index - 1);
  }

  endOf(index: number): number {
    const piece = this.pieces[index];
    return piece === undefined ? this.raw.trimEnd().length : piece.startOffset + piece.image.length;
  }

  /** The span from one piece to the one before another. */
  spanFrom(first: number, pastLast: number): Span {
    return [this.startOf(first), pastLast > first ? this.endOf(pastLast - 1) : this.startOf(first)];
  }

  /** Puts several pieces in the place of the one at the cursor; together they have its very letters. */
  split(texts: readonly string[]): void {
    const piece = this.pieces[this.at];
    if (piece === undefined) return;
    let startOffset = piece.startOffset;
    const parts = texts.map((image) => {
      const part = { ...piece, image, startOffset };
      startOffset += image.length;
      return part;
    });
    this.pieces = this.pieces.toSpliced(this.at, 1, ...parts);
  }

  report(issue: Issue): void {
    this.issue ??= issue;
  }
}

function hasSeparator(words: readonly Piece[]): boolean {
  for (const { image } of words) if (image.charCodeAt(image.length - 1) === COMMA) return true;
  return false;
}

/** Commas before a blank separate and mean nothing. */
function withoutSeparators(words: readonly Piece[]): Piece[] {
  const kept: Piece[] = [];
  for (const word of words) {
    let length = word.image.length;
    while (length > 0 && word.image.charCodeAt(length - 1) === COMMA) length--;
    if (length === word.image.length) kept.push(word);
    else if (length > 0) kept.push({ ...word, image: word.image.slice(0, length) });
  }
  return kept;
}

/** A name or text without its quotes. */
export function unquote(image: string): string {
  return image.slice(1, -1).replaceAll('""', '"');
}
