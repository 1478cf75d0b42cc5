/** The word that is being typed at a cursor, and what stands before it. */

/** A word begun at `start`; the cursor stands behind `word`, and `stop` is where the whole word ends. */
export interface TypedWord {
  readonly before: string;
  readonly word: string;
  readonly start: number;
  readonly stop: number;
  /** Another word follows without a blank. */
  readonly isGlued: boolean;
}

const COMPLETE_TEXT = /"(?:[^"]|"")*"(?=[\s,]|$)/uy;
const WORD = /\S+/uy;
const BLANKS = /\s*/uy;

/** The word at a column; an empty one between words, undefined inside a comment. */
export function typedWord(raw: string, column: number): TypedWord | undefined {
  const typed = raw.slice(0, column);
  let start = 0;
  for (;;) {
    start = stopOf(BLANKS, typed, start);
    if (start >= typed.length) return betweenWords(typed, raw);
    if (typed[start] === "#") return undefined;
    const stop = pieceStop(typed, start);
    if (stop >= typed.length) break;
    start = stop;
  }
  const word = typed.slice(start);
  const stop = isOpenText(word) ? closedTextStop(raw, start, typed.length) : stopOf(WORD, raw, start);
  return { before: typed.slice(0, start), word, start, stop: Math.max(stop, typed.length), isGlued: false };
}

function betweenWords(typed: string, raw: string): TypedWord {
  const at = typed.length;
  return { before: typed, word: "", start: at, stop: at, isGlued: /\S/u.test(raw.charAt(at)) };
}

/** The letters behind a number that runs into them: `90f` is the word `f` behind `90`. */
export function unitOf({ before, word, start, stop, isGlued }: TypedWord): TypedWord | undefined {
  const digits = /^[+-]?\d[\d.]*(?=\p{L}[^\d:]*$)/u.exec(word)?.[0];
  if (digits === undefined) return undefined;
  const unit = word.slice(digits.length);
  return { before: before + digits, word: unit, start: start + digits.length, stop, isGlued };
}

/** Where a piece ends; an open text reaches to the end. */
function pieceStop(typed: string, start: number): number {
  if (typed[start] !== '"') return stopOf(WORD, typed, start);
  const stop = stopOf(COMPLETE_TEXT, typed, start);
  return stop === start ? typed.length : stop;
}

function isOpenText(word: string): boolean {
  return word.startsWith('"');
}

/** A text is replaced whole when it is closed on the line; one still open ends at the cursor. */
function closedTextStop(raw: string, start: number, cursor: number): number {
  const stop = stopOf(COMPLETE_TEXT, raw, start);
  return stop === start ? cursor : stop;
}

/** Where a sticky pattern ends when matched at `start`; `start` itself when it does not match. */
function stopOf(pattern: RegExp, text: string, start: number): number {
  pattern.lastIndex = start;
  return pattern.test(text) ? pattern.lastIndex : start;
}
