/** Where the lines of a text lie, and which lines two versions of a text have in common. */

/** A text with the start of each of its lines. A text always has at least one line. */
export interface TextLines {
  readonly text: string;
  readonly starts: Uint32Array;
}

/** A newer version of a text, and how many lines it shares with the older at its start and at its end, none twice. */
export interface NextLines extends TextLines {
  readonly head: number;
  readonly tail: number;
}

const LF = 10;
const CR = 13;

/** Splits at LF, CRLF and CR, as the LSP does. */
export function textLines(text: string): TextLines {
  const starts = [0];
  addStarts(starts, text, 0, text.length + 1);
  return { text, starts: Uint32Array.from(starts) };
}

/**
 * The lines of a text's newer version. Only what changed is looked at letter by letter; the rest is compared in large
 * pieces, and keeps its place or moves as a whole.
 */
export function nextLines(old: TextLines, text: string): NextLines {
  const count = old.starts.length;
  if (text === old.text) return { text, starts: old.starts, head: count, tail: 0 };
  const shift = text.length - old.text.length;
  const head = sharedHead(old, text);
  const changedFrom = old.starts[head] ?? 0;
  let tail = Math.min(count - head, sharedTail(old, text));
  while (tail > 0 && (old.starts[count - tail] ?? 0) + shift < changedFrom) tail--;
  const changedTo = tail === 0 ? text.length + 1 : (old.starts[count - tail] ?? 0) + shift;
  const changed: number[] = changedFrom < changedTo ? [changedFrom] : [];
  addStarts(changed, text, changedFrom, changedTo);
  const starts = new Uint32Array(head + changed.length + tail);
  starts.set(old.starts.subarray(0, head));
  starts.set(changed, head);
  const kept = starts.subarray(head + changed.length);
  kept.set(old.starts.subarray(count - tail));
  if (shift !== 0) for (let i = 0; i < kept.length; i++) kept[i] = (kept[i] ?? 0) + shift;
  return { text, starts, head, tail };
}

/** A line's content, without its end. */
export function lineText(lines: TextLines, index: number): string {
  return lines.text.slice(lines.starts[index], lineStop(lines, index));
}

/** Where a line's content stops, before its end. */
export function lineStop(lines: TextLines, index: number): number {
  const next = lines.starts[index + 1];
  return next === undefined ? lines.text.length : next - lineEnd(lines, index).length;
}

/** A line's end; empty for the last. */
export function lineEnd({ text, starts }: TextLines, index: number): "\n" | "\r\n" | "\r" | "" {
  const next = starts[index + 1];
  if (next === undefined) return "";
  if (text.charCodeAt(next - 1) === CR) return "\r";
  return text.charCodeAt(next - 2) === CR && next - 2 >= (starts[index] ?? 0) ? "\r\n" : "\n";
}

/**
 * Adds the starts behind each line end of a stretch, as far as they are before its stop. The ends are searched for by
 * the engine: a loop over letters is slow in a program that just started.
 */
function addStarts(starts: number[], text: string, from: number, stop: number): void {
  const stretch = text.slice(from, stop - 1);
  let lf = stretch.indexOf("\n");
  let cr = stretch.indexOf("\r");
  while (lf >= 0 || cr >= 0) {
    const first = cr < 0 || (lf >= 0 && lf < cr) ? lf : cr;
    const isPair = first === cr && text.charCodeAt(from + first + 1) === LF;
    const next = first + (isPair ? 2 : 1);
    if (from + next < stop) starts.push(from + next);
    if (lf >= 0 && lf < next) lf = stretch.indexOf("\n", next);
    if (cr >= 0 && cr < next) cr = stretch.indexOf("\r", next);
  }
}

/** Lines that both have at their start. The last line of the older one, which has no end, is none of them. */
function sharedHead({ text: old, starts }: TextLines, text: string): number {
  const same = commonStart(old, text);
  let head = countUpTo(starts, same) - 1;
  // A lone CR whose LF came only now: the line ends otherwise.
  if (head > 0 && starts[head] === same && old.charCodeAt(same - 1) === CR && text.charCodeAt(same) === LF)
    head--;
  return Math.max(0, head);
}

/** Lines that both have at their end. */
function sharedTail({ text: old, starts }: TextLines, text: string): number {
  const startsOf = old.length - commonEnd(old, text);
  let first = countUpTo(starts, startsOf - 1);
  const start = starts[first];
  if (start !== undefined && !isLineStart(text, start + text.length - old.length)) first++;
  return starts.length - first;
}

function isLineStart(text: string, at: number): boolean {
  if (at === 0) return true;
  const before = text.charCodeAt(at - 1);
  return before === LF || (before === CR && text.charCodeAt(at) !== LF);
}

/** How many starts are at most a limit, by bisection. */
function countUpTo(starts: Uint32Array, limit: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The length of what two texts have in common at their start, by bisection on pieces. */
function commonStart(one: string, other: string): number {
  let low = 0;
  let high = Math.min(one.length, other.length);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (one.slice(low, middle) === other.slice(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The same at their end. */
function commonEnd(one: string, other: string): number {
  let low = 0;
  let high = Math.min(one.length, other.length);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    const isSame =
      one.slice(one.length - middle, one.length - low) ===
      other.slice(other.length - middle, other.length - low);
    if (isSame) low = middle;
    else high = middle - 1;
  }
  return low;
}
