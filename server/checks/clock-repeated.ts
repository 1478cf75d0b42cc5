import { offsetText } from "../model/local-time.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { CLOCK_REPEATED } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, FixEdit, Rule } from "./check.ts";
import { stampPlace } from "./places.ts";
import { writeOffset } from "./stamp-edits.ts";

/** Flags times in the hour that comes twice. The offset settles it, for one line or for all of that hour. */
export const clockRepeated: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const lines = trip.events.filter((event) => event.instant?.problem === "repeated");
    const inTurn = offsetsInTurn(lines);
    for (const event of lines) {
      const offsets = offsetsOf(event);
      const fixes = offsets.map((offset): Fix => {
        const edits = [writeOffset(analysis.uri, event, offset)];
        const isPreferred = inTurn?.get(event) === offset;
        return { title: DAY_FIXES.write(`${event.line.clock}${offset}`), edits, isPreferred };
      });
      fixes.push(...fixesForAll(analysis.uri, lines, inTurn));
      const data = { clock: event.line.clock ?? "", offsets };
      report(CLOCK_REPEATED, stampPlace(event.lineIndex, event.line), data, { fixes });
    }
  }
};

/** The offsets a time could mean, the earlier instant first. */
function offsetsOf({ instant }: TripEvent): string[] {
  return [...(instant?.offsets ?? [])].sort((a, b) => b - a).map(offsetText);
}

/** Where the times fall from one line to the next the hour began again: the offset of each line then follows. */
function offsetsInTurn(lines: Trip["events"]): ReadonlyMap<TripEvent, string> | undefined {
  const turn = lines.findIndex((event, i) => i > 0 && timeOf(event) < timeOf(lines[i - 1]));
  if (turn < 0) return undefined;
  return new Map(lines.map((event, i) => [event, offsetsOf(event)[i < turn ? 0 : 1] ?? ""]));
}

function timeOf(event: TripEvent | undefined): number {
  return event?.instant?.utcMs ?? 0;
}

function fixesForAll(
  uri: string,
  lines: Trip["events"],
  inTurn: ReadonlyMap<TripEvent, string> | undefined,
): Fix[] {
  const [first] = lines;
  if (first === undefined || lines.length < 2) return [];
  const fix = (title: string, offsetFor: (event: TripEvent) => string): Fix => {
    const edits = lines.map((event): FixEdit => writeOffset(uri, event, offsetFor(event)));
    return { title, edits, isPreferred: false };
  };
  if (inTurn !== undefined)
    return [fix(DAY_FIXES.writeInTurn(lines.length), (event) => inTurn.get(event) ?? "")];
  return offsetsOf(first).map((offset) => fix(DAY_FIXES.writeOnAll(offset, lines.length), () => offset));
}
