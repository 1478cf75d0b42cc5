/**
 * Splits lines. The grammar of a line is the parser's; lines of plain letters, which nearly all are, take a short way
 * that answers the very same (`tests/properties/split-line.test.ts`), so that the parser is built only for a file that
 * has another line.
 */
import type { LineParts, Piece, PieceKind } from "./line-parts.ts";
import { parseLine } from "./parser.ts";

const TAB = 9;
const SPACE = 32;
const QUOTE = 34;
const HASH = 35;
const COMMA = 44;
const DASH = 45;
const NINE = 57;
const COLON = 58;
const TILDE = 126;
const NO_BREAK_SPACE = 0xa0;
/** From here on letters and blanks take turns. */
const PLAIN_END = 0x1680;

const DATE = /^\d{4}-\d{2}-\d{2}$/u;
const CLOCK = /^~?\d{1,2}:\d{2}(?::\d{2})?(?:[+-]\d{2}:\d{2}|Z)?$/u;
/** `5:25` */
const SHORTEST_STAMP = 4;

/** Splits one line, given without its line end. Total: every string splits. */
export function splitLine(raw: string): LineParts {
  return splitPlainLine(raw) ?? parseLine(raw);
}

/** Splits a line of plain letters; undefined for a line that needs the grammar. */
export function splitPlainLine(raw: string): LineParts | undefined {
  let date: Piece | undefined;
  let clock: Piece | undefined;
  const words: Piece[] = [];
  let at = 0;
  while (at < raw.length) {
    const first = raw.charCodeAt(at);
    if (first === SPACE || first === TAB || (first === COMMA && isEndOrBlank(raw, at + 1))) {
      at++;
      continue;
    }
    if (first === HASH) return { date, clock, words, comment: raw.slice(at) };
    const textStop = first === QUOTE ? endOfText(raw, at) : 0;
    const stop = textStop === 0 ? endOfWord(raw, at) : textStop;
    if (stop === NOT_PLAIN) return undefined;
    const piece = textStop > 0 ? pieceOf("text", raw, at, stop) : wordOrStamp(raw, at, stop, first);
    at += piece.image.length;
    if (piece.kind === "date" && words.length === 0 && date === undefined && clock === undefined)
      date = piece;
    else if (piece.kind === "clock" && words.length === 0 && clock === undefined) clock = piece;
    else words.push(piece);
  }
  return { date, clock, words, comment: undefined };
}

/** True for what every kind of blank is told from by its code alone; other control letters and signs are not plain. */
function isPlainLetter(code: number): boolean {
  return code > SPACE && code < PLAIN_END && code !== NO_BREAK_SPACE;
}

function isEndOrBlank(raw: string, at: number): boolean {
  const code = raw.charCodeAt(at);
  return at >= raw.length || code === SPACE || code === TAB;
}

/** In place of a stop: what stands there needs the grammar. */
const NOT_PLAIN = -1;

/** Where the run of letters from a place ends. */
function endOfWord(raw: string, from: number): number {
  let at = from;
  while (isPlainLetter(raw.charCodeAt(at))) at++;
  return isEndOrBlank(raw, at) ? at : NOT_PLAIN;
}

/** Where the text in quotes from a place ends, its closing quote included; 0 where it doesn't close before a blank. */
function endOfText(raw: string, from: number): number {
  for (let at = raw.indexOf('"', from + 1); at >= 0; at = raw.indexOf('"', at + 2)) {
    if (raw.charCodeAt(at + 1) === QUOTE) continue;
    const behind = raw.charCodeAt(at + 1) === COMMA ? at + 2 : at + 1;
    if (isEndOrBlank(raw, behind)) return at + 1;
    return isPlainLetter(raw.charCodeAt(behind)) ? 0 : NOT_PLAIN;
  }
  return 0;
}

/** A stamp may have a comma behind it, which is none of it; a word keeps its own. */
function wordOrStamp(raw: string, start: number, stop: number, first: number): Piece {
  if ((first <= NINE || first === TILDE) && stop - start >= SHORTEST_STAMP) {
    const stampStop = raw.charCodeAt(stop - 1) === COMMA ? stop - 1 : stop;
    const image = raw.slice(start, stampStop);
    if (raw.charCodeAt(start + 4) === DASH && DATE.test(image))
      return { kind: "date", image, startOffset: start };
    if (hasColon(raw, start) && CLOCK.test(image)) return { kind: "clock", image, startOffset: start };
  }
  return pieceOf("word", raw, start, stop);
}

/** Where a clock time has its first: behind one or two digits and perhaps a mark. */
function hasColon(raw: string, start: number): boolean {
  return (
    raw.charCodeAt(start + 2) === COLON ||
    raw.charCodeAt(start + 1) === COLON ||
    raw.charCodeAt(start + 3) === COLON
  );
}

function pieceOf(kind: PieceKind, raw: string, start: number, stop: number): Piece {
  return { kind, image: raw.slice(start, stop), startOffset: start };
}
