/**
 * Local clock times → instants. Daylight saving makes one hour of the year missing and one repeated; both are
 * reported, never guessed. Zone rules come from the platform's own time-zone data.
 */
import { tzOffset } from "@date-fns/tz";

/** An instant, and what was odd about the clock time that named it. */
export interface Instant {
  readonly utcMs: number;
  readonly problem: "repeated" | "missing" | null;
  /** The offsets the clock time could mean, in minutes east of UTC; two for the repeated hour. */
  readonly offsets: readonly number[];
}

/** Minutes east of UTC in a zone at an instant; undefined where it can't tell. */
type OffsetSource = (zone: string, at: Date) => number | undefined;

let quickSource: OffsetSource = () => undefined;

/**
 * Brings a source of offsets that is asked before the platform's formatter, which takes long to start. It has to give
 * the same answers.
 */
export function askFirst(source: OffsetSource): void {
  quickSource = source;
}

function offsetIn(zone: string, at: Date): number {
  return quickSource(zone, at) ?? tzOffset(zone, at);
}

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** By zone, then by day. */
const offsetsByDay = new Map<string, Map<number, readonly number[]>>();
const MOST_ZONES = 100;
const MOST_DAYS = 5000;

const knownZones = new Map<string, boolean>();

/** True when the platform knows the zone. */
export function isKnownZone(zone: string): boolean {
  const known = knownZones.get(zone) ?? Number.isFinite(offsetIn(zone, new Date(0)));
  if (knownZones.size >= MOST_ZONES) knownZones.clear();
  knownZones.set(zone, known);
  return known;
}

/** The distinct UTC offsets (minutes) in force on a calendar day and its neighbors; memoized by day. */
function offsetsNear(zone: string, dayMs: number): readonly number[] {
  const ofZone = offsetsByDay.get(zone) ?? new Map<number, readonly number[]>();
  const known = ofZone.get(dayMs);
  if (known !== undefined) return known;
  const found = [offsetIn(zone, new Date(dayMs - DAY_MS)), offsetIn(zone, new Date(dayMs + 2 * DAY_MS))];
  const offsets = [...new Set(found.filter((offset) => Number.isFinite(offset)))];
  if (offsets.length === 0) offsets.push(0);
  if (ofZone.size >= MOST_DAYS) ofZone.clear();
  if (offsetsByDay.size >= MOST_ZONES) offsetsByDay.clear();
  offsetsByDay.set(zone, ofZone.set(dayMs, offsets));
  return offsets;
}

/** Milliseconds of a calendar date and clock time read as if they were UTC. */
function civilMs(date: string, clock: string): number {
  return Date.parse(`${date}T${clock.length === 5 ? `${clock}:00` : clock}Z`);
}

/**
 * Resolves a date (`YYYY-MM-DD`) and clock time (`HH:MM[:SS]`) in a zone, or with its own offset (`-04:00`, `Z`).
 * In the repeated hour the first of the two is taken, in the missing hour the time as if the clock had not jumped.
 */
export function resolveInstant(
  date: string,
  clock: string,
  offset: string | null,
  zone: string | undefined,
): Instant {
  const civil = civilMs(date, clock);
  if (offset !== null) {
    const minutes = offsetMinutes(offset);
    return { utcMs: civil - minutes * MINUTE_MS, problem: null, offsets: [minutes] };
  }
  if (zone === undefined) return { utcMs: civil, problem: null, offsets: [0] };
  const near = offsetsNear(zone, Date.parse(`${date}T00:00Z`));
  const [only = 0] = near;
  if (near.length === 1) return { utcMs: civil - only * MINUTE_MS, problem: null, offsets: near };
  const fitting = near.filter((minutes) => offsetIn(zone, new Date(civil - minutes * MINUTE_MS)) === minutes);
  const [first = only] = fitting;
  const problem = fitting.length === 0 ? "missing" : fitting.length > 1 ? "repeated" : null;
  return { utcMs: civil - first * MINUTE_MS, problem, offsets: fitting.length === 0 ? near : fitting };
}

function offsetMinutes(offset: string): number {
  if (offset === "Z") return 0;
  const [hours = 0, minutes = 0] = offset.slice(1).split(":").map(Number);
  return (offset.startsWith("-") ? -1 : 1) * (hours * 60 + minutes);
}

/** Minutes east of UTC as it is written after a clock time: `-04:00`. */
export function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? "-" : "+"}${twoDigits(Math.floor(size / 60))}:${twoDigits(Math.floor(size % 60))}`;
}

function twoDigits(value: number): string {
  return value < 10 ? `0${value}` : `${value}`;
}

/** The clock on board at an instant, `HH:MM`. */
export function localClock(utcMs: number, zone: string | undefined): string {
  const atMs = utcMs + offsetAt(utcMs, zone) * MINUTE_MS;
  if (!Number.isFinite(atMs)) throw new RangeError("no instant");
  const minute = Math.floor(atMs / MINUTE_MS) % MINUTES_A_DAY;
  const ofDay = minute < 0 ? minute + MINUTES_A_DAY : minute;
  return `${twoDigits(Math.floor(ofDay / 60))}:${twoDigits(ofDay % 60)}`;
}

const MINUTES_A_DAY = 1440;

/** The date on board at an instant, `YYYY-MM-DD`. */
export function localDate(utcMs: number, zone: string | undefined): string {
  return new Date(utcMs + offsetAt(utcMs, zone) * MINUTE_MS).toISOString().slice(0, 10);
}

/** From one instant to another. */
export interface TimeSpan {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A calendar day (`YYYY-MM-DD`) of a zone from midnight to midnight, 23 to 25 hours; without a zone Greenwich's. */
export function calendarDay(date: string, zone: string | undefined): TimeSpan {
  const next = new Date(civilMs(date, "00:00") + DAY_MS).toISOString().slice(0, 10);
  return {
    fromMs: resolveInstant(date, "00:00", null, zone).utcMs,
    toMs: resolveInstant(next, "00:00", null, zone).utcMs,
  };
}

function offsetAt(utcMs: number, zone: string | undefined): number {
  if (zone === undefined) return 0;
  const near = offsetsNear(zone, Math.floor(utcMs / DAY_MS) * DAY_MS);
  const [only = 0] = near;
  return near.length === 1 ? only : offsetIn(zone, new Date(utcMs));
}
