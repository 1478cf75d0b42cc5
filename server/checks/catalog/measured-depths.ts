/** Checks of what was measured on a line, against the cable that is out and against what is computed. */

import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import { countWords, lengthWords, speedWords, wholeLength } from "../words.ts";

const since = "0.1.0";

/** Farther behind than there is cable. */
export const BLOWBACK_EXCEEDS_OUT = check<{ gear: Gear; behindM: number; outM: number }>({
  slug: "blowback-exceeds-out",
  severities: ["error"],
  summary: "A measured distance behind is longer than the cable out.",
  quietWhen: "no cable out is stated",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, behindM, outM }) =>
    `${lengthWords(gear, behindM)} behind, but only ${lengthWords(gear, outM)} of cable is out: it can't trail farther than that.`,
});

/** Deeper than there is cable. */
export const DEEPER_THAN_OUT = check<{
  gear: Gear;
  what: "probe" | "bottom";
  depthM: number;
  probeAboveBallM: number;
  outM: number;
  isBeyond: boolean;
}>({
  slug: "deeper-than-out",
  severities: ["warning", "error"],
  summary: "A measured depth exceeds the cable out.",
  quietWhen: "it is within a foot; for a touch without its own bottom, within 10 % and 6 ft of the sounder's",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, what, depthM, probeAboveBallM, outM, isBeyond }) => {
    const depth = lengthWords(gear, depthM);
    const above = probeAboveBallM > 0 ? `, ${lengthWords(gear, probeAboveBallM)} above the ball` : "";
    const where =
      what === "probe" ? `The probe shows ${depth}${above}` : `The ball touched bottom in ${depth}`;
    const end = isBeyond ? "one of the two is wrong." : "does the counter read short?";
    return `${where}, with ${lengthWords(gear, outM)} of cable out: ${end}`;
  },
});

/** Elsewhere than computed. */
export const DEPTH_DISAGREES = check<{
  gear: Gear;
  rig: string;
  what: "probe" | "touch";
  /** On no downrigger. */
  isLine: boolean;
  measuredM: number;
  expectedM: number;
  lowM: number;
  highM: number;
  outM: number;
  speedMS: number;
  instead: { counterM: number | undefined; speedMS: number | undefined; dragTimes: number | undefined };
}>({
  slug: "depth-disagrees",
  severities: ["warning"],
  summary:
    "A depth read at the probe, or where another line than a downrigger's touched bottom, is farther from the computed one than its range and the reading's error allow.",
  quietWhen:
    "it is within 3 ft, the ball is on the bottom, no speed was read, or the depth exceeds the cable out (then that is said); it speaks once for a rig and day",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ gear, rig, what, isLine, measuredM, expectedM, lowM, highM, outM, speedMS, instead }) => {
    const { value: low } = wholeLength(gear, lowM, Math.floor);
    const { value: high } = wholeLength(gear, highM, Math.ceil);
    const expected = `about ${lengthWords(gear, expectedM)} (${low} to ${high}) was expected with ${lengthWords(gear, outM)} out at ${speedWords(gear, speedMS)}`;
    const ways = [
      ...(instead.counterM === undefined ? [] : [`${lengthWords(gear, instead.counterM)} out`]),
      ...(instead.speedMS === undefined
        ? []
        : [`${speedWords(gear, instead.speedMS)} ${isLine ? "through the water" : "at the ball"}`]),
      ...(instead.dragTimes === undefined
        ? []
        : [
            `a ${isLine ? "line" : "cable"} that drags ${Number(instead.dragTimes.toFixed(1))} times as much as reckoned`,
          ]),
    ];
    const why =
      ways.length === 0
        ? "No single change explains it: look at the numbers of the line."
        : `What alone would explain it: ${ways.join(", or ")}.`;
    const shows = what === "probe" ? `The probe on ${rig} shows` : `${rig} touched bottom in`;
    return `${shows} ${lengthWords(gear, measuredM)}; ${expected}. ${why}`;
  },
});

/** A counter that is off. */
export const COUNTER_DRIFT = check<{
  gear: Gear;
  rig: string;
  counterM: number;
  cableM: number;
  sdM: number;
  bookM: number;
  isCalibrated: boolean;
  readings: number;
  fromM: number;
  toM: number;
}>({
  slug: "counter-drift",
  severities: ["warning"],
  summary: "The readings of a trip share one error of a rig's counter.",
  quietWhen:
    "the readings are of one length only, without a slow touch of the bottom, or the error is below 2 % or within what chance leaves",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ gear, rig, counterM, cableM, sdM, bookM, isCalibrated, readings, fromM, toM }) => {
    const { value: counter } = wholeLength(gear, counterM, Math.round);
    const { value: low } = wholeLength(gear, cableM - 2 * sdM, Math.floor);
    const { value: high } = wholeLength(gear, cableM + 2 * sdM, Math.ceil);
    const found = `${counter} on ${rig}'s counter is about ${lengthWords(gear, cableM)} (${low} to ${high})`;
    const from = wholeLength(gear, fromM, Math.round).value;
    const span = `${countWords(readings, "reading")} of this trip, ${from} to ${lengthWords(gear, toM)} out`;
    const book = isCalibrated ? `; its calibration says ${lengthWords(gear, bookM)}` : "";
    return `${found} by ${span}${book}.`;
  },
});
