/** Edits that put lines of a trip where their time belongs, or add a line. Comments and other lines stay. */
import type { Line } from "../../grammar/journal.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import type { FixEdit } from "./check.ts";
import { insert, replace } from "./edits.ts";

/** Moves events behind the last line of the trip that is not later, each with the text of its note. */
export function moveToTime(
  analysis: JournalAnalysis,
  trip: Trip,
  moved: readonly TripEvent[],
  misplaced: ReadonlySet<number>,
): FixEdit[] {
  const { lines } = analysis.parse.journal;
  const inPlace = trip.events.filter((event) => event.instant !== null && !misplaced.has(event.lineIndex));
  const order = linesInOrder(lines, inPlace, moved);
  return order.flatMap((from, to) => {
    const [old, fresh] = [lines[to]?.raw ?? "", lines[from]?.raw ?? ""];
    return old === fresh ? [] : [replace(analysis.uri, { lineIndex: to, start: 0, stop: old.length }, fresh)];
  });
}

/** The numbers of all lines as they are to stand. Each line is looked at a fixed number of times. */
function linesInOrder(
  lines: readonly Line[],
  inPlace: readonly TripEvent[],
  moved: readonly TripEvent[],
): number[] {
  const { first, behind } = placesOf(lines, inPlace, moved);
  const gone = new Set(moved.flatMap((event) => blockOf(lines, event)));
  const top = inPlace[0]?.lineIndex ?? lines.length;
  const order: number[] = [];
  for (let index = 0; index < lines.length; index++) {
    if (index === top) for (const line of first) order.push(line);
    if (!gone.has(index)) order.push(index);
    for (const line of behind.get(index) ?? []) order.push(line);
  }
  if (top === lines.length) for (const line of first) order.push(line);
  return order;
}

/**
 * Where moved lines go, in the order of time: behind the last one that is not later and its text, by that text's last
 * line; before the first line in place where none is.
 */
function placesOf(
  lines: readonly Line[],
  inPlace: readonly TripEvent[],
  moved: readonly TripEvent[],
): { first: number[]; behind: ReadonlyMap<number, number[]> } {
  const byTime = [...moved].sort((a, b) => timeOf(a) - timeOf(b));
  const anchors = byTime.map(() => -1);
  let anchor = inPlace.length - 1;
  for (let n = byTime.length - 1; n >= 0; n--) {
    const timeMs = timeOf(byTime[n] as TripEvent);
    while (anchor >= 0 && timeOf(inPlace[anchor] as TripEvent) > timeMs) anchor--;
    anchors[n] = anchor;
  }
  const first: number[] = [];
  const behind = new Map<number, number[]>();
  byTime.forEach((event, n) => {
    const above = inPlace[anchors[n] ?? -1];
    const place = above === undefined ? undefined : (blockOf(lines, above).at(-1) ?? above.lineIndex);
    const group = place === undefined ? first : (behind.get(place) ?? []);
    for (const line of blockOf(lines, event)) group.push(line);
    if (place !== undefined) behind.set(place, group);
  });
  return { first, behind };
}

/** A line's number, and those of the text that belongs to it. */
function blockOf(lines: readonly Line[], event: TripEvent): number[] {
  const block = [event.lineIndex];
  while (event.line.verb === "note" && lines[event.lineIndex + block.length]?.kind === "note-text") {
    block.push(event.lineIndex + block.length);
  }
  return block;
}

function timeOf(event: TripEvent): number {
  return event.instant?.utcMs ?? 0;
}

/** Adds a line above another one, with the line end the file uses there. */
export function insertLine(analysis: JournalAnalysis, above: number, text: string): FixEdit {
  const { lines } = analysis.parse.journal;
  const end = lines[above]?.end || lines[above - 1]?.end || "\n";
  return insert(analysis.uri, above, 0, `${text}${end}`);
}
