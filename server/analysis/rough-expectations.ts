/**
 * What is about expected of a trip's readings, told from few solves: enough to see of most that they agree with the book
 * and with each other, so that only the others are solved one by one.
 */
import type { CalibrationReading } from "../physics/calibration-reading.ts";
import { type CalibrationValues, withValues } from "../physics/calibration-values.ts";
import {
  isSameSetting,
  type NearReadings,
  nearReadings,
  type RoughExpectation,
} from "../physics/near-readings.ts";
import type { RigReading } from "./calibration-readings.ts";
import type { DownriggerTask } from "./downrigger-input.ts";

/** Readings of one setting, told from the first of them. */
interface NearGroup {
  readonly first: RigReading;
  readonly near: NearReadings;
}

/** By the first reading's task, which stays the very same while nothing it hangs on is edited. */
const keptByBook = new WeakMap<DownriggerTask, NearReadings>();
const keptByValues = new WeakMap<DownriggerTask, { values: CalibrationValues; near: NearReadings }>();

/**
 * What is about expected of each reading, in their order, from the book or, where they are given, with other values for
 * cable and counter; undefined where only solving tells.
 */
export function roughExpectations(
  readings: readonly RigReading[],
  values?: CalibrationValues,
): (RoughExpectation | undefined)[] {
  const groups: NearGroup[] = [];
  return readings.map((one) => {
    const { downrigger } = one.task;
    for (const { first, near } of groups) {
      const rig = first.task.downrigger;
      const rough = rig === downrigger || isSameSetting(rig, downrigger) ? near(one.reading) : undefined;
      if (rough !== undefined) return rough;
    }
    const near = nearKept(one, values);
    groups.push({ first: one, near });
    return near(one.reading);
  });
}

function nearKept({ task, reading }: RigReading, values: CalibrationValues | undefined): NearReadings {
  if (values === undefined || isByBook(reading, values)) {
    const known = keptByBook.get(task) ?? nearReadings(reading.rig);
    keptByBook.set(task, known);
    return known;
  }
  const known = keptByValues.get(task);
  if (known?.values === values) return known.near;
  const near = nearReadings(withValues(reading.rig, values));
  keptByValues.set(task, { values, near });
  return near;
}

function isByBook({ rig }: CalibrationReading, values: CalibrationValues): boolean {
  return (
    Math.exp(values.lnDrag) === rig.cable.dragMultiplier &&
    values.counterScale === rig.counterScale &&
    values.counterOffsetM === rig.counterOffsetM
  );
}
