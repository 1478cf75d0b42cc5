/** The water, the way and the light of a day in the captain's plain words. What was, never what will be. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { WaterLayers } from "../analysis/layers-at.ts";
import type { SunDay } from "../analysis/light.ts";
import type { AlongLeg, LayersRead, LegCurrent, WaterSummary } from "../analysis/water-summary.ts";
import { clockWords, lengthWords, speedWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { Trip } from "../model/trip.ts";
import { effortUnit } from "./effort-words.ts";
import {
  bandDepthWords,
  currentWords,
  directionWords,
  extentWords,
  isTold,
  moonWords,
} from "./water-words.ts";

/** The sentences, none where nothing is known. */
export function waterSummarySentences({ trip, summary }: TripAnalysis): string[] {
  const { water } = summary;
  return [
    layerSentence(trip, water.layers),
    currentSentence(trip, water.legs),
    waySentence(trip, water),
    lightSentence(trip, water),
    sunriseSentence(trip, summary.caughtAt),
    hourSentence(trip, summary),
  ].filter((sentence) => sentence !== "");
}

function layerSentence({ gear, zone }: Trip, layers: readonly LayersRead[]): string {
  const said = layers.map(({ timeMs, layers: found, bands }) => {
    const layer = layerWords(gear, found);
    const where = bands.map(({ species, depths }) => `${species} band ${bandDepthWords(gear, depths)}`);
    return `${clockWords(timeMs, zone)} ${[layer, ...where].join(", ")}`;
  });
  return said.length === 0 ? "" : `Profiles: ${said.join("; ")}.`;
}

function layerWords(gear: Gear, layers: WaterLayers): string {
  if (layers.kind === "too-few") return "too few depths to tell a thermocline";
  if (layers.kind === "none") return "no thermocline";
  if (layers.kind === "between")
    return `thermocline somewhere between ${extentWords(gear, layers.topM, layers.bottomM).replace(" to ", " and ")}`;
  return `thermocline about ${lengthWords(gear, layers.thermoclineM)}`;
}

function currentSentence(trip: Trip, legs: readonly LegCurrent[]): string {
  const said = legs.flatMap((one) => legWords(trip, one));
  return said.length === 0 ? "" : `Current along the way, if the speeds are true: ${said.join("; ")}.`;
}

/** As a reading's hover has it: a current that the speeds can't tell from none is none to speak of. */
function legWords({ gear, zone }: Trip, { leg, onTop, atProbe }: LegCurrent): string[] {
  const way = (along: AlongLeg | null, where: string): string[] => {
    if (along === null) return [];
    const { alongMS, sdMS } = along;
    if (!isTold(alongMS, sdMS)) return [`none to speak of ${where}`];
    return [`${alongMS < 0 ? "into" : "with"} ${currentWords(gear, alongMS)} ${where}`];
  };
  const said = [...way(onTop, "on top"), ...way(atProbe, "at the probe")];
  if (said.length === 0) return [];
  const course =
    leg.course === undefined
      ? ""
      : ` on ${directionWords(leg.course.deg)}${leg.course.isMagnetic ? " magnetic" : ""}`;
  return [`from ${clockWords(leg.fromMs, zone)}${course} ${said.join(", ")}`];
}

function waySentence({ gear, zone }: Trip, { distanceM, legs }: WaterSummary): string {
  if (distanceM === null) return "";
  const nmi = Number((distanceM / 1852).toFixed(1));
  const made = legs.flatMap(({ leg }) =>
    leg.madeGoodMS === undefined || leg.madeGoodDeg === undefined
      ? []
      : [
          `${speedWords(gear, leg.madeGoodMS)} toward ${directionWords(leg.madeGoodDeg)} true from ${clockWords(leg.fixes[0]?.timeMs ?? leg.fromMs, zone)}`,
        ],
  );
  const good = made.length === 0 ? "" : ` Made good: ${made.join("; ")}.`;
  return `At least ${nmi} nautical miles between the positions written.${good}`;
}

function lightSentence({ zone }: Trip, { sun, moon }: WaterSummary): string {
  if (sun === null || moon === null) return "";
  const clock = (ms: number | undefined): string => (ms === undefined ? "none" : clockWords(ms, zone));
  return `${sunWords(sun, clock)} Moon at the start: ${moonWords(moon)}.`;
}

function sunWords(sun: SunDay, clock: (ms: number | undefined) => string): string {
  return `Sunrise ${clock(sun.sunriseMs)}, sunset ${clock(sun.sunsetMs)}; civil twilight from ${clock(sun.civilDawnMs)} to ${clock(sun.civilDuskMs)}, nautical from ${clock(sun.nauticalDawnMs)} to ${clock(sun.nauticalDuskMs)}.`;
}

function sunriseSentence({ events }: Trip, caught: TripAnalysis["summary"]["caughtAt"]): string {
  const known = caught.flatMap(({ sunriseMinutes, rig, lineIndex }) => {
    const isApprox = events.find((event) => event.lineIndex === lineIndex)?.line.approx === true;
    if (sunriseMinutes === null) return [];
    const minutes = `${isApprox ? "about " : ""}${Math.abs(sunriseMinutes)} min ${sunriseMinutes < 0 ? "before" : "after"}`;
    return [`${minutes} (${rig})`];
  });
  return known.length === 0 ? "" : `Landed, from sunrise: ${known.join(", ")}.`;
}

function hourSentence({ zone, gear }: Trip, summary: TripAnalysis["summary"]): string {
  const { landedByHour } = summary.water;
  if (!landedByHour.some((hour) => hour.landed > 0)) return "";
  const said = landedByHour.map(({ fromMs, landed, rodHours }, i) => {
    const unit = i === 0 ? ` ${effortUnit(gear, summary)}s` : "";
    const before = landedByHour[i - 1];
    const clock = clockWords(fromMs, zone);
    // The hour that daylight saving repeats comes twice.
    const again = before !== undefined && clockWords(before.fromMs, zone) === clock ? " again" : "";
    return `from ${clock}${again} ${landed} in ${Number(rodHours.toFixed(1))}${unit}`;
  });
  return `Landed hour by hour, as it was that day: ${said.join(", ")}.`;
}
