/** A line's true depth in the captain's plain words, with where each number came from. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { DepthPlace, LineDepth } from "../analysis/line-depth.ts";
import type { SpeedUsed } from "../analysis/speed-used.ts";
import { SHAKY_CONDITIONING } from "../analysis/stream-used.ts";
import { widenedByAgeM } from "../analysis/widened-by-age.ts";
import { ageWords, clockWords, lengthWords, speedWords } from "../model/figures.ts";
import type { Calibration, Gear } from "../model/gear-types.ts";
import { meantMs } from "../model/time-order.ts";
import { contradictionSentences } from "./contradiction-sentences.ts";
import { deeperWords } from "./deeper-words.ts";
import { longLineSentences, sliderSentences } from "./long-line-sentences.ts";
import { backWords, downWords, placeWords } from "./place-words.ts";
import { streamSentence } from "./stream-sentence.ts";

export { placeCell, placeWords } from "./place-words.ts";

/** The caution that goes with every depth. */
export const DEPTH_CAUTION = "Depths are estimates: not for navigation, not for clearing the bottom.";

/** The short form beside a line: `ball 67 ft, lure 68 ft`; empty where nothing is known. */
export function depthLabel(gear: Gear, depth: LineDepth): string {
  if (depth.ball === null) return longLineLabel(gear, depth);
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

function longLineLabel(gear: Gear, { weight, weightIs, lure }: LineDepth): string {
  if (lure === null) return "";
  const hung = weight === null ? "" : `${weightIs} ${lengthWords(gear, weight.depthM)}, `;
  return `${hung}lure ${lengthWords(gear, lure.depthM)}`;
}

/** Everything there is to say of one line's depth, one sentence or two an entry. */
export function depthSentences(day: TripAnalysis, depth: LineDepth): string[] {
  const { gear } = day.trip;
  const main = depth.ball ?? depth.lure;
  if (main === null)
    return [`No depth for ${depth.rig}: ${depth.why ?? "not known"}.`, ...contradictionSentences(day, depth)];
  return [
    ...(depth.ball === null
      ? longLineSentences(gear, depth)
      : [ballSentence(gear, depth), ...lureSentences(gear, depth), ...sliderSentences(gear, depth)]),
    ...(depth.surfaced
      ? ["The model puts part of it at or above the surface: look at the numbers on this line."]
      : []),
    ...(main.onBottom ? [] : doubtSentences(gear, depth)),
    ...(depth.speed === undefined
      ? []
      : [
          speedSentence(day, depth.speed, meantMs(day.trip, depth.event) ?? 0, main),
          ...streamSentence(gear, depth.speed),
          ...contradictionSentences(day, depth),
        ]),
    // What the bottom stopped stays there: neither range nor what-ifs would be of what hangs in the water.
    ...(main.onBottom
      ? []
      : [changeSentence(gear, main, depth.ball === null ? "line" : "cable"), trustSentence(depth)]),
  ];
}

function ballSentence(gear: Gear, depth: LineDepth): string {
  const { ball } = depth;
  if (ball === null) return "";
  const whose =
    depth.cableRig === undefined || depth.cableRig.name === depth.rig
      ? "Ball"
      : `${depth.cableRig.name}'s ball`;
  const out =
    depth.cableRig?.name === depth.rig && depth.setting.outM !== undefined
      ? ` ${lengthWords(gear, depth.setting.outM)} out.`
      : "";
  return `${whose} ${downWords(gear, ball)}${backWords(gear, ball)}.${out}${shortCounterWords(depth)}`;
}

/** Why a range may reach deeper than there is cable by the counter. */
function shortCounterWords({ ball, calibration, cableRig, rig, setting: { outM } }: LineDepth): string {
  if (ball === null || ball.onBottom || outM === undefined || cableRig?.name !== rig) return "";
  if (calibration !== undefined || ball.highM <= outM) return "";
  return " The range reaches past that, for the counter may read short.";
}

function lureSentences(gear: Gear, depth: LineDepth): string[] {
  if (depth.lure === null)
    return depth.whyNoLure === null ? [] : [`No depth for the lure: ${depth.whyNoLure}.`];
  const name = depth.setting.lure ?? "Lure";
  const { depthM, onBottom } = depth.lure;
  if (onBottom || depth.ball?.onBottom === true) return [`${name} ${downWords(gear, depth.lure)}.`];
  const below = depth.releaseDepthM === null ? 0 : depthM - depth.releaseDepthM;
  const size = lengthWords(gear, Math.abs(below));
  const runs = size.startsWith("0 ")
    ? "level with its release"
    : `${size} ${below > 0 ? "below" : "above"} its release`;
  return [`${name} about ${placeWords(gear, depth.lure)}: it runs ${runs}.`];
}

const SOURCE_WORDS = {
  probe: "probe",
  surface: "on top",
  gps: "over ground, the current being unknown",
} as const;

function speedSentence(day: TripAnalysis, speed: SpeedUsed, timeMs: number, main: DepthPlace): string {
  const { gear } = day.trip;
  const { onTop } = speed;
  const one = (used: SpeedUsed): string => {
    const atProbe =
      used.byCurrent === undefined
        ? `at ${used.rig ?? "the"}'s probe`
        : `at ${lengthWords(gear, used.byCurrent.depthM)}`;
    const where = used.source === "probe" ? atProbe : SOURCE_WORDS[used.source];
    return `${speedWords(gear, used.value)} ${where}`;
  };
  const when = readWords(day, speed, timeMs);
  const topWhen = onTop && readWords(day, onTop, timeMs);
  const stale = Math.max(speed.ageMs, onTop?.ageMs ?? 0) > day.ages.staleAfterMs;
  const said =
    onTop === undefined
      ? `Speed used: ${one(speed)}, ${when}.`
      : topWhen === when
        ? `Speeds used: ${one(onTop)} and ${one(speed)}, ${when}.`
        : `Speeds used: ${one(onTop)}, ${topWhen}, and ${one(speed)}, ${when}.`;
  if (!stale) return said;
  return `${said} That is stale${main.onBottom ? "" : ageMattersWords(main, speed)}.`;
}

/** The least that shows where ranges are whole feet, m. */
const SHOWN_M = 0.3;

/** The depth of a short or slow line hardly hangs on the speed, however old. */
function ageMattersWords(main: DepthPlace, speed: SpeedUsed): string {
  const isWider = widenedByAgeM(main, speed) >= SHOWN_M;
  return isWider ? ", so the range is wider" : ", which hardly matters to this depth";
}

/** When a speed was read: `read 05:45, 33 min old`. */
function readWords(day: TripAnalysis, speed: SpeedUsed, timeMs: number): string {
  if (speed.byCurrent !== undefined) {
    const courses = speed.byCurrent.timesMs.map((ms) => clockWords(ms, day.trip.zone));
    return `by the current that the courses of ${courses.join(", ")} tell`;
  }
  const clocks = speed.used.map((reading) => clockWords(reading.timeMs, day.trip.zone));
  return {
    read: `read ${clocks[0]}`,
    between: `between the readings of ${clocks.join(" and ")}`,
    held: `read ${clocks[0]}, ${ageWords(timeMs - (speed.used[0]?.timeMs ?? timeMs))} old`,
    ahead: `first read ${clocks[0]}, ${ageWords((speed.used[0]?.timeMs ?? timeMs) - timeMs)} later`,
  }[speed.how];
}

/** What a current that changes with depth makes doubtful. */
function doubtSentences(gear: Gear, depth: LineDepth): string[] {
  const { conditioning, otherBallDepthsM } = depth;
  if (otherBallDepthsM.length > 0) {
    const others = otherBallDepthsM.map((depthM) => lengthWords(gear, depthM)).join(" or ");
    const what = depth.ball === null ? (depth.weightIs ?? "lure") : "ball";
    return [`In this current the ${what} could as well hang at ${others}; the deepest is given.`];
  }
  if (conditioning === null || conditioning < SHAKY_CONDITIONING) return [];
  return [
    `This current makes the depth shaky: any error shows ${Math.round(conditioning)} times over in it.`,
  ];
}

const TEN_FEET_M = 3.048;
const FASTER_MS = 0.2 * 0.44704;

/** Two what-ifs from the slopes at this setting. */
function changeSentence(gear: Gear, place: DepthPlace, out: "cable" | "line"): string {
  const more = deeperWords(gear, place.depthPerOut * TEN_FEET_M);
  const lifted = deeperWords(gear, place.depthPerSpeed * FASTER_MS);
  return `${lengthWords(gear, TEN_FEET_M)} more ${out}: ${more}. ${speedWords(gear, FASTER_MS)} faster: ${lifted}.`;
}

function trustSentence(depth: LineDepth): string {
  const rig = depth.cableRig?.name ?? depth.rig;
  const { calibration, sharedFrom } = depth;
  if (calibration === undefined && depth.ball === null) {
    const carried = sharedFrom.length === 0 ? "" : `; ${carriedWords(sharedFrom)} is carried to it`;
    return `${rig}'s depth was never measured, so the range is wide${carried}.`;
  }
  if (calibration === undefined) return neverCheckedSentence(rig, sharedFrom);
  const since = calibration.origin.from;
  return `${rig} calibrated${since === null ? "" : ` ${since}`}${calibration.readings === undefined ? "" : ` from ${calibration.readings} readings`}.`;
}

/** What other rigs' readings say of the speed sensor, the water and strumming holds for every line of the boat. */
function neverCheckedSentence(rig: string, sharedFrom: readonly Calibration[]): string {
  if (sharedFrom.length === 0) return `${rig} was never checked against a probe, so the range is wide.`;
  return `${rig} was never checked against a probe, so the range is wide; ${carriedWords(sharedFrom)} makes it a little narrower.`;
}

function carriedWords(sharedFrom: readonly Calibration[]): string {
  const lines = sharedFrom.map(({ of, origin }) => (origin.from === null ? of : `${of} of ${origin.from}`));
  return `what the calibration of ${lines.join(" and ")} says of every line on this boat`;
}
