/** What a reading says when one points at it: the current along the troll, and how the profile stands. */
import { type CurrentLook, type CurrentVector, currentVector, shears } from "../analysis/current-looks.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { clockWords, lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

import { bandSentences, leftOutSentences, sourcesOf } from "./water-sentences.ts";
import { currentRangeWords, currentWords, directionWords, isTold } from "./water-words.ts";

const READINGS = new Set(["probe", "surface", "gps", "profile"]);

/** What a reading says of the water, one sentence an entry; empty for other lines. */
export function waterReadingSentences(day: TripAnalysis, lineIndex: number): string[] {
  const event = day.trip.events.find((one) => one.lineIndex === lineIndex);
  const timeMs = event?.instant?.utcMs;
  if (event === undefined || timeMs === undefined || !READINGS.has(event.line.verb)) return [];
  const looks = day.water.looks.filter((look) => look.gps === event || look.water === event);
  return [
    ...looks.map((look) => alongSentence(day, look)),
    ...vectorSentences(day, looks, timeMs),
    ...shearSentence(day, looks),
    ...(event.line.verb === "gps" ? [] : profileSentences(day, timeMs)),
  ];
}

/** One look at the current. */
export function alongSentence({ trip }: TripAnalysis, look: CurrentLook): string {
  const { gear, zone } = trip;
  const where = look.where === "probe" ? `${look.water.rig ?? "The"}'s probe` : "The speed on top";
  const clock = (timeMs: number): string => clockWords(timeMs, zone);
  const against = `${where} at ${clock(look.waterTimeMs)} against the GPS at ${clock(look.timeMs)}`;
  if (look.isNearTurn) return `${against}: a turn is too near to tell the current.`;
  if (look.isDoubted) return `${against}: no current is that strong; one of the two speeds is doubtful.`;
  const { alongMS, sdMS } = look;
  if (!isTold(alongMS, sdMS))
    return `${against}: no current to speak of along this course, if both speeds are true.`;
  const way = alongMS < 0 ? "running into" : "running with";
  const range = currentRangeWords(gear, Math.abs(alongMS), sdMS);
  return `${against}: ${way} about ${currentWords(gear, alongMS)} (${range}), if both speeds are true. One heading tells only that.`;
}

function vectorSentences(day: TripAnalysis, looks: readonly CurrentLook[], timeMs: number): string[] {
  const wheres = [...new Set(looks.map((look) => look.where))];
  return wheres.flatMap((where) => {
    const vector = currentVector(day.water.looks, where, timeMs);
    return vector === undefined ? [] : [vectorSentence(day, vector)];
  });
}

/** Set and drift from several courses. */
export function vectorSentence({ trip }: TripAnalysis, vector: CurrentVector): string {
  const { gear, zone } = trip;
  const { driftMS: drift, setDeg, driftSdMS: sd } = vector;
  const where = vector.where === "probe" ? "at the probe" : "on top";
  const clocks = vector.looks.map((look) => clockWords(look.timeMs, zone)).join(", ");
  if (!isTold(drift, sd)) return `Current ${where} from the courses of ${clocks}: none to speak of.`;
  const north = vector.isMagnetic ? "magnetic" : "true";
  const turned = turnedWords(vector);
  return `Current ${where} from the courses of ${clocks}: sets ${directionWords(setDeg)} ${north}${turned}, drift about ${currentWords(gear, drift)} (${currentRangeWords(gear, drift, sd)}).`;
}

/** Says what turned magnetic courses true, where the book doesn't state it: the captain may know better. */
function turnedWords({ looks }: CurrentVector): string {
  const turned = looks.find(({ course }) => course?.turnedBy?.from === "model")?.course?.turnedBy;
  if (turned === undefined) return "";
  const degrees = `${Math.abs(turned.deg).toFixed(1)} ${turned.deg < 0 ? "W" : "E"}`;
  return ` (compass courses turned by ${degrees}, the variation there by the World Magnetic Model)`;
}

function shearSentence({ trip, water }: TripAnalysis, looks: readonly CurrentLook[]): string[] {
  const shear = shears(water.looks).find((one) => looks.includes(one.probe) && looks.includes(one.surface));
  if (shear === undefined || shear.probe.isNearTurn || !isTold(shear.alongMS, shear.sdMS)) return [];
  return [`The water at the probe ${shearWords(trip.gear, shear.alongMS)} than that on top.`];
}

function shearWords(gear: Gear, alongMS: number): string {
  return `runs about ${currentWords(gear, alongMS)} more ${alongMS < 0 ? "against the troll" : "with the troll"}`;
}

/** How the profile stands at a minute. */
export function profileSentences(day: TripAnalysis, timeMs: number): string[] {
  const profile = day.water.profileAt(timeMs);
  if (profile?.cast === undefined) return [];
  return [
    layerSentence(day, profile),
    ...day.water.bandsAt(profile).flatMap((band) => bandSentences(day, band)),
    `Taken from ${sourcesOf(day, profile.nodes)}.`,
    ...leftOutSentences(day, profile.leftOut),
  ];
}

function layerSentence(
  { trip: { gear }, water }: TripAnalysis,
  profile: Parameters<TripAnalysis["water"]["layersOf"]>[0],
): string {
  const layers = water.layersOf(profile);
  if (layers === undefined || layers.kind === "too-few")
    return "Too few depths were read to tell a thermocline.";
  if (layers.kind === "none") return "No thermocline: the water is of one kind as far as it was read.";
  if (layers.kind === "between")
    return `Thermocline somewhere between ${lengthWords(gear, layers.topM)} and ${lengthWords(gear, layers.bottomM)}, where nothing was read.`;
  const at = `Thermocline about ${lengthWords(gear, layers.thermoclineM)} down`;
  if (layers.steep === undefined) return `${at}, a weak one: nowhere as much as 1 C per meter.`;
  return `${at}; it cools fastest, 1 C per meter or more, between ${lengthWords(gear, layers.steep.topM)} and ${lengthWords(gear, layers.steep.bottomM)}.`;
}
