/** Checks of what the readings say of the water and of the way over it. */
import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import { ageWords, lengthWords, speedWords, tempWords } from "../words.ts";

const since = "0.1.0";

/** Where a speed was read, as a sentence has it. */
export type SpeedAt = "on top" | "over ground" | `at ${string}'s probe`;

/** Two speeds that no current explains. */
export const SPEEDS_DISAGREE = check<{
  gear: Gear;
  oneMS: number;
  oneAt: SpeedAt;
  otherMS: number;
  otherAt: SpeedAt;
  limitMS: number;
}>({
  slug: "speeds-disagree",
  severities: ["warning"],
  summary: "Two speeds of about one minute would need a stronger current than there is.",
  quietWhen: "a turn is near in time, the speeds were read too long after each other, or nothing is trolled",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, oneMS, oneAt, otherMS, otherAt, limitMS }) =>
    `${speedWords(gear, oneMS)} ${oneAt} and ${speedWords(gear, otherMS)} ${otherAt} would mean a current of ${speedWords(gear, Math.abs(oneMS - otherMS))}; more than ${speedWords(gear, limitMS)} is doubtful.`,
});

/** Two readings of one instrument and minute. */
export const READINGS_CONTRADICT = check<{
  gear: Gear;
  of: "speed" | "depth";
  at: SpeedAt;
  value: number;
  otherValue: number;
}>({
  slug: "readings-contradict",
  severities: ["warning"],
  summary: "One instrument shows two things in the same minute.",
  quietWhen:
    "they are within 0.5 mph or 5 ft, the boat turned or the cable was moved in that minute, or a clock is approximate",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, of, at, value, otherValue }) => {
    const words = of === "speed" ? speedWords : lengthWords;
    return `${words(gear, value)} ${at} and ${words(gear, otherValue)} in the same minute: depths lean on neither until one goes, or says sure.`;
  },
});

/** Knots typed as miles per hour. */
export const KNOTS_FOR_MPH = check<{
  count: number;
  slowAt: SpeedAt | "at the probe";
  fastAt: SpeedAt | "at the probe";
}>({
  slug: "knots-for-mph",
  severities: ["warning"],
  summary: "Two speeds keep a steady ratio of 1.15: one instrument shows knots.",
  quietWhen:
    "fewer than three pairs were read, they are all on one course, the ratio wanders, or the slower one is written in another unit than mph",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ count, slowAt, fastAt }) =>
    `All ${count} times the speed ${slowAt} is 1.15 times less than that ${fastAt}, on every course: is it in knots?`,
});

/** A wheel that does not turn as it should. */
export const STUCK_WHEEL = check<
  | { kind: "still"; at: SpeedAt; gear: Gear; groundMS: number }
  | { kind: "same"; at: SpeedAt; gear: Gear; speedMS: number; count: number; changeMS: number }
>({
  slug: "stuck-wheel",
  severities: ["warning"],
  summary: "A speed wheel shows nothing, or always the same, while the boat's speed changes.",
  quietWhen: "no GPS speed was read about then, the boat is on another course, or nothing is trolled",
  isDoubt: true,
  isFixable: false,
  since,
  message: (data) =>
    data.kind === "still"
      ? `No speed ${data.at} while the boat makes ${speedWords(data.gear, data.groundMS)} over ground: is the wheel fouled?`
      : `${speedWords(data.gear, data.speedMS)} ${data.at} ${data.count} times running, while the speed over ground on that course changed by ${speedWords(data.gear, data.changeMS)}: does the wheel turn?`,
});

/** A probe whose depth does not follow the cable. */
export const PROBE_FROZEN = check<{ gear: Gear; rig: string; depthM: number; movedM: number; clock: string }>(
  {
    slug: "probe-frozen",
    severities: ["warning"],
    summary: "A probe shows the same depth though its cable was moved.",
    quietWhen: "the cable moved less than 20 ft, or the ball is on the bottom",
    isDoubt: true,
    isFixable: false,
    since,
    message: ({ gear, rig, depthM, movedM, clock }) =>
      `${rig}'s probe still shows ${lengthWords(gear, depthM)} as at ${clock}, with ${lengthWords(gear, Math.abs(movedM))} ${movedM > 0 ? "more" : "less"} cable out.`,
  },
);

/** Heavy water on light. */
export const PROFILE_UPSIDE_DOWN = check<{
  gear: Gear;
  upperC: number;
  upperM: number;
  lowerC: number;
  lowerM: number;
}>({
  slug: "profile-upside-down",
  severities: ["information"],
  summary: "A profile has heavier water above lighter water.",
  quietWhen:
    "it is colder above than below near 39 F, where water is heaviest, as in the cold months, or they differ by less than a degree",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, upperC, upperM, lowerC, lowerM }) =>
    `${tempWords(gear, upperC)} at ${lengthWords(gear, upperM)} is heavier water than ${tempWords(gear, lowerC)} at ${lengthWords(gear, lowerM)} below it: it would sink. Were two numbers swapped?`,
});

/** A temperature that nobody read. */
export const NO_PROFILE = check<{
  gear: Gear;
  rig: string;
  depthM: number;
  gap: { topM: number; bottomM: number } | undefined;
  unusedMs: number;
}>({
  slug: "no-profile",
  severities: ["information"],
  summary: "A lure's temperature is asked of water that nobody measured.",
  quietWhen:
    "the trip has no target with a band, the depth isn't known or within 15 ft of the surface, a reading is near that depth, or it was said since the last profile",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, rig, depthM, gap, unusedMs }) => {
    const nothing =
      gap === undefined
        ? `nothing was read in the ${ageWords(unusedMs)} before`
        : `nothing was read between ${lengthWords(gear, gap.topM)} and ${lengthWords(gear, gap.bottomM)}`;
    return `No water temperature for ${rig}, about ${lengthWords(gear, depthM)} down: ${nothing}. A profile would tell.`;
  },
});

/** Faster than that, m/s, a figure of the speed says less than the distance and the time do (judgement). */
const ABSURD_MS = 200;

/** A jump no boat makes. */
export const POSITION_IMPLAUSIBLE = check<{
  gear: Gear;
  distanceNmi: number;
  clock: string;
  seconds: number;
  speedMS: number | undefined;
  limitMS: number;
  isTrolling: boolean;
}>({
  slug: "position-implausible",
  severities: ["warning"],
  summary:
    "A position is farther from the one before than the boat can go, or than it can troll with lines in the water all the while.",
  quietWhen:
    "the time of one of the two lines is in doubt; at a troll, where the boat ran, drifted or had no line in between",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ gear, distanceNmi, clock, seconds, speedMS, limitMS, isTrolling }) => {
    const far = `${distanceNmi < 10 ? distanceNmi.toFixed(1) : Math.round(distanceNmi)} nautical miles from the position of ${clock}`;
    if (speedMS === undefined) return `${far}: in the same minute.`;
    const limit = `${isTrolling ? "with lines in the water all the while " : ""}a boat makes up to ${speedWords(gear, limitMS)}`;
    if (speedMS <= ABSURD_MS) return `${far}: that takes ${speedWords(gear, speedMS)}, and ${limit}.`;
    return `${far}, ${seconds < 60 ? `${seconds} s` : ageWords(1000 * seconds)} on: ${limit}.`;
  },
});

/** A course that leads elsewhere. */
export const COURSE_DISAGREES = check<{ courseDeg: number; wayDeg: number; clock: string }>({
  slug: "course-disagrees",
  severities: ["information"],
  summary: "A course is not the way between two positions of its leg.",
  quietWhen:
    "a turn is between them or near in time, they are too far apart in time or too near each other, or the two courses differ",
  isDoubt: true,
  isFixable: false,
  since,
  message: ({ courseDeg, wayDeg, clock }) =>
    `Course ${degreeWords(courseDeg)}, but the way from the position of ${clock} is ${degreeWords(wayDeg)}.`,
});

const degreeWords = (deg: number): string => String(Math.round(deg) % 360).padStart(3, "0");
