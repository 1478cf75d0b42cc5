/** Rules of what the day says, in the order they run. */
import { AMOUNTS, BOTTOMS, DEPTHS, READINGS, RIGS, SPEEDS, WAY } from "../analysis/sights.ts";
import { all, HEADS, linesOf, properties, UNREADABLE, words, wordsWritten } from "../model/sight.ts";
import { aboveSurface } from "./above-surface.ts";
import { afternoonSlip } from "./afternoon-slip.ts";
import { alreadySet } from "./already-set.ts";
import { ballUp } from "./ball-up.ts";
import { blowbackExceedsOut } from "./blowback-exceeds-out.ts";
import type { Rule, TripRule } from "./check.ts";
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
import { frozenProbeRule, instrumentRules, profileRule, wayRules } from "./water-rules.ts";

/**
 * Rules that look at one trip alone, each with what it sees of it: after an edit only those run that could see it. A
 * rule sees what the functions it calls read too, so one that asks for a depth has the sight `DEPTHS`.
 */
export const TRIP_RULES: readonly TripRule[] = [
  { rule: clockRepeated, sees: HEADS },
  { ofLine: clockMissing },
  { rule: afternoonSlip, sees: HEADS },
  { rule: timeOutsideTrip, sees: HEADS },
  { rule: neverPulled, sees: RIGS },
  { rule: notInWater, sees: all(RIGS, UNREADABLE) },
  { rule: ballUp, sees: all(RIGS, UNREADABLE) },
  { rule: downLonger, sees: RIGS },
  { rule: alreadySet, sees: all(RIGS, wordsWritten("set")) },
  { rule: setbackExceedsOut, sees: DEPTHS },
  { rule: blowbackExceedsOut, sees: all(AMOUNTS, words("behind")) },
  { rule: deeperThanOut, sees: all(AMOUNTS, BOTTOMS, linesOf("probe")) },
  { ofLine: lineTooLong },
  { ofLine: lengthImplausible },
  { rule: noDepth, sees: DEPTHS },
  { rule: noDeeper, sees: DEPTHS },
  { rule: linesMayCross, sees: DEPTHS },
  { rule: depthDisagrees, sees: DEPTHS },
  { rule: counterDrift, sees: DEPTHS },
  { rule: aboveSurface, sees: DEPTHS },
  { rule: touchingBottom, sees: DEPTHS },
  { rule: speedImplausible, sees: SPEEDS },
  { ofLine: tempImplausible },
  { rule: readingMissing, sees: SPEEDS },
  { rule: readingStale, sees: SPEEDS },
  { rule: instrumentRules, sees: READINGS },
  { rule: frozenProbeRule, sees: all(AMOUNTS, linesOf("probe")) },
  { rule: profileRule, sees: DEPTHS },
  { rule: wayRules, sees: WAY },
  { ofLine: fishImplausible },
  { ofLine: conditionImplausible },
  { rule: deeperThanBottom, sees: all(BOTTOMS, linesOf("probe", "profile")) },
  { rule: engineHours, sees: words("engine") },
  { rule: probeElsewhere, sees: RIGS },
  { rule: unknownGuest, sees: all(properties("guest", "captain", "mate"), words("by")) },
];

/** Rules of the day that look at all trips of a file. */
export const DAY_RULES: readonly Rule[] = [futureDate, timeBackwards, overlappingTrips];
