/** Temperatures colder or warmer than the water gets, and the readings that are none: those a depth may lean on. */
import type { Gear } from "../model/gear-types.ts";
import { hasWord } from "../model/quantities.ts";
import { type Reading, temperatureReadings } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** What is odd about a temperature: the side, and the limit that it is beyond, °C. */
interface OddTemperature {
  readonly side: "cold" | "warm";
  readonly limitC: number;
  /** No water is like that, whatever the line says. */
  readonly isImpossible: boolean;
}

/** Says how a temperature is odd, if it is. Salt water stays liquid below the freezing point of fresh. */
export function oddTemperature(gear: Gear, tempC: number): OddTemperature | undefined {
  const limit = (row: (typeof THRESHOLDS)[keyof typeof THRESHOLDS]): number => thresholdOf(gear, row);
  const frozenC = limit(THRESHOLDS.coldestPossible);
  const hottestC = limit(THRESHOLDS.warmestPossible);
  if (tempC < frozenC) return { side: "cold", limitC: frozenC, isImpossible: true };
  if (tempC > hottestC) return { side: "warm", limitC: hottestC, isImpossible: true };
  const coldC = gear.water === "salt" ? frozenC : limit(THRESHOLDS.coldWater);
  const warmC = limit(THRESHOLDS.warmWater);
  if (tempC < coldC) return { side: "cold", limitC: coldC, isImpossible: false };
  return tempC > warmC ? { side: "warm", limitC: warmC, isImpossible: false } : undefined;
}

/** True for a temperature that may be used: not odd, or doubted only and the line says `sure`. */
export function isUsableTemperature(gear: Gear, tempC: number, { line }: TripEvent): boolean {
  const odd = oddTemperature(gear, tempC);
  return odd === undefined || (!odd.isImpossible && hasWord(line, "sure"));
}

/** The temperature readings of a trip that a depth or a summary may lean on. */
export function usableTemperatures(trip: Trip): readonly Reading[] {
  const known = usableOfTrip.get(trip);
  if (known !== undefined) return known;
  const usable = temperatureReadings(trip).filter(({ value, event }) =>
    isUsableTemperature(trip.gear, value, event),
  );
  usableOfTrip.set(trip, usable);
  return usable;
}

const usableOfTrip = new WeakMap<Trip, readonly Reading[]>();
