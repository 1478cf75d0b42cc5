/** What an edit changed in a trip: lines are told apart by identity, since a text read again keeps those it left alone. */
import type { Line } from "../../grammar/journal.ts";
import type { Sight } from "./sight.ts";
import type { Trip } from "./trip.ts";

/** A line before an edit and after it; a blank one stands for none where a line was added or taken away. */
interface LineChange {
  readonly before: Line;
  readonly after: Line;
}

/** Nothing can be seen of it. It ends as the lines around it do, to change nothing of that. */
const noLine = (end: Line["end"]): Line => ({ kind: "blank", raw: "", end });

/** The change from one version of a trip to another that has the very same opener, gear and zone. */
export class TripChange {
  readonly #before: Trip;
  readonly #after: Trip;
  /** How many lines are the same at the start, and behind those at the end. */
  readonly #head: number;
  readonly #tail: number;
  readonly #lines: readonly LineChange[];
  readonly #seen = new Map<Sight, boolean>();

  private constructor(before: Trip, after: Trip) {
    this.#before = before;
    this.#after = after;
    this.#head = sameAtStart(before.lines, after.lines);
    this.#tail = sameAtEnd(before.lines, after.lines, this.#head);
    const [gone, come] = [before, after].map(({ lines }) =>
      lines.slice(this.#head, lines.length - this.#tail),
    ) as [Line[], Line[]];
    const none = noLine(before.opener.end);
    this.#lines =
      gone.length === come.length
        ? gone.map((line, n) => ({ before: line, after: come[n] ?? none }))
        : [
            ...gone.map((line) => ({ before: line, after: none })),
            ...come.map((line) => ({ before: none, after: line })),
          ];
  }

  /** Undefined where more than lines changed, or in a way that could concern anything. */
  static between(before: Trip, after: Trip): TripChange | undefined {
    if (before.uri !== after.uri || before.opener !== after.opener) return undefined;
    if (before.gear !== after.gear || before.zone !== after.zone) return undefined;
    const change = new TripChange(before, after);
    const isPlain = change.isNone || !(before.holdsGear || after.holdsGear || change.#changesEnds());
    return isPlain ? change : undefined;
  }

  /** The very same lines, wherever in the file they stand. */
  get isNone(): boolean {
    return this.#lines.length === 0;
  }

  /** The very same lines at the very same place. */
  get isStill(): boolean {
    return this.#before.openerIndex === this.#after.openerIndex && this.#sameCount;
  }

  /** True where a line looks different to somebody with that sight. */
  isSeenWith(sight: Sight): boolean {
    const known = this.#seen.get(sight);
    if (known !== undefined) return known;
    const isSeen = this.#lines.some(({ before, after }) => sight(before) !== sight(after));
    this.#seen.set(sight, isSeen);
    return isSeen;
  }

  /** True for a line of the file, as it was before, that was changed or taken away. */
  isChanged(lineIndex: number): boolean {
    const at = lineIndex - this.#before.openerIndex;
    return at >= this.#head && at < this.#before.lines.length - this.#tail;
  }

  /** True for a line of the file, as it is now, that was changed or added. */
  isNew(lineIndex: number): boolean {
    const at = lineIndex - this.#after.openerIndex;
    return at >= this.#head && at < this.#after.lines.length - this.#tail;
  }

  /** The number that a line has now; lines above the trip stay. Undefined for one that is gone, or can't be followed. */
  lineNow(lineIndex: number): number | undefined {
    const at = lineIndex - this.#before.openerIndex;
    if (at < 0) return lineIndex;
    const { lines } = this.#before;
    const moved = this.#after.openerIndex + at;
    if (at < this.#head || this.#sameCount) return moved;
    return at < lines.length - this.#tail ? undefined : moved + this.#after.lines.length - lines.length;
  }

  get #sameCount(): boolean {
    return this.#before.lines.length === this.#after.lines.length;
  }

  /** A line that is added by a fix ends as its neighbor does. */
  #changesEnds(): boolean {
    return this.#lines.some(({ before, after }) => before.end !== after.end);
  }
}

function sameAtStart(before: readonly Line[], after: readonly Line[]): number {
  const most = Math.min(before.length, after.length);
  let count = 0;
  while (count < most && before[count] === after[count]) count++;
  return count;
}

function sameAtEnd(before: readonly Line[], after: readonly Line[], head: number): number {
  const most = Math.min(before.length, after.length) - head;
  let count = 0;
  while (count < most && before.at(-1 - count) === after.at(-1 - count)) count++;
  return count;
}
