/** A fitted long line or diver in the captain's plain words. */
import {
  type CalibrationFit,
  type DiverFit,
  type FittedGroup,
  fittedGroupOf,
} from "../analysis/fitted-group.ts";
import { type LineCalibration, type LineLacks, lineLacks } from "../analysis/line-calibration.ts";
import { colorWords, lengthWords, speedWords } from "../model/figures.ts";
import {
  counterSentence,
  DEVIATIONS_80,
  draggingWords,
  farSentence,
  leftOutSentence,
  mostTelling,
} from "./calibration-sentences.ts";

/** Everything there is to say of one fit. */
export function lineCalibrationSentences(calibration: LineCalibration): string[] {
  const { rig, what } = calibration;
  const group = fittedGroupOf(calibration);
  if (!what.fit.ok) return [`No fit for ${rig}: ${what.fit.why}.`];
  const lacks = lineLacks(what);
  const found =
    what.is === "diver"
      ? diverSentences(rig, what.fit, lacks)
      : lineSentences(group, what.fit, what.isByColors, lacks);
  return [...found, ...nextSentence(calibration), ...farSentence(group), ...leftOutSentence(group)];
}

function lineSentences(
  group: FittedGroup,
  fit: CalibrationFit,
  isByColors: boolean,
  lacks: LineLacks,
): string[] {
  const { rig } = group;
  const times = (deviations: number): number => Math.exp(fit.values.lnDrag + deviations * fit.lnDragSd);
  const range = `${draggingWords(times(-DEVIATIONS_80))} to ${draggingWords(times(DEVIATIONS_80))}`;
  return [
    `${rig}'s line drags ${draggingWords(times(0))} than a smooth line of its book weight (${range}).`,
    "Drag and weight of the line go together in that: a depth tells only one against the other.",
    ...(isByColors
      ? ["Lengths were counted in colors, so there is no counter to fit."]
      : [counterSentence({ ...group, fit })]),
    ...(lacks.dragFromCounter
      ? ["Drag and counter explain each other so far: one may be too high and the other too low."]
      : []),
    ...(lacks.drag ? ["How the line drags can't be told yet: the readings are too few or too short."] : []),
  ];
}

function nextSentence({ next, rig, what, readings: [{ gear }] }: LineCalibration): string[] {
  if (next === undefined) return [];
  const isByColors = what.is === "line" && what.isByColors;
  const out = isByColors ? colorWords(next.outM) : lengthWords(gear, next.outM);
  const where = `${isByColors ? "" : "about "}${out} out on ${rig}, at ${speedWords(gear, next.speedMS)} or so`;
  const how = next.kind === "touch" ? `touch bottom with ${where}` : `a probe reading with ${where}`;
  return mostTelling(next, how);
}

function diverSentences(rig: string, fit: DiverFit, lacks: LineLacks): string[] {
  const { liftAreaM2, dragAreaM2, spread } = fit;
  const area = (m2: number, lnSd: number): string => {
    const at = (deviations: number): number => Math.round(1e4 * m2 * Math.exp(deviations * lnSd));
    return `${at(0)} cm2 (${at(-DEVIATIONS_80)} to ${at(DEVIATIONS_80)})`;
  };
  return [
    `${rig}'s diver pulls down like ${area(liftAreaM2, spread.lnLiftSd)} and back like ${area(dragAreaM2, spread.lnDragSd)}.`,
    "What the drag of its line is off is in both: depths tell only the diver against its line.",
    ...(lacks.areas
      ? [
          "Its pull down and its pull back can't be told apart yet: touch bottom with it at a short and at a long length, whatever the speed.",
        ]
      : []),
  ];
}
