/** Checks of readings and fish. */
import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import {
  ageWords,
  fishLengthWords,
  lengthWords,
  massWords,
  smallLengthWords,
  speedWords,
  tempWords,
} from "../words.ts";

const since = "0.1.0";

/** A measure as it was typed; what it comes to behind it where the boat reads in another unit. */
function asRead(written: string, figure: string): string {
  return written.split(" ").at(-1) === figure.split(" ").at(-1) ? written : `${written} (${figure})`;
}

/** A speed nobody trolls at. */
export const SPEED_IMPLAUSIBLE = check<{
  gear: Gear;
  written: string;
  speedMS: number;
  slowestMS: number;
  fastestMS: number;
  isImpossible: boolean;
  isTrolling: boolean;
  /** With nothing in the water: the clock of the line whose depth leans on it. */
  leaning: string | undefined;
}>({
  slug: "speed-implausible",
  severities: ["warning", "error"],
  summary: "A speed with lines in the water that nobody trolls at, or that no boat goes.",
  quietWhen:
    "a boat can run at it and nothing is in the water (nor goes by it when it is), between run and the next set, while drifting, with jig rods only, and for a slow speed with a fish on",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ gear, written, speedMS, slowestMS, fastestMS, isImpossible, isTrolling, leaning }) => {
    const speed = asRead(written, speedWords(gear, speedMS));
    if (isImpossible) return `${speed}${isTrolling ? " with lines in the water" : ""} can't be.`;
    const where =
      leaning === undefined ? "with lines in the water" : `is the speed that the depth at ${leaning} goes by`;
    return `${speed} ${where}; a troll is from ${speedWords(gear, slowestMS)} to ${speedWords(gear, fastestMS)}.`;
  },
});

/** Water that isn't so cold or warm, or that changed too fast. */
export const TEMP_IMPLAUSIBLE = check<
  | {
      kind: "beyond";
      gear: Gear;
      written: string;
      tempC: number;
      limitC: number;
      side: "cold" | "warm";
      isImpossible: boolean;
    }
  | { kind: "jump"; gear: Gear; tempC: number; otherC: number; depthM: number; clock: string }
  | { kind: "repeated"; gear: Gear; tempC: number; otherC: number; depthM: number; apartM: number }
>({
  slug: "temp-implausible",
  severities: ["warning", "error"],
  summary: "A water temperature colder or warmer than the lakes get, or than the same depth had just before.",
  quietWhen:
    "it is the air's; in salt water, down to its freezing point; a change took longer, as upwelling does",
  isDoubt: true,
  isFixable: true,
  since,
  message: (data) => {
    const { gear } = data;
    if (data.kind === "jump")
      return `Water of ${tempWords(gear, data.tempC)} at ${lengthWords(gear, data.depthM)}, where ${data.clock} has ${tempWords(gear, data.otherC)}: one of the two is doubtful.`;
    if (data.kind === "repeated" && data.apartM > 0)
      return `${tempWords(gear, data.otherC)} and ${tempWords(gear, data.tempC)} within ${smallLengthWords(gear, data.apartM)} at ${lengthWords(gear, data.depthM)}: water doesn't change so fast, and neither is used.`;
    if (data.kind === "repeated")
      return `This profile has ${lengthWords(gear, data.depthM)} twice, with ${tempWords(gear, data.otherC)} and ${tempWords(gear, data.tempC)}: neither is used.`;
    const water = `Water of ${asRead(data.written, tempWords(gear, data.tempC))}`;
    const limit = tempWords(gear, data.limitC);
    if (data.isImpossible)
      return `${water} can't be: nothing ${data.side === "cold" ? "below" : "above"} ${limit} is a lake's.`;
    return data.side === "cold"
      ? `${water} is doubtful: below ${limit} it would be ice.`
      : `${water} is doubtful: the lakes hardly get above ${limit}.`;
  },
});

/** A depth without a speed to go by. */
export const READING_MISSING = check<{ gear: Gear; clock: string; unusedMs: number; aheadMs: number }>({
  slug: "reading-missing",
  severities: ["information"],
  summary: "A depth is asked of a speed that nobody read.",
  quietWhen:
    "it was said since the last reading, the speeds read contradict each other, the line has no clock, or the rod is cast or jigged",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ clock, unusedMs, aheadMs }) =>
    `No depth at ${clock}: no speed (probe, surface or gps) was read in the ${ageWords(unusedMs)} before or the ${ageWords(aheadMs)} after.`,
});

const SPEED_FROM = {
  probe: (rig: string): string => `on ${rig}'s probe`,
  surface: (): string => "on top",
  gps: (): string => "over ground",
} as const;

/** A depth that leans on an old speed. */
export const READING_STALE = check<{
  gear: Gear;
  source: "probe" | "surface" | "gps";
  rig: string | undefined;
  speedMS: number;
  clock: string;
  ageMs: number;
  staleMs: number;
}>({
  slug: "reading-stale",
  severities: ["information"],
  summary: "A depth leans on a speed read long before.",
  quietWhen:
    "another reading is not far behind, it was said since that reading, the line has no clock, or the rod is cast or jigged",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, source, rig, speedMS, clock, ageMs, staleMs }) => {
    const where = SPEED_FROM[source](rig ?? "the rig");
    return `The speed to go by is ${speedWords(gear, speedMS)} ${where}, read at ${clock}, ${ageWords(ageMs)} old; past ${ageWords(staleMs)} it is only a guess.`;
  },
});

/** A fish nobody believes. */
export const FISH_IMPLAUSIBLE = check<{
  gear: Gear;
  what: "weight" | "length";
  /** As it was typed. */
  written: string;
  species: string;
  kind: "not-positive" | "beyond";
  mostSi: number;
  slip: string | undefined;
}>({
  slug: "fish-implausible",
  severities: ["warning", "error"],
  summary: "A fish's length or weight is beyond what the species grows to.",
  quietWhen: "the species is unknown",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ gear, what, written, species, kind, mostSi, slip }) => {
    const words = what === "weight" ? massWords : fishLengthWords;
    if (kind === "not-positive") return `A ${what} of ${written} can't be.`;
    const meant = slip === undefined ? "" : ` Was ${slip} meant?`;
    return `${written} is beyond any ${species}: up to ${words(gear, mostSi)} is believed.${meant}`;
  },
});
