/**
 * What is about expected of a trip's readings, told from few solves: enough to see of most that they agree with the book
 * and with each other, so that only the others are solved one by one.
 */
import type { CalibrationReading } from "../physics/calibration-reading.ts";
import { type CalibrationValues, withValues } from "../physics/calibration-values.ts";
import { type NearReadings, nearReadings, type RoughExpectation } from "../physics/near-readings.ts";
import { settingText } from "../physics/rig-value.ts";
import type { RigReading } from "./calibration-readings.ts";
import type { DownriggerTask } from "./downrigger-input.ts";

/** By the first reading's task, which stays the very same while nothing it hangs on is edited. */
const keptByBook = new WeakMap<DownriggerTask, NearReadings>();
const keptByValues = new WeakMap<DownriggerTask, Map<string, NearReadings>>();
/** Of one task: a trip's fits come back to few values. */
const MOST_VALUES = 8;

/**
 * What is about expected of each reading, in their order, from the book or, where they are given, with other values for
 * cable and counter; undefined where only solving tells. Readings of one setting are told from the first of them, and
 * from the next one those that are too far from it.
 */
export function roughExpectations(
  readings: readonly RigReading[],
  values?: CalibrationValues,
): (RoughExpectation | undefined)[] {
  const settings = new Map<string, NearReadings[]>();
  return readings.map((one) => {
    const setting = settingText(one.task.downrigger);
    const known = settings.get(setting) ?? [];
    for (const near of known) {
      const rough = near(one.reading);
      if (rough !== undefined) return rough;
    }
    const near = nearKept(one, values);
    known.push(near);
    settings.set(setting, known);
    return near(one.reading);
  });
}

function nearKept({ task, reading }: RigReading, values: CalibrationValues | undefined): NearReadings {
  if (values === undefined || isByBook(reading, values)) {
    const known = keptByBook.get(task) ?? nearReadings(reading.rig);
    keptByBook.set(task, known);
    return known;
  }
  const ofTask = keptByValues.get(task) ?? new Map<string, NearReadings>();
  keptByValues.set(task, ofTask);
  const key = `${values.lnDrag} ${values.counterScale} ${values.counterOffsetM}`;
  const known = ofTask.get(key);
  if (known !== undefined) return known;
  if (ofTask.size >= MOST_VALUES) ofTask.clear();
  const near = nearReadings(withValues(reading.rig, values));
  ofTask.set(key, near);
  return near;
}

function isByBook({ rig }: CalibrationReading, values: CalibrationValues): boolean {
  return (
    Math.exp(values.lnDrag) === rig.cable.dragMultiplier &&
    values.counterScale === rig.counterScale &&
    values.counterOffsetM === rig.counterOffsetM
  );
}
