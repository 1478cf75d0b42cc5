/** Fits the drag of long lines and the areas of divers to the depths that were measured on them. */
import type { Gear } from "../model/gear-types.ts";
import type { CalibrationFit, LeftOut } from "../physics/calibrate.ts";
import { type DiverFit, fitDiver } from "../physics/calibrate-diver.ts";
import { fitLongLine } from "../physics/calibrate-line.ts";
import type { ReadingToTake } from "../physics/calibration-lacks.ts";
import { diverReadingToTake, lineReadingToTake } from "../physics/line-reading-to-take.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { LineReading } from "./line-readings.ts";
import { refusalWords, worded } from "./refusal-words.ts";

/** The fit of one line or diver while its gear stayed the same. */
export interface LineCalibration {
  readonly boat: string;
  readonly rig: string;
  /** Day on which its gear came to be as it is; empty from the beginning. */
  readonly since: string;
  /** In the order of their days and lines; one at least. */
  readonly readings: readonly [LineReading, ...LineReading[]];
  /** Exactly one of the two is fitted. */
  readonly what:
    | { readonly is: "line"; readonly fit: CalibrationFit | Refusal; readonly isByColors: boolean }
    | { readonly is: "diver"; readonly fit: DiverFit | Refusal };
  /** The one reading more that would tell the most; worked out when it is asked for. */
  readonly next: ReadingToTake | undefined;
  /** The day of the last reading: the gear-book line holds from then on. */
  readonly date: string;
}

/** What the readings of a line can't tell yet. */
export interface LineLacks {
  readonly drag: boolean;
  readonly dragFromCounter: boolean;
  /** A diver's pull down from its pull back. */
  readonly areas: boolean;
}

/** Something counts as told where the readings took half of its prior's variance off (judgement). */
const OPEN = 0.5;
/** Two parameters explain each other beyond this correlation (judgement). */
const TIED = 0.5;

/** What is missing of a fit; nothing where there is none. */
export function lineLacks(what: LineCalibration["what"]): LineLacks {
  const none = { drag: false, dragFromCounter: false, areas: false };
  if (!what.fit.ok) return none;
  if (what.is === "diver")
    return { ...none, areas: Math.max(what.fit.leftOfSize, what.fit.leftOfRatio) > OPEN };
  const { covariance, lnDragSd, counterScaleSd, counterOffsetSdM, prior } = what.fit;
  const [, dragScale = 0, dragOffset = 0] = covariance;
  const ties = [dragScale / (lnDragSd * counterScaleSd), dragOffset / (lnDragSd * counterOffsetSdM)];
  return {
    ...none,
    drag: lnDragSd ** 2 > OPEN * prior.lnDragSd ** 2,
    dragFromCounter: !what.isByColors && ties.some((tie) => Math.abs(tie) > TIED),
  };
}

/** Fits every line of these readings, in the order of their first reading; new gear starts anew. */
export function calibrateLines(readings: readonly LineReading[]): LineCalibration[] {
  const groups = new Map<string, LineReading[]>();
  for (const one of readings.toSorted((a, b) => (a.date < b.date ? -1 : Number(a.date > b.date)))) {
    const key = JSON.stringify([one.boat, one.rig.name, one.since]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap(([first, ...rest]) =>
    first === undefined ? [] : [calibrateLine([first, ...rest])],
  );
}

function calibrateLine(readings: LineCalibration["readings"]): LineCalibration {
  const [first] = readings;
  const last = readings.at(-1) ?? first;
  const { boat, rig, since } = first;
  const what = fittedKept(readings);
  return {
    boat,
    rig: rig.name,
    since,
    readings,
    what,
    get next(): ReadingToTake | undefined {
      return nextReading(what, last);
    },
    date: last.date,
  };
}

function nextReading(
  what: LineCalibration["what"],
  { reading, rig }: LineReading,
): ReadingToTake | undefined {
  if (what.is === "diver") return what.fit.ok ? diverReadingToTake(what.fit, reading) : undefined;
  return what.fit.ok ? lineReadingToTake(what.fit, reading, { ...what, holdsM: rig.holdsM }) : undefined;
}

/** Fits are kept by value: a keystroke elsewhere in a trip leaves its readings as they are. */
const fits = new Map<string, LineCalibration["what"]>();
const MOST_FITS = 200;

function fittedKept(readings: LineCalibration["readings"]): LineCalibration["what"] {
  const [{ rig, gear }] = readings;
  const asked = readings.map((one) => one.reading);
  const isDiver = rig.kind === "diver";
  const isByColors = readings.some((one) => one.setting.outColorsM !== undefined);
  const key = JSON.stringify([isDiver, isByColors, gear.defaults, asked]);
  const kept = fits.get(key);
  if (kept !== undefined) return kept;
  const what: LineCalibration["what"] = isDiver
    ? { is: "diver", fit: inWords(gear, fitDiver(asked)) }
    : { is: "line", fit: inWords(gear, fitLongLine(asked, isByColors)), isByColors };
  if (fits.size >= MOST_FITS) fits.clear();
  fits.set(key, what);
  return what;
}

/** The fit with what it refuses in the boat's units. */
function inWords<Fit extends { readonly ok: true; readonly leftOut: readonly LeftOut[] }>(
  gear: Gear,
  fit: Fit | Refusal,
): Fit | Refusal {
  if (!fit.ok || fit.leftOut.length === 0) return worded(gear, fit);
  return { ...fit, leftOut: fit.leftOut.map((one) => ({ ...one, why: refusalWords(gear, one) })) };
}
