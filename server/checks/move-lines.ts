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
  const byTime = [...moved].sort((a, b) => timeOf(a) - timeOf(b));
  const movedLines = new Set(byTime.flatMap((event) => blockOf(lines, event)));
  const order = lines.map((_, index) => index).filter((index) => !movedLines.has(index));
  const goneBehind = new Map<number, number>();
  for (const event of byTime) {
    const block = blockOf(lines, event);
    order.splice(placeFor(event, inPlace, order, lines, goneBehind), 0, ...block);
  }
  return order.flatMap((from, to) => {
    const [old, fresh] = [lines[to]?.raw ?? "", lines[from]?.raw ?? ""];
    return old === fresh ? [] : [replace(analysis.uri, { lineIndex: to, start: 0, stop: old.length }, fresh)];
  });
}

/** Where a line goes: behind the last one that is not later and what was put there before, else before the first. */
function placeFor(
  event: TripEvent,
  inPlace: readonly TripEvent[],
  order: readonly number[],
  lines: readonly Line[],
  goneBehind: Map<number, number>,
): number {
  const behind = inPlace.findLast((other) => timeOf(other) <= timeOf(event));
  const anchor = behind ?? inPlace[0];
  if (anchor === undefined) return order.length;
  const at = order.indexOf(anchor.lineIndex);
  if (behind === undefined) return at;
  const already = goneBehind.get(anchor.lineIndex) ?? 0;
  goneBehind.set(anchor.lineIndex, already + blockOf(lines, event).length);
  return at + blockOf(lines, anchor).length + already;
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
