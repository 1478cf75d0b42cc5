/** Writes another name on a line, quoted where the line would read differently without, and reads the line again. */
import { isRead } from "../../../grammar/is-read.ts";
import type { Item, Line } from "../../../grammar/journal.ts";
import { quote } from "../../../grammar/print.ts";
import { type LineReading, readLine } from "../../../grammar/read-line.ts";
import { VOCABULARY } from "../../../grammar/vocabulary.ts";
import type { LineRange } from "../../model/named-places.ts";
import type { AskedLine } from "./lines-asked.ts";

/** A place and the text to put there. */
export interface Respelling {
  readonly range: LineRange;
  readonly text: string;
}

/**
 * The new spellings of all `ranges` of one line; undefined when no spelling leaves the rest of the line as it reads
 * now. Quotes that the old name didn't need are kept, those it needed go when the new one does without: so a name
 * given and taken back leaves the very text.
 */
export function respelled(
  asked: AskedLine | undefined,
  ranges: readonly LineRange[],
  name: string,
): Respelling[] | undefined {
  if (asked === undefined) return undefined;
  const { line, issue, block } = asked;
  const read = (raw: string): LineReading => readLine(raw, line.end, block, VOCABULARY);
  let current: Reading = { line, issue };
  const spellings: Respelling[] = [];
  // From the last to the first, so that the places before stay where they are.
  for (const range of [...ranges].sort((a, b) => b.start - a.start)) {
    const wanted = shapeOf(current, { start: range.start, name });
    const text = candidates(current, range, name, read).find(
      (spelling) => shapeOf(read(spliced(current.line.raw, range, spelling))) === wanted,
    );
    if (text === undefined) return undefined;
    current = read(spliced(current.line.raw, range, text));
    spellings.push({ range, text });
  }
  return spellings.reverse();
}

type Reading = Pick<LineReading, "line" | "issue">;

function spliced(raw: string, { start, stop }: LineRange, text: string): string {
  return raw.slice(0, start) + text + raw.slice(stop);
}

function candidates(
  current: Reading,
  range: LineRange,
  name: string,
  read: (raw: string) => Reading,
): string[] {
  const { raw } = current.line;
  const isQuoted = raw.startsWith('"', range.start);
  const old = nameAtStart(current.line, range.start);
  if (!isQuoted || old === undefined) return [name, quote(name)];
  const needed = shapeOf(read(spliced(raw, range, old))) !== shapeOf(current);
  return needed ? [name, quote(name)] : [quote(name)];
}

function nameAtStart(line: Line, start: number): string | undefined {
  if (!isRead(line)) return undefined;
  const slot = line.slots.find((one) => one.start === start);
  const value = line.items.find((one) => one.valueStart === start)?.value;
  return slot?.text ?? (value?.kind === "name" ? value.text : undefined);
}

/** A name to read at a column instead of the one that stands there. */
interface Renamed {
  readonly start: number;
  readonly name: string;
}

/** What a line says, without the columns it says it in. */
function shapeOf({ line, issue }: Reading, renamed?: Renamed): string {
  if (!isRead(line)) return `unread ${line.raw}`;
  return JSON.stringify([
    [line.kind, line.date, line.clock, line.offset, line.approx, line.verb, line.comment],
    line.slots.map(({ start, text }) => (start === renamed?.start ? renamed.name : text)),
    line.items.map((item) => itemShape(item, renamed)),
    issue === null ? null : [issue.code, "reason" in issue ? issue.reason : ""],
  ]);
}

function itemShape({ word, bare, value, valueStart }: Item, renamed?: Renamed): unknown {
  if (value.kind !== "name") return [word, bare, value];
  return [word, bare, valueStart === renamed?.start ? renamed.name : value.text];
}
