/** A line's true depth in the captain's plain words, with where each number came from. */
import { findUnit, fromSi } from "../../grammar/units.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { DepthPlace, LineDepth } from "../analysis/line-depth.ts";
import type { SpeedUsed } from "../analysis/speed-used.ts";
import { ageWords, clockWords, lengthUnit, lengthWords, speedWords } from "../model/figures.ts";
import type { Calibration, Gear } from "../model/gear-types.ts";

/** The caution that goes with every depth. */
export const DEPTH_CAUTION = "Depths are estimates: not for navigation, not for clearing the bottom.";

/** Whole units of the boat: `67 ft down (63 to 70)`; the band rounded outward. */
export function placeWords(gear: Gear, place: DepthPlace): string {
  return `${lengthWords(gear, place.depthM)} down (${bandWords(gear, place)})`;
}

/** The same under a heading that says what it is: `67 ft (63 to 70)`. */
export function placeCell(gear: Gear, place: DepthPlace): string {
  return `${lengthWords(gear, place.depthM)} (${bandWords(gear, place)})`;
}

function bandWords(gear: Gear, place: DepthPlace): string {
  const unit = findUnit(lengthUnit(gear));
  const of = (m: number): number => (unit === undefined ? m : fromSi(m, unit));
  return `${Math.max(0, Math.floor(of(place.lowM)))} to ${Math.ceil(of(place.highM))}`;
}

/** The short form beside a line: `ball 67 ft, lure 68 ft`; empty where nothing is known. */
export function depthLabel(gear: Gear, depth: LineDepth): string {
  if (depth.ball === null) return "";
  const ball = `ball ${lengthWords(gear, depth.ball.depthM)}`;
  const isOwnBall = depth.cableRig?.name === depth.rig;
  if (depth.lure === null)
    return isOwnBall
      ? ball
      : depth.releaseDepthM === null
        ? ""
        : `release ${lengthWords(gear, depth.releaseDepthM)}`;
  const lure = `lure ${lengthWords(gear, depth.lure.depthM)}`;
  return isOwnBall ? `${ball}, ${lure}` : lure;
}

/** Everything there is to say of one line's depth, one sentence or two an entry. */
export function depthSentences(day: TripAnalysis, depth: LineDepth): string[] {
  const { gear } = day.trip;
  if (depth.ball === null) return [`No depth for ${depth.rig}: ${depth.why ?? "not known"}.`];
  return [
    ballSentence(gear, depth),
    ...lureSentences(gear, depth),
    ...(depth.surfaced
      ? ["The model puts part of it at or above the surface: look at the numbers on this line."]
      : []),
    ...(depth.speed === undefined ? [] : [speedSentence(day, depth.speed, depth.event.instant?.utcMs ?? 0)]),
    changeSentence(gear, depth.ball),
    trustSentence(depth),
  ];
}

function ballSentence(gear: Gear, depth: LineDepth): string {
  const { ball } = depth;
  if (ball === null) return "";
  const whose =
    depth.cableRig === undefined || depth.cableRig.name === depth.rig
      ? "Ball"
      : `${depth.cableRig.name}'s ball`;
  const where = ball.onBottom ? "on the bottom, " : "";
  const out =
    depth.cableRig?.name === depth.rig && depth.setting.outM !== undefined
      ? ` ${lengthWords(gear, depth.setting.outM)} out.`
      : "";
  return `${whose} ${where}about ${placeWords(gear, ball)}, ${lengthWords(gear, ball.behindM)} back.${out}`;
}

function lureSentences(gear: Gear, depth: LineDepth): string[] {
  if (depth.lure === null)
    return depth.whyNoLure === null ? [] : [`No depth for the lure: ${depth.whyNoLure}.`];
  const { depthM } = depth.lure;
  const below = depth.releaseDepthM === null ? 0 : depthM - depth.releaseDepthM;
  const size = lengthWords(gear, Math.abs(below));
  const runs = size.startsWith("0 ")
    ? "level with its release"
    : `${size} ${below > 0 ? "below" : "above"} its release`;
  const name = depth.setting.lure ?? "Lure";
  return [`${name} about ${placeWords(gear, depth.lure)}: it runs ${runs}.`];
}

const SOURCE_WORDS = {
  probe: "probe",
  surface: "on top",
  gps: "over ground, the current being unknown",
} as const;

function speedSentence(day: TripAnalysis, speed: SpeedUsed, timeMs: number): string {
  const { gear, zone } = day.trip;
  const clocks = speed.used.map((reading) => clockWords(reading.timeMs, zone));
  const where = speed.source === "probe" ? `at ${speed.rig ?? "the"}'s probe` : SOURCE_WORDS[speed.source];
  const when = {
    read: `read ${clocks[0]}`,
    between: `between the readings of ${clocks.join(" and ")}`,
    held: `read ${clocks[0]}, ${ageWords(timeMs - (speed.used[0]?.timeMs ?? timeMs))} old`,
    ahead: `first read ${clocks[0]}, ${ageWords((speed.used[0]?.timeMs ?? timeMs) - timeMs)} later`,
  }[speed.how];
  const stale = speed.ageMs > day.ages.staleAfterMs ? " That is stale, so the range is wide." : "";
  return `Speed used: ${speedWords(gear, speed.value)} ${where}, ${when}.${stale}`;
}

const TEN_FEET_M = 3.048;
const FASTER_MS = 0.2 * 0.44704;

/** Two what-ifs from the slopes at this setting. */
function changeSentence(gear: Gear, ball: DepthPlace): string {
  const more = lengthWords(gear, Math.abs(ball.depthPerOut * TEN_FEET_M));
  const lift = lengthWords(gear, Math.abs(ball.depthPerSpeed * FASTER_MS));
  const lifted = lift.startsWith("0 ")
    ? "hardly any change"
    : `about ${lift} ${ball.depthPerSpeed < 0 ? "shallower" : "deeper"}`;
  return `${lengthWords(gear, TEN_FEET_M)} more cable: about ${more} ${ball.depthPerOut < 0 ? "shallower" : "deeper"}. ${speedWords(gear, FASTER_MS)} faster: ${lifted}.`;
}

function trustSentence(depth: LineDepth): string {
  const rig = depth.cableRig?.name ?? depth.rig;
  const { calibration, sharedFrom } = depth;
  if (calibration === undefined) return neverCheckedSentence(rig, sharedFrom);
  const since = calibration.origin.from;
  return `${rig} calibrated${since === null ? "" : ` ${since}`}${calibration.readings === undefined ? "" : ` from ${calibration.readings} readings`}.`;
}

/** What other rigs' readings say of the speed sensor, the water and strumming holds for every line of the boat. */
function neverCheckedSentence(rig: string, sharedFrom: readonly Calibration[]): string {
  if (sharedFrom.length === 0) return `${rig} was never checked against a probe, so the range is wide.`;
  const lines = sharedFrom.map(({ of, origin }) => (origin.from === null ? of : `${of} of ${origin.from}`));
  return `${rig} was never checked against a probe, so the range is wide; what the calibration of ${lines.join(" and ")} says of every line on this boat makes it a little narrower.`;
}
