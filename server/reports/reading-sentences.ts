/** What was expected of a reading at the probe or a touch of the bottom, and whether they agree. */
import { type AnyReading, calibrationReadings } from "../analysis/calibration-readings.ts";
import { type ExpectedReading, expectedLineReading, expectedReading } from "../analysis/expected-reading.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { lengthWords, speedWords, wholeLength } from "../model/figures.ts";

/** Sentences on the reading of a line; none for lines that are no reading, or that nothing can be said of. */
export function readingSentences(day: TripAnalysis, lineIndex: number): string[] {
  const { used, ofLines, unused } = calibrationReadings(day);
  const idle = unused.find((one) => one.event.lineIndex === lineIndex);
  if (idle !== undefined) return [`Nothing to hold it against: ${idle.why}.`];
  const isHere = ({ event }: AnyReading): boolean => event.lineIndex === lineIndex;
  const expected: ExpectedReading[] = [
    ...used.filter(isHere).flatMap((one) => expectedReading(one) ?? []),
    ...ofLines.filter(isHere).flatMap((one) => expectedLineReading(one) ?? []),
  ];
  return expected.map((one) => expectedSentence(day, one));
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
