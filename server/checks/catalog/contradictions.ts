/** Checks of facts of a day that can't all be so. */
import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import { fishLengthWords, lengthWords, massWords } from "../words.ts";
import { didYouMean, shown } from "./sentences.ts";

const since = "0.1.0";

/** A fish too heavy or too light for its length. */
export const CONDITION_IMPLAUSIBLE = check<{
  gear: Gear;
  weight: string;
  length: string;
  side: "heavy" | "light";
  /** What a fish of that length weighs at most, or at least, kg. */
  limitKg: number;
  lengthM: number;
}>({
  slug: "condition-implausible",
  severities: ["warning"],
  summary: "A fish's weight and length can't both be so.",
  quietWhen:
    "one of the two isn't said, the line counts several fish, or one alone is beyond its species (then that is said)",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, weight, length, side, limitKg, lengthM }) => {
    const limit = massWords(gear, limitKg);
    const weighs = limit.startsWith("0 ")
      ? "hardly weighs anything"
      : `weighs ${limit} at the ${side === "heavy" ? "most" : "least"}`;
    return `${weight} at ${length} can't be: a fish of ${fishLengthWords(gear, lengthM)} ${weighs}.`;
  },
});

/** Something read deeper than the water. */
export const DEEPER_THAN_BOTTOM = check<{
  gear: Gear;
  what: "marks" | "bait" | "profile" | "probe";
  depthM: number;
  bottomM: number;
  clock: string | undefined;
}>({
  slug: "deeper-than-bottom",
  severities: ["warning"],
  summary: "Marks, a profile or a probe are deeper than the bottom that was read with them.",
  quietWhen:
    "no bottom stands on the line of the marks, or was read within five minutes of the profile or probe; for those two, within 10 % and 6 ft of it",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, what, depthM, bottomM, clock }) => {
    const noun = { marks: "Marks", bait: "Bait", profile: "A profile", probe: "The probe" }[what];
    const when = clock === undefined ? "the bottom" : `the bottom of ${clock}`;
    return `${noun} at ${lengthWords(gear, depthM)}, below ${when}, ${lengthWords(gear, bottomM)}: one of the two is wrong.`;
  },
});

/** An engine that ran backwards. */
export const ENGINE_HOURS = check<{ before: string; after: string }>({
  slug: "engine-hours",
  severities: ["warning"],
  summary: "The engine has fewer hours at the return than at the departure.",
  quietWhen: "one of the two isn't said",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ before, after }) => `The engine had ${before} at the departure, and ${after} at the return.`,
});

/** A probe on a rig that carries none. */
export const PROBE_ELSEWHERE = check<{ rig: string; carriers: readonly string[] }>({
  slug: "probe-elsewhere",
  severities: ["information"],
  summary: "A probe is read on a rig whose gear has none, while the rig that has it is in the water.",
  quietWhen: "no rig with a probe is in the water, or it was said of that rig on that trip",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ rig, carriers }) =>
    `${rig} has no probe in the gear book, and the one on ${carriers.join(" and ")} is in the water: which rig was it? If ${rig} has one too, write probe on its line in the book; nothing is learned from its depth until then.`,
});

/** Somebody who isn't on board. */
export const UNKNOWN_GUEST = check<{ name: string; near: readonly string[] }>({
  slug: "unknown-guest",
  severities: ["information"],
  summary: "A fish is by a guest that the trip doesn't name.",
  quietWhen: "the trip names no guests, and for the captain, the mate and whoever they are",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ name, near }) => `No guest ${shown(name)} is named under this trip.${didYouMean(near)}`,
});
