/** Rules of the water and the way over it, in the order they run. */
import type { Rule } from "./check.ts";
import { courseDisagrees } from "./course-disagrees.ts";
import { knotsForMph } from "./knots-for-mph.ts";
import { noProfile } from "./no-profile.ts";
import { positionImplausible } from "./position-implausible.ts";
import { probeFrozen } from "./probe-frozen.ts";
import { profileUpsideDown } from "./profile-upside-down.ts";
import { readingsContradict } from "./readings-contradict.ts";
import { speedsDisagree } from "./speeds-disagree.ts";
import { stuckWheel } from "./stuck-wheel.ts";
import { temperatureJumps } from "./temperature-jumps.ts";

type Context = Parameters<Rule>[0];

const OF_INSTRUMENTS: readonly Rule[] = [
  readingsContradict,
  speedsDisagree,
  knotsForMph,
  stuckWheel,
  temperatureJumps,
  profileUpsideDown,
];

/** What speeds and temperatures say of each other. Functions, so that they can be loaded late. */
export function instrumentRules(context: Context): void {
  for (const rule of OF_INSTRUMENTS) rule(context);
}

/** What positions and courses say of each other. */
export function wayRules(context: Context): void {
  positionImplausible(context);
  courseDisagrees(context);
}

/** What a probe's depths say of the cable out. */
export function frozenProbeRule(context: Context): void {
  probeFrozen(context);
}

/** What was measured of the water that lures run in. */
export function profileRule(context: Context): void {
  noProfile(context);
}
