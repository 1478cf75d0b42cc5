/** Fits each downrigger's drag and counter to the readings of a trip, a season or all of them. */
import type { Gear } from "../model/gear-types.ts";
import { type CalibrationFit, fitCalibration as fitReadings } from "../physics/calibrate.ts";
import {
  type CalibrationLacks,
  calibrationLacks,
  type ReadingToTake,
  readingToTake,
} from "../physics/calibration-lacks.ts";
import { type CalibrationReading, readingsKey } from "../physics/calibration-reading.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { RigReading } from "./calibration-readings.ts";
import { refusalWords, worded } from "./refusal-words.ts";

/** The readings of one rig while its gear stayed the same. */
interface RigReadings {
  readonly boat: string;
  readonly rig: string;
  /** Day on which its gear came to be as it is; empty from the beginning. */
  readonly since: string;
  /** In the order of their days and lines; one at least. */
  readonly readings: readonly [RigReading, ...RigReading[]];
}

/** A fit of one rig, with what is missing. */
export interface RigCalibration extends RigReadings {
  readonly fit: CalibrationFit | Refusal;
  readonly lacks: CalibrationLacks | undefined;
  readonly next: ReadingToTake | undefined;
  /** The day of the last reading: the gear-book line holds from then on. */
  readonly date: string;
}

/** Groups readings by boat, rig and gear: a new cable, ball or rig starts anew. */
export function groupReadings(readings: readonly RigReading[]): RigReadings[] {
  const groups = new Map<string, RigReading[]>();
  const inOrder = readings.toSorted((a, b) => (a.date < b.date ? -1 : Number(a.date > b.date)));
  for (const one of inOrder) {
    const key = JSON.stringify([one.boat, one.rig.name, one.since]);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(one);
  }
  return [...groups.values()].flatMap((group) => {
    const [first, ...rest] = group;
    if (first === undefined) return [];
    const { boat, rig, since } = first;
    return [{ boat, rig: rig.name, since, readings: [first, ...rest] as const }];
  });
}

/** Fits one group. */
export function calibrateRig(group: RigReadings): RigCalibration {
  const last = group.readings.at(-1) ?? group.readings[0];
  const fit = wordedFit(last.gear, fitKept(group.readings.map((one) => one.reading)));
  return {
    ...group,
    fit,
    lacks: fit.ok ? calibrationLacks(fit) : undefined,
    get next(): ReadingToTake | undefined {
      return fit.ok ? readingToTake(fit, last.reading.rig) : undefined;
    },
    date: last.date,
  };
}

/** The fit with what it refuses in the boat's units. */
function wordedFit(gear: Gear, fit: CalibrationFit | Refusal): CalibrationFit | Refusal {
  if (!fit.ok || fit.leftOut.length === 0) return worded(gear, fit);
  return { ...fit, leftOut: fit.leftOut.map((one) => ({ ...one, why: refusalWords(gear, one) })) };
}

/** Fits every rig of these readings, in the order of their first reading. */
export function calibrateAll(readings: readonly RigReading[]): RigCalibration[] {
  return groupReadings(readings).map(calibrateRig);
}

/** Fits are kept by value: a keystroke elsewhere in a trip leaves its readings as they are. */
const fits = new Map<string, CalibrationFit | Refusal>();
const MOST_FITS = 200;

function fitKept(readings: readonly CalibrationReading[]): CalibrationFit | Refusal {
  const key = readingsKey(readings);
  const kept = fits.get(key);
  if (kept !== undefined) return kept;
  const fit = fitReadings(readings);
  if (fits.size >= MOST_FITS) fits.clear();
  fits.set(key, fit);
  return fit;
}

/** Cable out by a fit when the counter shows a number, m. */
export function cableByFit({ values }: CalibrationFit, counterM: number): number {
  return values.counterScale * counterM + values.counterOffsetM;
}

/** Standard deviation of that, m. */
export function cableByFitSd({ covariance }: CalibrationFit, counterM: number): number {
  const at = (i: number): number => covariance[i] ?? 0;
  return Math.sqrt(Math.max(0, counterM ** 2 * at(4) + 2 * counterM * at(5) + at(8)));
}
