/** What was expected of a reading at the probe or a touch of the bottom, and whether they agree; speed against ground. */
import { type AnyReading, calibrationReadings } from "../analysis/calibration-readings.ts";
import { type ExpectedReading, expectedLineReading, expectedReading } from "../analysis/expected-reading.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { clockWords, lengthWords, speedWords, wholeLength } from "../model/figures.ts";
import { measureOf } from "../model/quantities.ts";
import { speedReadings } from "../model/readings.ts";

/** A speed over ground this near in time is held against a probe's speed (judgement). */
const NEAR_MS = 10 * 60_000;
/** Less than this between the two speeds, m/s, is no current: both are read to a tenth of a mph. */
const STILL_MS = 0.15 * 0.44704;

/** Sentences on the reading of a line; none for lines that are no reading, or that nothing can be said of. */
export function readingSentences(day: TripAnalysis, lineIndex: number): string[] {
  const { used, ofLines, unused } = calibrationReadings(day);
  const idle = unused.find((one) => one.event.lineIndex === lineIndex);
  if (idle !== undefined)
    return [`Nothing to hold it against: ${idle.why}.`, ...currentSentences(day, lineIndex)];
  const isHere = ({ event }: AnyReading): boolean => event.lineIndex === lineIndex;
  const expected: ExpectedReading[] = [
    ...used.filter(isHere).flatMap((one) => expectedReading(one) ?? []),
    ...ofLines.filter(isHere).flatMap((one) => expectedLineReading(one) ?? []),
  ];
  return [...expected.map((one) => expectedSentence(day, one)), ...currentSentences(day, lineIndex)];
}

function expectedSentence(day: TripAnalysis, expected: ExpectedReading): string {
  const { gear } = day.trip;
  const { reading, depthM, lowM, highM, measuredM, off } = expected;
  const low = wholeLength(gear, lowM, Math.floor).value;
  const high = wholeLength(gear, highM, Math.ceil).value;
  const shows =
    reading.reading.as === "probe-depth"
      ? `The probe shows ${lengthWords(gear, measuredM)}`
      : `${reading.rig.kind === "downrigger" ? "The ball" : reading.rig.name} touched in ${lengthWords(gear, measuredM)}`;
  const setting = `${lengthWords(gear, reading.counterM)} out at ${speedWords(gear, reading.speed.value)}`;
  const differ = `${lengthWords(gear, Math.abs(measuredM - depthM))} ${measuredM < depthM ? "shallower" : "deeper"}`;
  const verdict =
    off <= 1 ? "they agree" : off <= 2 ? `${differ}, still possible` : `${differ}: they disagree`;
  return `${shows}; about ${lengthWords(gear, depthM)} (${low} to ${high}) was expected with ${setting}: ${verdict}.`;
}

/** The probe's speed through the water beside the nearest speed over ground. */
function currentSentences({ trip }: TripAnalysis, lineIndex: number): string[] {
  const event = trip.events.find((one) => one.lineIndex === lineIndex);
  if (event?.line.verb !== "probe" || event.instant === null) return [];
  const through = measureOf(event.line, "speed", "speed", trip.gear.defaults);
  const timeMs = event.instant.utcMs;
  const [over] = speedReadings(trip)
    .filter((one) => one.source === "gps" && Math.abs(one.timeMs - timeMs) <= NEAR_MS)
    .sort((a, b) => Math.abs(a.timeMs - timeMs) - Math.abs(b.timeMs - timeMs));
  if (through === undefined || over === undefined) return [];
  const { gear, zone } = trip;
  const both = `${speedWords(gear, through)} through the water at the ball, ${speedWords(gear, over.value)} over ground (${clockWords(over.timeMs, zone)})`;
  const byMS = through - over.value;
  if (Math.abs(byMS) < STILL_MS) return [`${both}: no current along this heading.`];
  const way = byMS > 0 ? "into" : "with";
  return [
    `${both}: running ${way} about ${speedWords(gear, Math.abs(byMS))} of current, if both speeds are true; one heading tells only that.`,
  ];
}
