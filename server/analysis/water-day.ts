/** Everything a day's readings say of the water, each part computed when first asked for. */
import { calendarDay, localDate } from "../model/local-time.ts";
import type { ReadingAges } from "../model/readings.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { type CurrentLook, currentLooks } from "./current-looks.ts";
import { layersOf, type WaterLayers } from "./layers-at.ts";
import { type Light, lightOf, type SunDay, sunDay } from "./light.ts";
import type { LineDepth } from "./line-depth.ts";
import {
  type BandNow,
  bandNow,
  fishingDepth,
  type LureWater,
  lureWater,
  type TargetBand,
  targetBands,
} from "./lure-water.ts";
import { once } from "./once.ts";
import { type Fix, fixesOf, placeNear } from "./positions.ts";
import { dayProfiles, type ProfileStore } from "./profile-store.ts";
import { type TempPoint, temperaturePoints } from "./temperature-points.ts";
import { type Track, trackOf } from "./track.ts";
import type { WaterProfile } from "./water-profile.ts";

/** A day's water. */
export interface WaterDay {
  readonly bands: readonly TargetBand[];
  readonly looks: readonly CurrentLook[];
  readonly points: readonly TempPoint[];
  readonly fixes: readonly Fix[];
  readonly track: Track;
  /** The profile at a minute; undefined when no reading may be used. */
  profileAt(timeMs: number): WaterProfile | undefined;
  layersOf(profile: WaterProfile): WaterLayers | undefined;
  bandsAt(profile: WaterProfile): BandNow[];
  /** The water at a line's lure; undefined where the depth or the minute isn't known, or nothing was read. */
  lureOf(depth: LineDepth): LureWater | undefined;
  /** The sun on the trip's own day; undefined where no position is known, or the zone isn't. */
  readonly sun: SunDay | undefined;
  /** Sun and moon at an event's place and minute; undefined as above, without a clock, and in a doubtful hour. */
  lightAt(event: TripEvent): Light | undefined;
}

/** Reads a day's water. */
export function readWater(trip: Trip, speedAges: ReadingAges): WaterDay {
  const salt = trip.gear.water;
  const bands = once(() => targetBands(trip));
  const looks = once(() => currentLooks(trip));
  const fixes = once(() => fixesOf(trip));
  const track = once(() => trackOf(trip));
  const store = (): ProfileStore => dayProfiles(trip, speedAges);
  const sun = once(() => {
    const place =
      trip.zone === undefined ? undefined : placeNear(trip, track().fixes, Number.NEGATIVE_INFINITY);
    return place === undefined ? undefined : sunDay(place, calendarDay(trip.date, trip.zone));
  });
  return {
    get bands() {
      return bands();
    },
    get looks() {
      return looks();
    },
    get points() {
      return temperaturePoints(trip);
    },
    get fixes() {
      return fixes();
    },
    get track() {
      return track();
    },
    profileAt: (timeMs) => store().at(timeMs),
    layersOf: (now) => layersOf(now, salt),
    bandsAt: (now) => bands().map((band) => bandNow(store(), now, band, undefined)),
    lureOf: (depth) => {
      const timeMs = depth.event.instant?.utcMs;
      const place = timeMs === undefined ? undefined : fishingDepth(depth);
      const now = place === undefined || timeMs === undefined ? undefined : store().at(timeMs);
      return place === undefined || now === undefined ? undefined : lureWater(store(), now, bands(), place);
    },
    get sun() {
      return sun();
    },
    lightAt: ({ instant }) => {
      if (instant === null || instant.problem !== null || trip.zone === undefined) return undefined;
      const place = placeNear(trip, track().fixes, instant.utcMs);
      if (place === undefined) return undefined;
      const day = calendarDay(localDate(instant.utcMs, trip.zone), trip.zone);
      return lightOf(place, instant.utcMs, day);
    },
  };
}
