/** Calibrations for people: sentences, a picture of what is left over, the line for the gear book. */
import type { RigCalibration } from "../../../server/analysis/calibration.ts";
import { calibrationLine, lineCalibrationLine } from "../../../server/analysis/calibration-line.ts";
import { type FittedGroup, fittedGroupOf } from "../../../server/analysis/fitted-group.ts";
import type { LineCalibration } from "../../../server/analysis/line-calibration.ts";
import {
  CALIBRATION_CAUTION,
  calibrationSentences,
  readingsWords,
} from "../../../server/reports/calibration-sentences.ts";
import { lineCalibrationSentences } from "../../../server/reports/line-calibration-sentences.ts";
import { printable } from "../render/printable.ts";
import type { Paint } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import type { Gathered } from "./calibrate.ts";
import { residualLines } from "./residual-lines.ts";

interface Look {
  readonly width: number;
  readonly paint: Paint;
}

/** Everything that is printed. */
export function calibrateText(
  fits: readonly RigCalibration[],
  lines: readonly LineCalibration[],
  unused: Gathered["unused"],
  look: Look,
): string[] {
  const rigs = [...fits.map(ofRig), ...lines.map(ofLine)].flatMap((one) => [...rigLines(one, look), ""]);
  const none = "No readings to go by: a probe depth or a touch of the bottom, with cable out and a speed.";
  return [
    ...(rigs.length > 0 ? rigs : [...wrap(none, look.width), ""]),
    ...unusedLines(unused, look),
    ...wrap(CALIBRATION_CAUTION, look.width),
  ];
}

/** What is printed of one fit, whatever was fitted. */
interface Printed {
  readonly group: FittedGroup;
  readonly sentences: readonly string[];
  readonly line: string | undefined;
}

function ofRig(calibration: RigCalibration): Printed {
  const line = calibrationLine(calibration.readings[0].gear, calibration);
  return { group: calibration, sentences: calibrationSentences(calibration), line };
}

function ofLine(calibration: LineCalibration): Printed {
  const line = lineCalibrationLine(calibration.readings[0].gear, calibration);
  return { group: fittedGroupOf(calibration), sentences: lineCalibrationSentences(calibration), line };
}

function rigLines({ group, sentences, line }: Printed, { width, paint }: Look): string[] {
  const { rig, boat, since } = group;
  const gear = since === "" ? "" : `, gear of ${since}`;
  const title = `${rig} on ${boat}${gear}: ${readingsWords(group)}`;
  return [
    ...wrap(printable(title), width, 2).map((one) => paint.strong(one)),
    ...sentences.flatMap((one) => wrap(`  ${printable(one)}`, width, 4)),
    ...residualLines(group, width, paint.faint),
    // The line is for pasting: it stays whole however narrow the window.
    ...(line === undefined ? [] : ["  For the gear book:", printable(line)]),
  ];
}

function unusedLines(unused: Gathered["unused"], { width, paint }: Look): string[] {
  if (unused.length === 0) return [];
  const whys = new Map<string, number>();
  for (const { one } of unused) whys.set(one.why, (whys.get(one.why) ?? 0) + 1);
  const lines = [...whys].map(([why, count]) => `  ${count} × ${printable(why)}`);
  return [
    paint.faint("Not used:"),
    ...lines.flatMap((line) => wrap(line, width, 6)).map((line) => paint.faint(line)),
    "",
  ];
}
