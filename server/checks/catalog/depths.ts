/** Checks of how lines are set: cable out, depths as computed, the bottom, each other. */

import type { Crossing, NearPart } from "../../analysis/crossings.ts";
import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import { ageWords, colorWords, lengthWords, speedWords, wholeLength } from "../words.ts";

const since = "0.1.0";

/** A line that is out, over a bottom that has come up since; named by the line that let it out. */
interface LineOverShoal {
  readonly rig: string;
  readonly what: "ball" | "lure";
  readonly depthM: number;
  readonly isStopped: boolean;
  readonly verb: string;
  readonly clock: string | null;
}

const LET_OUT: Readonly<Record<string, string>> = { set: "set", move: "moved", again: "back in" };

function overShoal(gear: Gear, { rig, what, depthM, isStopped, verb, clock }: LineOverShoal): string {
  const letOut = `${LET_OUT[verb] ?? "out"}${clock === null ? "" : ` at ${clock}`}`;
  return `${rig}'s ${what}, ${letOut}, is ${nearWords(gear, depthM, isStopped)}`;
}

const nearWords = (gear: Gear, depthM: number, isStopped: boolean): string =>
  isStopped ? "on the bottom" : `about ${lengthWords(gear, depthM)} down`;

/** The bottom as the sounder shows it, and the water over it where the sounder lies below the water line. */
interface BottomSaid {
  readonly shownM: number;
  readonly waterM: number;
}

function bottomWords(gear: Gear, { shownM, waterM }: BottomSaid): string {
  const [shown, water] = [lengthWords(gear, shownM), lengthWords(gear, waterM)];
  return shown === water ? shown : `${shown} (${water} of water)`;
}

/** A ball or lure near the bottom. */
export const TOUCHING_BOTTOM = check<
  | {
      kind: "line";
      gear: Gear;
      what: "ball" | "lure";
      depthM: number;
      isStopped: boolean;
      /** How much cable lies over how much water, where that is far too much of it. */
      tooMuch: { outM: number; waterM: number } | undefined;
      bottom: BottomSaid;
      bottomAgeMs: number;
    }
  | { kind: "shoal"; gear: Gear; bottom: BottomSaid; lines: readonly LineOverShoal[] }
>({
  slug: "touching-bottom",
  severities: ["warning"],
  summary:
    "The computed depth of a ball or lure comes within the margin of the bottom, as it goes out or as the bottom comes up.",
  quietWhen:
    "the line says on-bottom or the trip says method deep and the cable is no longer than 1.5 times the water and 30 ft, no bottom was read within the hour, the boat ran since, a lure may as well run clear, or a line that is out is moved or pulled within 5 minutes of the reading",
  isDoubt: true,
  isFixable: true,
  since,
  message: (data) => {
    const { gear } = data;
    const bottom = bottomWords(gear, data.bottom);
    if (data.kind === "shoal")
      return `The bottom has come up to ${bottom}: ${data.lines.map((line) => overShoal(gear, line)).join("; ")}.`;
    const { what, depthM, isStopped, tooMuch, bottomAgeMs } = data;
    if (tooMuch !== undefined)
      return `${lengthWords(gear, tooMuch.outM)} of cable over ${lengthWords(gear, tooMuch.waterM)} of water: the ball would lie far from where it is let down. Is one of the two wrong?`;
    const where = nearWords(gear, depthM, isStopped);
    const age = bottomAgeMs < 60_000 ? "just now" : `${ageWords(bottomAgeMs)} ago`;
    return `The ${what} is ${where}; bottom last read ${bottom}, ${age}.`;
  },
});

/** A lead longer than the cable. */
export const SETBACK_EXCEEDS_OUT = check<{
  gear: Gear;
  setbackM: number;
  outM: number;
  /** The one that isn't on the line and stays as it was. */
  carried: "setback" | "out" | undefined;
  /** Cable as typed in a unit that isn't the boat's, and in the boat's. */
  odd?: { readonly typed: string; readonly meant: string } | undefined;
}>({
  slug: "setback-exceeds-out",
  severities: ["warning", "information"],
  summary: "A lure's setback is longer than the cable out; the two numbers may be swapped.",
  quietWhen:
    "the trip says method shallow, the line says shallow, the rig was set like that before, or the water is too shallow for the swap",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ gear, setbackM, outM, carried, odd }) => {
    const [back, out] = [lengthWords(gear, setbackM), lengthWords(gear, outM)];
    if (odd !== undefined)
      return `The lure is ${back} back on ${odd.typed} of cable, which is ${out}: is ${odd.meant} meant?`;
    if (carried === undefined) return `The lure is ${back} back on ${out} of cable: are the two swapped?`;
    return carried === "setback"
      ? `The lure is still ${back} back, on ${out} of cable now: is that meant?`
      : `The lure is ${back} back now, on ${out} of cable as before: is that meant?`;
  },
});

/** More than the rig holds, or than anyone lets out where that isn't stated. */
export const LINE_TOO_LONG = check<{
  gear: Gear;
  rig: string;
  outM: number;
  holdsM: number | undefined;
  isLeadcore: boolean;
}>({
  slug: "line-too-long",
  severities: ["error", "warning"],
  summary: "More line is out than the rig holds and the gear book names no backing, or than is ever let out.",
  quietWhen:
    "the rig is stated to hold it; up to 600 ft also where its backing is named or what it holds isn't stated",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, rig, outM, holdsM, isLeadcore }) => {
    const words = (m: number): string => (isLeadcore ? colorWords(m) : lengthWords(gear, m));
    if (holdsM === undefined)
      return `${words(outM)} out is more than is let out in trolling: is there a digit too many?`;
    return `${words(outM)} out, but ${rig} holds ${words(holdsM)}; name its backing in the gear book if the rest is backing.`;
  },
});

/** The speed that a depth goes by, at the probe's depth where the one on top is another. */
export interface SpeedsSaid {
  readonly speedMS: number;
  readonly onTop: { readonly speedMS: number; readonly depthM: number } | undefined;
}

const speedsSaid = (gear: Gear, { speedMS, onTop }: SpeedsSaid): string =>
  onTop === undefined
    ? speedWords(gear, speedMS)
    : `${speedWords(gear, onTop.speedMS)} on top and ${speedWords(gear, speedMS)} at ${lengthWords(gear, onTop.depthM)}`;

/** No use letting out more. */
export const NO_DEEPER = check<{
  gear: Gear;
  what: "ball" | "diver" | "weight" | "lure";
  share: number;
  speeds: SpeedsSaid;
}>({
  slug: "no-deeper",
  severities: ["information"],
  summary: "At this speed more line out no longer goes deeper.",
  quietWhen:
    "the line is on the bottom, backing is out, it is a flat line without a weight, or it was said of that rig just before",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, what, share, speeds }) => {
    const change = share < 0 ? "brings it up" : "hardly takes it deeper";
    return `At ${speedsSaid(gear, speeds)} more line out ${change}: the ${what} gains ${(10 * share).toFixed(1)} for every 10 let out.`;
  },
});

/** At or above the surface. */
export const ABOVE_SURFACE = check<
  | { kind: "out"; gear: Gear; typed: string }
  | { kind: "above"; gear: Gear; rig: string; aboveM: number; outM: number }
  | { kind: "model"; gear: Gear; what: "ball" | "lure"; speeds: SpeedsSaid }
>({
  slug: "above-surface",
  severities: ["error", "warning"],
  summary: "A ball, clip or lure would be at or above the surface.",
  quietWhen: "how much is out isn't stated",
  isDoubt: true,
  isFixable: false,
  since,
  message: (data) => {
    if (data.kind === "out")
      return `With ${data.typed} out nothing is below the surface; write pull when it comes out.`;
    if (data.kind === "model")
      return `At ${speedsSaid(data.gear, data.speeds)} the ${data.what} would come up to the surface.`;
    const { gear, rig, aboveM, outM } = data;
    const where = aboveM > outM ? `${lengthWords(gear, aboveM - outM)} above the water` : "at the surface";
    return `${rig} is clipped ${lengthWords(gear, aboveM)} above the ball, with ${lengthWords(gear, outM)} of cable out: it would be ${where}.`;
  },
});

/** Two lines too near to each other. */
export const LINES_MAY_CROSS = check<{
  gear: Gear;
  crossing: Crossing;
  marginM: number;
  clock: string;
}>({
  slug: "lines-may-cross",
  severities: ["warning"],
  summary: "The lines of two rigs come closer to each other than a margin, towed straight or in a turn.",
  quietWhen:
    "a depth or a side isn't known, both are on one cable, one is on the bottom, the lines stay apart in any place the rigs may stand or depth they may have, or it was said of the two before",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, crossing, marginM, clock }) => {
    const { one, other, distanceM, depthM, behindM, isTurn } = crossing;
    const part = ({ name, what }: NearPart): string => `${name}'s ${what}`;
    const { value, unit } = wholeLength(gear, distanceM, Math.ceil);
    const [down, back] = [depthM, behindM].map((m) => lengthWords(gear, Math.max(0, m)));
    const isOnTop = [down, back].every((words) => words?.startsWith("0 "));
    const where = isOnTop ? "where both go into the water" : `${down} down, ${back} back`;
    const turn = isTurn ? `, in the turn at ${clock}` : "";
    return `${part(one)} comes within ${Math.max(1, value)} ${unit} of ${part(other)}, ${where}${turn}; less than ${lengthWords(gear, marginM)} is too near.`;
  },
});
