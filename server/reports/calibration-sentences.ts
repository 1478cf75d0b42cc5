/** A fitted cable and counter in the captain's plain words. */
import { cableByFit, cableByFitSd, type RigCalibration } from "../analysis/calibration.ts";
import type { AnyReading } from "../analysis/calibration-readings.ts";
import { roundLength } from "../analysis/counter-drift.ts";
import type { FittedGroup } from "../analysis/fitted-group.ts";
import { countWords, lengthWords, speedWords, wholeLength } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** The caution that goes with every calibration. */
export const CALIBRATION_CAUTION =
  "A fit is as good as its readings: it is an estimate, not a survey. Ranges hold in about 80 of 100 cases.";

/** An 80 % range reaches this many standard deviations to each side. */
export const DEVIATIONS_80 = 1.2816;
/** A reading that counts less than this is called far off (judgement). */
const FAR_OFF = 0.5;

/** Everything there is to say of one fit. */
export function calibrationSentences(calibration: RigCalibration): string[] {
  const { fit, rig } = calibration;
  if (!fit.ok) return [`No fit for ${rig}: ${fit.why}.`];
  return [
    counterSentence(calibration),
    dragSentence(calibration),
    ...openSentences(calibration),
    ...nextSentence(calibration),
    ...farSentence(calibration),
    ...leftOutSentence(calibration),
  ];
}

/** What the readings are: their number, lengths and days. */
export function readingsWords({ readings }: Pick<FittedGroup, "readings">): string {
  const { gear, date } = readings[0];
  const lengths = readings.map((one) => one.counterM);
  const from = wholeLength(gear, Math.min(...lengths), Math.round).value;
  const to = lengthWords(gear, Math.max(...lengths));
  const last = readings.at(-1)?.date ?? date;
  const days = last === date ? date : `${date} to ${last}`;
  const span = to.startsWith(`${from} `) ? `all at ${to}` : `${from} to ${to}`;
  return `${countWords(readings.length, "reading")}, ${span}, ${days}`;
}

export function counterSentence({
  fit,
  rig,
  readings: [{ gear }],
}: Omit<FittedGroup, "fit"> & Pick<RigCalibration, "fit">): string {
  if (!fit.ok) return "";
  const counterM = roundLength(gear);
  const cableM = cableByFit(fit, counterM);
  const byM = DEVIATIONS_80 * cableByFitSd(fit, counterM);
  const low = wholeLength(gear, cableM - byM, Math.floor).value;
  const high = wholeLength(gear, cableM + byM, Math.ceil).value;
  const counter = wholeLength(gear, counterM, Math.round).value;
  return `${counter} on ${rig}'s counter is ${lengthWords(gear, cableM)} (${low} to ${high}).`;
}

function dragSentence({ fit, rig }: RigCalibration): string {
  if (!fit.ok) return "";
  const times = (deviations: number): number => Math.exp(fit.values.lnDrag + deviations * fit.lnDragSd);
  const range = `${draggingWords(times(-DEVIATIONS_80))} to ${draggingWords(times(DEVIATIONS_80))}`;
  return `${rig}'s cable drags ${draggingWords(times(0))} than a smooth cable (${range}).`;
}

/** `31 % more`, `5 % less`. */
export function draggingWords(times: number): string {
  const percent = Math.round(100 * (times - 1));
  return percent < 0 ? `${-percent} % less` : `${percent} % more`;
}

function openSentences({ lacks }: RigCalibration): string[] {
  if (lacks === undefined) return [];
  return [
    ...(lacks.drag ? ["How the cable drags can't be told yet: the readings are too short or too slow."] : []),
    ...(lacks.counter ? ["The readings hardly tell anything of the counter yet."] : []),
    ...(lacks.scaleFromOffset
      ? [
          "The counter is known near the lengths that were read; whether it runs fast or starts late can't be told apart yet.",
        ]
      : []),
    ...(lacks.dragFromCounter
      ? ["Drag and counter explain each other so far: one may be too high and the other too low."]
      : []),
  ];
}

/** Below this share a reading is worth asking for (judgement). */
const WORTH_IT = 0.9;

function nextSentence({ next, rig, readings: [{ gear }] }: RigCalibration): string[] {
  if (next === undefined) return [];
  const how =
    next.kind === "touch"
      ? `touch bottom with about ${lengthWords(gear, next.outM)} out on ${rig}, as slow as you can`
      : `a probe reading with about ${lengthWords(gear, next.outM)} out on ${rig}, ball bare, at ${speedWords(gear, next.speedMS)}`;
  return mostTelling(next, how);
}

/** The reading that would tell the most, in words; nothing where it would tell little. */
export function mostTelling({ leaves }: { readonly leaves: number }, how: string): string[] {
  if (leaves > WORTH_IT) return [];
  return [
    `What would tell the most: ${how}. It takes about ${Math.round(100 * (1 - leaves))} % off the error.`,
  ];
}

export function farSentence({ fit, readings }: FittedGroup): string[] {
  if (!fit.ok) return [];
  const far = fit.readings.filter((one) => one.weight < FAR_OFF);
  if (far.length === 0) return [];
  const which = far.slice(0, 3).map(({ index, residualM }) => {
    const reading = readings[index] ?? readings[0];
    return `${momentWords(reading)} (${offWords(reading.gear, residualM, isBehind(reading))})`;
  });
  const more = far.length > 3 ? ` and ${far.length - 3} more` : "";
  return [`Far off, and hardly counted: ${which.join(", ")}${more}.`];
}

export function leftOutSentence({ fit, readings }: FittedGroup): string[] {
  if (!fit.ok || fit.leftOut.length === 0) return [];
  const [first] = fit.leftOut;
  const when = momentWords(readings[first?.index ?? 0] ?? readings[0]);
  return [
    `${countWords(fit.leftOut.length, "reading")} left out, the first at ${when}: ${first?.why ?? ""}.`,
  ];
}

/** A distance behind the boat, not a depth. */
export function isBehind({ reading }: AnyReading): boolean {
  return reading.as.endsWith("behind");
}

/** When a reading was taken: `2031-06-21 05:45`. */
export function momentWords({ date, event }: AnyReading): string {
  return `${date} ${event.line.clock?.slice(0, 5) ?? ""}`.trim();
}

/** How far a reading is off: `2 ft deeper`. */
export function offWords(gear: Gear, residualM: number, behind: boolean): string {
  const words = lengthWords(gear, Math.abs(residualM));
  if (words.startsWith("0 ")) return "as expected";
  const way = behind ? ["nearer", "farther"] : ["shallower", "deeper"];
  return `${words} ${residualM < 0 ? way[0] : way[1]}`;
}
