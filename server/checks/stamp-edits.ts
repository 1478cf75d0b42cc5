/** Edits of the date and clock time at the start of a line. */
import type { FactLine } from "../../grammar/journal.ts";
import type { TripEvent } from "../model/trip.ts";
import type { FixEdit } from "./check.ts";
import { insert, replace } from "./edits.ts";
import { stampPlace } from "./places.ts";

/** A line's date and clock time as they are written canonically; an approximate one if asked for. */
export function stampText({ date, clock, offset, approx }: FactLine, isApprox = approx): string {
  const time = clock === null ? "" : `${isApprox ? "~" : ""}${clock}${offset ?? ""}`;
  return [date, time].filter((part) => part !== null && part !== "").join(" ");
}

/** Writes a date before a line's clock time. */
export function writeDate(uri: string, { lineIndex, line }: TripEvent, date: string): FixEdit {
  return insert(uri, lineIndex, stampPlace(lineIndex, line).start, `${date} `);
}

/** Writes an offset behind a line's clock time. */
export function writeOffset(uri: string, { lineIndex, line }: TripEvent, offset: string): FixEdit {
  return insert(uri, lineIndex, stampPlace(lineIndex, line).stop, offset);
}

/** Writes another clock time, with the date before it and the offset behind it as they are. */
export function writeClock(uri: string, { lineIndex, line }: TripEvent, clock: string): FixEdit {
  const text = stampText({ ...line, clock });
  return replace(uri, stampPlace(lineIndex, line), text);
}

/** A clock time that many hours later: `13:10`. Within the day. */
export function laterClock(clock: string, hours: number): string {
  return `${String((Number(clock.slice(0, 2)) + hours) % 24).padStart(2, "0")}${clock.slice(2)}`;
}

/** A day of the calendar that many days later. */
export function laterDay(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
