/** Depths a line may well be wanted at: a little up or down, where the sounder marks fish, in water the target likes. */
import { findUnit, fromSi, toSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Band, Gear } from "../model/gear-types.ts";
import { rangeOf, slotName } from "../model/quantities.ts";
import { findSpecies } from "../model/species.ts";
import { meantMs } from "../model/time-order.ts";
import { propertiesOf, type Trip } from "../model/trip.ts";
import type { LineDepth } from "./line-depth.ts";
import { type Profile, profilesOf } from "./water-used.ts";

/** A depth in whole units of the boat, m, and what speaks for it. */
export interface TargetDepth {
  readonly depthM: number;
  readonly because: "shallower" | "deeper" | "marks" | Band;
}

/** The targets for a line whose depth is computed, above the bottom where that is known, none twice: those with a reason first. */
export function targetDepths(trip: Trip, line: LineDepth): TargetDepth[] {
  const now = line.lure ?? line.ball;
  if (now === null) return [];
  const timeMs = meantMs(trip, line.event) ?? Number.POSITIVE_INFINITY;
  const found = [...marks(trip, timeMs), ...bands(trip, timeMs), ...steps(trip.gear, now.depthM)];
  const deepestM = line.bottom?.waterM ?? Number.POSITIVE_INFINITY;
  const taken = new Set<number>();
  return found.filter(({ depthM }) => {
    const key = Math.round(depthM * 100);
    if (depthM <= 0 || depthM >= deepestM || taken.has(key)) return false;
    taken.add(key);
    return true;
  });
}

/** The next five feet (two meters) up and down; a depth that reads as one of them already is passed over. */
function steps(gear: Gear, depthM: number): TargetDepth[] {
  const step = lengthUnit(gear) === "m" ? 2 : 5;
  const now = inUnits(gear, depthM);
  return [
    { depthM: inMeters(gear, (Math.ceil(now / step) - 1) * step), because: "shallower" },
    { depthM: inMeters(gear, (Math.floor(now / step) + 1) * step), because: "deeper" },
  ];
}

/** The middle of the latest marks, counted from the water line as the bottom is. */
function marks(trip: Trip, timeMs: number): TargetDepth[] {
  const { gear, events } = trip;
  const latest = events
    .filter((event) => event.line.verb === "sonar" && (meantMs(trip, event) ?? timeMs + 1) <= timeMs)
    .flatMap(({ line }) => rangeOf(line, "marks", "length", gear.defaults) ?? [])
    .at(-1);
  if (latest === undefined) return [];
  const middleM = (latest.low + latest.high) / 2 + gear.sounderBelowM;
  return [{ depthM: inMeters(gear, inUnits(gear, middleM)), because: "marks" }];
}

/** The middle of the water that a species the trip is after likes best, by the latest profile. */
function bands(trip: Trip, timeMs: number): TargetDepth[] {
  const { gear } = trip;
  const profile = profilesOf(trip).findLast((one) => one.timeMs <= timeMs);
  if (profile === undefined) return [];
  return propertiesOf(trip, "target").flatMap((property) => {
    const wanted = speciesName(gear, slotName(property) ?? "");
    const band = [...gear.bands.values()].find(({ species }) => speciesName(gear, species) === wanted);
    const middleM = band === undefined ? undefined : middleOf(profile, band);
    if (band === undefined || middleM === undefined) return [];
    return [{ depthM: inMeters(gear, inUnits(gear, middleM)), because: band }];
  });
}

function speciesName({ nicknames }: Gear, written: string): string {
  const meant = nicknames.get(written) ?? written;
  return findSpecies(meant)?.name ?? meant;
}

/** Only where it gets colder all the way down, so that there is one such stretch of water. */
function middleOf({ points }: Profile, { tempC }: Band): number | undefined {
  const falls = points.every(({ tempC: here }, i) => i === 0 || here < (points[i - 1]?.tempC ?? here));
  const first = points.at(0);
  const last = points.at(-1);
  if (!falls || first === undefined || last === undefined || points.length < 2) return undefined;
  if (tempC.low > first.tempC || tempC.high < last.tempC) return undefined;
  return (depthOf(points, tempC.high) + depthOf(points, tempC.low)) / 2;
}

/** Straight between the points; the ends hold beyond them. */
function depthOf(points: Profile["points"], tempC: number): number {
  const below = points.findIndex((point) => point.tempC <= tempC);
  const lower = points[below] ?? points.at(-1);
  const upper = points[below - 1];
  if (lower === undefined || upper === undefined || below < 0) return lower?.depthM ?? 0;
  const share = (upper.tempC - tempC) / (upper.tempC - lower.tempC);
  return upper.depthM + share * (lower.depthM - upper.depthM);
}

function inUnits(gear: Gear, m: number): number {
  const unit = findUnit(lengthUnit(gear));
  return Math.round(unit === undefined ? m : fromSi(m, unit));
}

function inMeters(gear: Gear, value: number): number {
  const unit = findUnit(lengthUnit(gear));
  return unit === undefined ? value : toSi(value, unit);
}
