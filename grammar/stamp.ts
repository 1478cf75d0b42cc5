/** Dates and clock times as they are typed. Midnight is never inferred: a time of the next day carries its date. */

const CLOCK = /^(~?)(\d{1,2}):(\d{2})(?::(\d{2}))?([+-]\d{2}:\d{2}|Z)?$/u;
/** How nearly every clock time is written; read without taking it apart. */
const PLAIN_CLOCK = /^(?:[01]\d|2[0-3]):[0-5]\d$/u;
/** Offsets reach from UTC-12:00 to UTC+14:00; either sign is read up to fourteen hours. */
const OFFSET = /^(?:Z|[+-](?:0\d|1[0-3]):[0-5]\d|[+-]14:00)$/u;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/u;
const MONTH_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** A clock time in canonical spelling. */
export interface Clock {
  /** `HH:MM` or `HH:MM:SS` */
  readonly clock: string;
  readonly offset: string | null;
  readonly approx: boolean;
}

/** Reads a clock time; undefined when it is none (25:00, 12:61) or its offset is none (+15:00). */
export function canonicalClock(text: string): Clock | undefined {
  if (PLAIN_CLOCK.test(text)) return { clock: text, offset: null, approx: false };
  const match = CLOCK.exec(text);
  if (match === null) return undefined;
  const [, approx, hours = "", minutes = "", seconds, offset] = match;
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds ?? 0) > 59) return undefined;
  if (offset !== undefined && !OFFSET.test(offset)) return undefined;
  const clock = `${hours.padStart(2, "0")}:${minutes}${seconds === undefined ? "" : `:${seconds}`}`;
  return { clock, offset: offset ?? null, approx: approx === "~" };
}

/** True for a date of the calendar. */
export function isCalendarDate(text: string): boolean {
  const match = DATE.exec(text);
  if (match === null) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const longest = MONTH_DAYS[month - 1];
  if (longest === undefined || day < 1 || day > longest) return false;
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return !(month === 2 && day === 29 && !isLeap);
}

/** Which of a stamp's two halves a word was meant as that is neither; undefined for any other word. */
export function misspeltStamp(word: string): "bad-date" | "bad-clock" | undefined {
  if (/^\d{3,}[-/.]\d/u.test(word)) return isCalendarDate(word) ? undefined : "bad-date";
  if (/^~?\d/u.test(word)) return canonicalClock(word) === undefined ? "bad-clock" : undefined;
  return undefined;
}
