/** A trip's lines in the order of time: events move, with their remarks and notes; nothing else changes place. */
import type { TextEdit } from "vscode-languageserver-types";
import type { Line } from "../../grammar/journal.ts";
import { parse } from "../../grammar/parse.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { timeDisorders } from "../model/time-order.ts";
import type { Snapshot } from "./snapshot.ts";
import { tripLines } from "./tidy-actions.ts";

/** An event with what belongs to it: remarks right above, a note's text, lines that can't be told a time. */
interface Entry {
  readonly event: number;
  readonly lines: number[];
}

/** True when the trip has lines out of order that sorting would move. */
export function isUnsorted({ trip }: TripAnalysis): boolean {
  return timeDisorders(trip).some(({ slip }) => slip === "before" || slip === "ahead");
}

/**
 * Edits that put a trip's lines in the order of time. None where they are in order, and none where a line would mean
 * something else in its new place, as an indented one below a note.
 */
export function sortEdits(snapshot: Snapshot, day: TripAnalysis): TextEdit[] {
  const { lines } = snapshot.parse.journal;
  const span = tripLines(snapshot, day.trip.openerIndex);
  if (span === undefined) return [];
  const order = new Map(day.timeline.ordered.map(({ lineIndex }, at) => [lineIndex, at]));
  const places = placesOf(lines, span, order);
  const entries = places.filter((place): place is Entry => typeof place !== "number");
  const sorted = [...entries].sort((a, b) => (order.get(a.event) ?? 0) - (order.get(b.event) ?? 0));
  let next = 0;
  const moved = places.flatMap((place) =>
    typeof place === "number" ? [place] : (sorted[next++]?.lines ?? []),
  );
  const first = span[1] - moved.length + 1;
  if (!meansTheSame(lines, span, first, moved)) return [];
  return moved.flatMap((from, at) => {
    const [raw, newText] = [lines[first + at]?.raw ?? "", lines[from]?.raw ?? ""];
    const line = first + at;
    if (raw === newText) return [];
    return [{ range: { start: { line, character: 0 }, end: { line, character: raw.length } }, newText }];
  });
}

/** What stands below a trip's properties, in order: entries, and lines that keep their place. */
function placesOf(
  lines: readonly Line[],
  [opener, last]: readonly [number, number],
  events: ReadonlyMap<number, number>,
): (Entry | number)[] {
  const places: (Entry | number)[] = [];
  let above: number[] = [];
  const settle = (): void => {
    places.push(...above);
    above = [];
  };
  for (let at = bodyStart(lines, opener, last); at <= last; at++) {
    const line = lines[at];
    const entry = places.findLast((place): place is Entry => typeof place !== "number");
    const isBelow = above.length === 0 && typeof places.at(-1) !== "number" && entry !== undefined;
    if (line?.kind === "comment") above.push(at);
    else if (line?.kind === "fact" && events.has(at)) {
      const note = line.verb === "note" ? noteEnd(lines, at, last) : at;
      places.push({ event: at, lines: [...above, ...range(at, note)] });
      above = [];
      at = note;
    } else if (line?.kind !== "blank" && isBelow) entry.lines.push(at);
    else {
      settle();
      places.push(at);
    }
  }
  settle();
  return places;
}

/** The first line below the opener and its properties. */
function bodyStart(lines: readonly Line[], opener: number, last: number): number {
  let start = opener + 1;
  for (let at = start; at <= last && lines[at]?.kind !== "fact"; at++)
    if (lines[at]?.kind === "property") start = at + 1;
  return start;
}

/** The last line of a note's text. */
function noteEnd(lines: readonly Line[], note: number, last: number): number {
  let end = note;
  for (let at = note + 1; at <= last && lines[at]?.kind !== "fact"; at++)
    if (lines[at]?.kind === "note-text") end = at;
  return end;
}

function range(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/** Every line reads in its new place as it did in its old one. */
function meansTheSame(
  lines: readonly Line[],
  [opener]: readonly [number, number],
  first: number,
  moved: readonly number[],
): boolean {
  const order = [...range(opener, first - 1), ...moved];
  const after = parse(order.map((from) => lines[from]?.raw ?? "").join("\n")).journal.lines;
  return order.every((from, at) => {
    const [one, other] = [lines[from], after[at]];
    return one !== undefined && one.kind === other?.kind && one.raw === other.raw;
  });
}
