/**
 * Profiles of a day by minute, kept from one version of a file to the next while the readings they are made of stay the
 * very same lines: typing elsewhere computes none anew.
 */
import type { FactLine } from "../../grammar/journal.ts";
import { isInReach, type ReadingAges } from "../model/readings.ts";
import { isSameList } from "../model/same-list.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { Trip } from "../model/trip.ts";
import { type BandDepths, bandDepths } from "./temperature-at.ts";
import { type TempPoint, temperaturePoints } from "./temperature-points.ts";
import { profileAt, type WaterProfile } from "./water-profile.ts";

/** Profiles of one day's readings. */
export interface ProfileStore {
  /** The profile at a minute; undefined when no reading may be used. */
  at(timeMs: number): WaterProfile | undefined;
  /** True where a lowered profile is in reach of a minute; without one there are no layers to tell. */
  hasCast(timeMs: number): boolean;
  /** As it stood before the newest reading that is in it. */
  before(now: WaterProfile): WaterProfile | undefined;
  /** Where a band lies in it. */
  bandIn(profile: WaterProfile, lowC: number, highC: number): readonly BandDepths[];
}

interface Kept {
  readonly madeOf: readonly unknown[];
  readonly store: ProfileStore;
}

/** By the trip's opener, which lasts through edits of the trip and no longer than the trip. */
const latest = new WeakMap<FactLine, Kept>();

const ofTrips = new WeakMap<Trip, { readonly ages: ReadingAges; readonly store: ProfileStore }>();

/** The profiles of a trip, by the ages of its speeds and how long its book lets a temperature serve. */
export function dayProfiles(trip: Trip, speedAges: ReadingAges): ProfileStore {
  const known = ofTrips.get(trip);
  if (known?.ages === speedAges) return known.store;
  const ages = { ...speedAges, unusedAfterMs: thresholdOf(trip.gear, THRESHOLDS.profileUnused) * 1000 };
  const store = profileStore(trip, temperaturePoints(trip), ages);
  ofTrips.set(trip, { ages: speedAges, store });
  return store;
}

/** The store of a day's readings; the one of the version before where nothing it is made of changed. */
export function profileStore(trip: Trip, points: readonly TempPoint[], ages: ReadingAges): ProfileStore {
  const madeOf = [
    trip.gear,
    ...Object.values(ages),
    ...points.flatMap(({ event, timeMs }) => [event.line, timeMs]),
  ];
  const known = latest.get(trip.opener);
  if (known !== undefined && isSameList(known.madeOf, madeOf)) return known.store;
  const store = newStore(points, ages, trip.gear.water);
  latest.set(trip.opener, { madeOf, store });
  return store;
}

function newStore(
  points: readonly TempPoint[],
  ages: ReadingAges,
  salt: Trip["gear"]["water"],
): ProfileStore {
  const profiles = new Map<number, WaterProfile | undefined>();
  const older = new Map<number, WaterProfile | undefined>();
  const bands = new WeakMap<WaterProfile, Map<string, readonly BandDepths[]>>();
  const before = (newestMs: number): WaterProfile | undefined => {
    const left = points.filter((point) => point.timeMs < newestMs);
    const lastMs = left.at(-1)?.timeMs;
    return lastMs === undefined ? undefined : profileAt(left, lastMs, ages, salt);
  };
  const castsMs = points.flatMap(({ source, timeMs }) => (source === "profile" ? timeMs : []));
  return {
    hasCast: (timeMs) => castsMs.some((castMs) => isInReach(castMs, timeMs, ages)),
    at: (timeMs) => kept(profiles, timeMs, () => profileAt(points, timeMs, ages, salt)),
    before: ({ nodes }) => {
      const newestMs = Math.max(...nodes.flatMap((node) => node.points.map((point) => point.timeMs)));
      return kept(older, newestMs, () => before(newestMs));
    },
    bandIn: (profile, lowC, highC) => {
      const known = bands.get(profile) ?? new Map<string, readonly BandDepths[]>();
      bands.set(profile, known);
      return kept(known, `${lowC} ${highC}`, () => bandDepths(profile, lowC, highC));
    },
  };
}

function kept<K, V>(known: Map<K, V>, key: K, compute: () => V): V {
  if (known.has(key)) return known.get(key) as V;
  const value = compute();
  known.set(key, value);
  return value;
}
