/** Semantic tokens: what each word of a line is, by the place it stands in. Standard token types only. */
import { isRead } from "../../grammar/is-read.ts";
import type { Line, ReadLine } from "../../grammar/journal.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import type { Snapshot } from "./snapshot.ts";

/** The legend, in the order of the numbers sent. */
export const TOKEN_TYPES = [
  "keyword",
  "property",
  "enumMember",
  "variable",
  "number",
  "type",
  "string",
  "comment",
] as const;
type TokenType = (typeof TOKEN_TYPES)[number];

/** What is said of a token besides its type, in the order of the bits sent. */
export const TOKEN_MODIFIERS = ["definition"] as const;
/** The bit of the first modifier: the line gives this name its meaning. */
const DEFINITION = 1;

/** Lines whose first name is one they define. */
const DEFINING = new Set(["cable", "line", "ball", "lure", "rig", "nickname", "spot", "upkeep", "guest"]);

interface Token {
  readonly start: number;
  readonly stop: number;
  readonly type: TokenType;
  /** Bits of the modifiers. */
  readonly modifiers?: number;
}

/** Token data of a range of lines (all by default), five numbers a token as the LSP packs them. */
export function semanticTokens(snapshot: Snapshot, first = 0, last = Number.POSITIVE_INFINITY): number[] {
  const data: number[] = [];
  let previousLine = 0;
  let previousStart = 0;
  const { lines } = snapshot.parse.journal;
  const stop = Math.min(last, lines.length - 1);
  for (let lineIndex = Math.max(0, first); lineIndex <= stop; lineIndex++) {
    const line = lines[lineIndex];
    for (const { start, stop, type, modifiers = 0 } of line === undefined ? [] : tokensOf(line)) {
      const isSameLine = lineIndex === previousLine;
      data.push(
        lineIndex - previousLine,
        isSameLine ? start - previousStart : start,
        stop - start,
        TOKEN_TYPES.indexOf(type),
        modifiers,
      );
      previousLine = lineIndex;
      previousStart = start;
    }
  }
  return data;
}

const tokensOfLine = new WeakMap<Line, readonly Token[]>();

/** Tokens of one line, kept for as long as the line is. */
function tokensOf(line: Line): readonly Token[] {
  const known = tokensOfLine.get(line);
  if (known !== undefined) return known;
  const tokens = isRead(line) ? readTokens(line) : plainTokens(line);
  tokensOfLine.set(line, tokens);
  return tokens;
}

function plainTokens(line: Line): Token[] {
  if (line.kind !== "comment" && line.kind !== "note-text") return [];
  const start = line.raw.length - line.raw.trimStart().length;
  return [{ start, stop: line.raw.length, type: line.kind === "comment" ? "comment" : "string" }];
}

function readTokens(line: ReadLine): Token[] {
  const row = VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
  const tokens: Token[] = [
    ...stampTokens(line),
    { start: line.verbStart, stop: line.verbStop, type: "keyword" },
  ];
  line.slots.forEach((slot, index) => {
    const of = row?.slots[Math.min(index, row.slots.length - 1)]?.of;
    const isNumber = of === "date" || of === "count" || of === "value";
    const type = isNumber ? "number" : slot.quoted ? "string" : "variable";
    const modifiers = index === 0 && DEFINING.has(line.verb) ? DEFINITION : 0;
    tokens.push({ start: slot.start, stop: slot.stop, type, modifiers });
  });
  for (const item of line.items) {
    const type = item.value.kind === "flag" ? "enumMember" : "property";
    if (item.value.kind === "unread") continue;
    if (!item.bare)
      tokens.push({ start: item.start, stop: item.start + wordLength(line.raw, item.start), type });
    if (item.value.kind !== "flag")
      tokens.push(...valueTokens(line.raw, item.valueStart, item.stop, item.value.kind));
  }
  if (line.comment !== null) {
    const start = line.raw.length - line.comment.length;
    tokens.push({ start, stop: line.raw.length, type: "comment" });
  }
  return tokens;
}

function stampTokens(line: ReadLine): Token[] {
  const stamp = line.raw.slice(0, line.verbStart);
  return [...stamp.matchAll(/\S+/gu)].map((match) => ({
    start: match.index,
    stop: match.index + match[0].length,
    type: "number" as const,
  }));
}

function wordLength(raw: string, start: number): number {
  return /^\S+/u.exec(raw.slice(start))?.[0].length ?? 0;
}

/** Numbers and their units apart; names as one token. */
function valueTokens(raw: string, start: number, stop: number, kind: string): Token[] {
  if (kind === "name") {
    return [{ start, stop, type: raw[start] === '"' ? "string" : "variable" }];
  }
  const tokens: Token[] = [];
  for (const match of raw.slice(start, stop).matchAll(/[+-]?[\d.:]+|[^\s\d,]+/gu)) {
    const at = start + match.index;
    const isNumber = /\d/u.test(match[0]);
    const type = isNumber ? "number" : match[0].toLowerCase() === "to" ? "keyword" : "type";
    tokens.push({ start: at, stop: at + match[0].length, type });
  }
  return tokens;
}
