/**
 * Sun and moon at a place. Times are those of the calendar day on board: a library that counts days by Greenwich
 * may answer with the evening before, so the neighboring days are asked as well and the day's own event is taken.
 */
import { getMoonIllumination, getMoonPosition, getTimes, type SunTimeName } from "suncalc";
import type { Place } from "../model/gear-types.ts";
import type { TimeSpan } from "../model/local-time.ts";

/** The sun's day at a place; undefined for what doesn't happen there that day, as in the far north. */
export interface SunDay {
  readonly nauticalDawnMs: number | undefined;
  readonly civilDawnMs: number | undefined;
  readonly sunriseMs: number | undefined;
  readonly sunsetMs: number | undefined;
  readonly civilDuskMs: number | undefined;
  readonly nauticalDuskMs: number | undefined;
}

const DAY_MS = 86_400_000;

/** The sun on a day from midnight to midnight. */
export function sunDay({ latitudeDeg, longitudeDeg }: Place, { fromMs, toMs }: TimeSpan): SunDay {
  const noonMs = (fromMs + toMs) / 2;
  const asked = [noonMs - DAY_MS, noonMs, noonMs + DAY_MS].map((ms) =>
    getTimes(new Date(ms), latitudeDeg, longitudeDeg),
  );
  const of = (name: SunTimeName): number | undefined =>
    asked.map((times) => times[name]?.getTime() ?? Number.NaN).find((ms) => ms >= fromMs && ms < toMs);
  return {
    nauticalDawnMs: of("nauticalDawn"),
    civilDawnMs: of("dawn"),
    sunriseMs: of("sunrise"),
    sunsetMs: of("sunset"),
    civilDuskMs: of("dusk"),
    nauticalDuskMs: of("nauticalDusk"),
  };
}

/** The moon at a minute. */
export interface Moon {
  /** 0 new, 0.25 first quarter, 0.5 full, 0.75 last quarter. */
  readonly phase: number;
  /** Share of its disk that is lit, 0 to 1. */
  readonly litShare: number;
  /** Degrees above the horizon. */
  readonly altitudeDeg: number;
}

/** The moon over a place. */
export function moonAt({ latitudeDeg, longitudeDeg }: Place, timeMs: number): Moon {
  const at = new Date(timeMs);
  const { phase, fraction } = getMoonIllumination(at);
  return { phase, litShare: fraction, altitudeDeg: getMoonPosition(at, latitudeDeg, longitudeDeg).altitude };
}

/** Minutes after sunrise; below zero before it. Undefined on a day without one. */
export function minutesFromSunrise(day: SunDay, timeMs: number): number | undefined {
  return day.sunriseMs === undefined ? undefined : Math.round((timeMs - day.sunriseMs) / 60_000);
}

/** How light it is. */
export type Sky = "daylight" | "civil twilight" | "nautical twilight" | "night";

/** The sky at a minute of a day; undefined where the sun doesn't rise or set that day, as in the far north. */
export function skyAt(day: SunDay, timeMs: number): Sky | undefined {
  const { sunriseMs, sunsetMs } = day;
  if (sunriseMs === undefined || sunsetMs === undefined) return undefined;
  // A twilight without a beginning or an end that day lasts the night through.
  const isWithin = (fromMs = Number.NEGATIVE_INFINITY, toMs = Number.POSITIVE_INFINITY): boolean =>
    timeMs >= fromMs && timeMs < toMs;
  if (isWithin(sunriseMs, sunsetMs)) return "daylight";
  if (isWithin(day.civilDawnMs, day.civilDuskMs)) return "civil twilight";
  return isWithin(day.nauticalDawnMs, day.nauticalDuskMs) ? "nautical twilight" : "night";
}

/** Sun and moon at one place and minute. */
export interface Light {
  /** Minutes after the sunrise of that calendar day; below zero before it. */
  readonly sunriseMinutes: number | undefined;
  readonly sky: Sky | undefined;
  readonly moon: Moon;
}

/** The light at a place and a minute of a day. */
export function lightOf(place: Place, timeMs: number, day: TimeSpan): Light {
  const sun = sunDay(place, day);
  return {
    sunriseMinutes: minutesFromSunrise(sun, timeMs),
    sky: skyAt(sun, timeMs),
    moon: moonAt(place, timeMs),
  };
}
