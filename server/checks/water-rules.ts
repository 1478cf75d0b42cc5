/** Rules of the water and the way over it, in the order they run. */
import type { Rule } from "./check.ts";
import { courseDisagrees } from "./course-disagrees.ts";
import { knotsForMph } from "./knots-for-mph.ts";
import { noProfile } from "./no-profile.ts";
import { positionImplausible } from "./position-implausible.ts";
import { probeFrozen } from "./probe-frozen.ts";
import { profileUpsideDown } from "./profile-upside-down.ts";
import { readingsDisagree } from "./readings-disagree.ts";
import { speedsDisagree } from "./speeds-disagree.ts";
import { stuckWheel } from "./stuck-wheel.ts";
import { temperatureJumps } from "./temperature-jumps.ts";

const WATER_RULES: readonly Rule[] = [
  readingsDisagree,
  speedsDisagree,
  knotsForMph,
  stuckWheel,
  probeFrozen,
  temperatureJumps,
  profileUpsideDown,
  noProfile,
  positionImplausible,
  courseDisagrees,
];

/** Runs every rule of the water. One function, so that it can be loaded late. */
export function waterRules(context: Parameters<Rule>[0]): void {
  for (const rule of WATER_RULES) rule(context);
}
