/**
 * The lexer. One word token and a table lookup, not ninety keyword tokens; a word catches everything else,
 * so lexing is total: whatever a line holds, it becomes tokens that tile it. Lines are lexed one at a time.
 */
import { createToken, Lexer, type TokenType } from "chevrotain";
import type { PieceKind } from "./line-parts.ts";

/** The code units a character class with a complement can start with; Chevrotain's own optimizer needs the list. */
const NOT_BLANK_STARTS: number[] = [];
const BLANKS = /[\s\ufeff]/u;
for (let code = 0; code < 256; code++) {
  if (!BLANKS.test(String.fromCharCode(code))) NOT_BLANK_STARTS.push(code);
}
/** Above 255 Chevrotain sorts code units into buckets of 255; one member a bucket stands for all. */
for (let code = 256; code < 0x10000; code += 128) {
  if (!BLANKS.test(String.fromCharCode(code))) NOT_BLANK_STARTS.push(code);
}
NOT_BLANK_STARTS.push(0xffff);
const DIGITS = [..."0123456789"];

/** What a blank can start with. Every token says it, so that no pattern is taken apart to find out when a program starts. */
const BLANK_STARTS = [..." \t\v\f\u00a0\u1680\u2028\u2029\u202f\u205f\u3000\ufeff,"];
for (let code = 0x2000; code <= 0x200a; code++) BLANK_STARTS.push(String.fromCharCode(code));

/** What stands between nearly all words; a set of plain letters is matched without the pattern being run. */
export const Space = createToken({
  name: "Space",
  pattern: /[ \t]+/,
  group: Lexer.SKIPPED,
  start_chars_hint: [" ", "\t"],
});

/** White space other than a line end; a comma on its own before a blank counts as some. */
export const Blank = createToken({
  name: "Blank",
  pattern: /(?:,(?!\S)|[ \t\v\f\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000\ufeff])+/u,
  group: Lexer.SKIPPED,
  start_chars_hint: BLANK_STARTS,
});

/** Any token that carries content: a word, a string, a date or a clock time. */
export const Piece = createToken({ name: "Piece", pattern: Lexer.NA });

/** A comment: `#` at the line's start or after a blank, to the end of the line. */
export const Comment = createToken({ name: "Comment", pattern: /#[^\r\n]*/, start_chars_hint: ["#"] });

/** Text in double quotes; a quote inside is written twice. */
export const QuotedText = createToken({
  name: "QuotedText",
  pattern: /"(?:[^"\r\n]|"")*"(?=,?(?!\S))/,
  start_chars_hint: ['"'],
  categories: [Piece],
});

/** `2031-06-21` */
export const CalendarDate = createToken({
  name: "CalendarDate",
  pattern: /\d{4}-\d{2}-\d{2}(?=,?(?!\S))/,
  start_chars_hint: DIGITS,
  categories: [Piece],
});

/** `5:25`, `05:25:30`, `~07:15`, `01:30-05:00`, `04:00Z` */
export const ClockTime = createToken({
  name: "ClockTime",
  pattern: /~?\d{1,2}:\d{2}(?::\d{2})?(?:[+-]\d{2}:\d{2}|Z)?(?=,?(?!\S))/,
  start_chars_hint: ["~", ...DIGITS],
  categories: [Piece],
});

/** Any other run without blanks. */
export const Word = createToken({
  name: "Word",
  pattern: /[^\s\ufeff]+/,
  line_breaks: false,
  start_chars_hint: NOT_BLANK_STARTS,
  categories: [Piece],
});

/** Every token type, in the order the lexer tries them. */
export const TOKENS: TokenType[] = [Space, Blank, Comment, QuotedText, CalendarDate, ClockTime, Word, Piece];

/** What a token of a piece is called once it is split off; during the parser's own recording tokens have none. */
export function kindOfToken(type: TokenType | undefined): PieceKind {
  if (type === QuotedText) return "text";
  if (type === CalendarDate) return "date";
  return type === ClockTime ? "clock" : "word";
}

/** Lexes one line without its line end. */
export const LINE_LEXER = new Lexer(TOKENS, {
  positionTracking: "onlyOffset",
  ensureOptimizations: true,
  skipValidations: true,
});
