/** Rules of what the day says, in the order they run. */
import { aboveSurface } from "./above-surface.ts";
import { afternoonSlip } from "./afternoon-slip.ts";
import { alreadySet } from "./already-set.ts";
import { ballUp } from "./ball-up.ts";
import { blowbackExceedsOut } from "./blowback-exceeds-out.ts";
import type { Rule } from "./check.ts";
import { clockMissing } from "./clock-missing.ts";
import { clockRepeated } from "./clock-repeated.ts";
import { conditionImplausible } from "./condition-implausible.ts";
import { counterDrift } from "./counter-drift.ts";
import { deeperThanBottom } from "./deeper-than-bottom.ts";
import { deeperThanOut } from "./deeper-than-out.ts";
import { depthDisagrees } from "./depth-disagrees.ts";
import { downLonger } from "./down-longer.ts";
import { engineHours } from "./engine-hours.ts";
import { fishImplausible } from "./fish-implausible.ts";
import { futureDate } from "./future-date.ts";
import { lengthImplausible } from "./length-implausible.ts";
import { lineTooLong } from "./line-too-long.ts";
import { linesMayCross } from "./lines-may-cross.ts";
import { neverPulled } from "./never-pulled.ts";
import { noDeeper } from "./no-deeper.ts";
import { noDepth } from "./no-depth.ts";
import { notInWater } from "./not-in-water.ts";
import { overlappingTrips } from "./overlapping-trips.ts";
import { probeElsewhere } from "./probe-elsewhere.ts";
import { readingMissing } from "./reading-missing.ts";
import { readingStale } from "./reading-stale.ts";
import { setbackExceedsOut } from "./setback-exceeds-out.ts";
import { speedImplausible } from "./speed-implausible.ts";
import { tempImplausible } from "./temp-implausible.ts";
import { timeBackwards } from "./time-backwards.ts";
import { timeOutsideTrip } from "./time-outside-trip.ts";
import { touchingBottom } from "./touching-bottom.ts";
import { unknownGuest } from "./unknown-guest.ts";
import { waterRules } from "./water-rules.ts";

/** Rules that look at one trip alone; what they find of a trip that did not change is not looked for again. */
export const TRIP_RULES: readonly Rule[] = [
  clockRepeated,
  clockMissing,
  afternoonSlip,
  timeOutsideTrip,
  notInWater,
  ballUp,
  downLonger,
  alreadySet,
  setbackExceedsOut,
  blowbackExceedsOut,
  deeperThanOut,
  lineTooLong,
  lengthImplausible,
  noDepth,
  noDeeper,
  linesMayCross,
  depthDisagrees,
  counterDrift,
  aboveSurface,
  touchingBottom,
  speedImplausible,
  tempImplausible,
  readingMissing,
  readingStale,
  waterRules,
  fishImplausible,
  conditionImplausible,
  deeperThanBottom,
  engineHours,
  probeElsewhere,
  unknownGuest,
];

/** Every rule of the day: those that look at all trips of a file, then those of one. */
export const DAY_RULES: readonly Rule[] = [
  futureDate,
  timeBackwards,
  overlappingTrips,
  neverPulled,
  ...TRIP_RULES,
];
