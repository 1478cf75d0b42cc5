/** Checks of the day's clock. */
import { check } from "../check.ts";
import { countWords } from "../words.ts";

const since = "0.1.0";
const andSo = (more: number): string =>
  more === 0 ? "" : `, and so ${more === 1 ? "does" : "do"} the ${countWords(more, "line")} after it`;

const andAfter = (more: number): string =>
  more === 0 ? " is" : ` and the ${countWords(more, "line")} after it are`;

/** A time out of order. */
export const TIME_BACKWARDS = check<{
  clock: string;
  against: string;
  slip: "next-day" | "before" | "ahead";
  more: number;
}>({
  slug: "time-backwards",
  severities: ["warning"],
  summary: "A time comes before the line above it.",
  quietWhen:
    "the line has no clock, an approximate time is within 15 minutes of its place, or the hour is one that daylight saving repeats or skips",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ clock, against, slip, more }) =>
    slip === "ahead"
      ? `${clock} comes after ${against}, the line below${andSo(more)}.`
      : `${clock} comes before ${against}, the line above${andSo(more)}${slip === "next-day" ? "; a time past midnight carries its date" : ""}.`,
});

/** An afternoon time written like a morning's. */
export const AFTERNOON_SLIP = check<{
  clock: string;
  meant: string;
  against: string;
  more: number;
  /** The line is half a day ahead of those around it, not behind. */
  isAhead: boolean;
}>({
  slug: "afternoon-slip",
  severities: ["warning"],
  summary: "A time is half a day off: twelve hours later, or earlier, it fits between its neighbors.",
  quietWhen: "twelve hours later or earlier it doesn't fit between the lines above and below",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ clock, meant, against, more, isAhead }) =>
    isAhead
      ? `${clock}${andAfter(more)} half a day after ${against}, the line above, and below the morning goes on; ${meant} would fit.`
      : `${clock} comes before ${against}, the line above${andSo(more)}; ${meant} would fit.`,
});

/** Fishing before the boat left or after it was back. */
export const TIME_OUTSIDE_TRIP = check<{
  verb: string;
  clock: string;
  edge: "depart" | "return";
  edgeClock: string;
}>({
  slug: "time-outside-trip",
  severities: ["error"],
  summary: "A line about fishing is before the departure or after the return.",
  quietWhen:
    "it is no line of a rod (box, dock, weigh-in, serviced, note, weather), or an approximate time within 15 minutes",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ verb, clock, edge, edgeClock }) =>
    edge === "depart"
      ? `A ${verb} at ${clock}, but the boat left at ${edgeClock}.`
      : `A ${verb} at ${clock}, but the boat was back at ${edgeClock}.`,
});

/** A time in the hour that comes twice. */
export const CLOCK_REPEATED = check<{ clock: string; offsets: readonly string[] }>({
  slug: "clock-repeated",
  severities: ["error"],
  summary: "A time is in the hour that the end of daylight saving repeats.",
  quietWhen: "the time has its offset",
  isDoubt: false,
  isFixable: true,
  since,
  message: ({ clock, offsets }) =>
    `${clock} came twice that night, when the clocks went back: ${offsets.map((offset) => clock + offset).join(" or ")}?`,
});

/** A time in the hour that never was. */
export const CLOCK_MISSING = check<{ clock: string; later: string }>({
  slug: "clock-missing",
  severities: ["error"],
  summary: "A time is in the hour that the start of daylight saving skips.",
  quietWhen: "the time has its offset",
  isDoubt: false,
  isFixable: true,
  since,
  message: ({ clock, later }) =>
    `There was no ${clock} that night: the clocks went ahead, and it was ${later} by then.`,
});

/** A day that has not come yet. */
export const FUTURE_DATE = check<{ date: string; today: string; meant: string | undefined }>({
  slug: "future-date",
  severities: ["information"],
  summary: "Something is logged on a day that is still to come.",
  quietWhen: "it is tomorrow's date, nothing of that trip has a clock time yet, or today's date isn't known",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ date, today, meant }) =>
    `${date} is still to come: today is ${today}.${meant === undefined ? "" : ` Was it ${meant}?`}`,
});

/** One boat on two trips at once. */
export const OVERLAPPING_TRIPS = check<{
  from: string;
  to: string;
  otherFrom: string;
  otherTo: string;
}>({
  slug: "overlapping-trips",
  severities: ["warning"],
  summary: "Two trips of one boat in a file share hours.",
  quietWhen: "the boats differ, or a trip has no times",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ from, to, otherFrom, otherTo }) =>
    `The boat is on this trip from ${from} to ${to}, and on another one from ${otherFrom} to ${otherTo}.`,
});
