/** On a line that lets something out or moves a clip: the length that brings the lure to a depth nearby. */
import type { CodeAction } from "vscode-languageserver-types";
import { findUnit, fromSi, toSi } from "../../grammar/units.ts";
import { clipForDepth } from "../analysis/clip-for-depth.ts";
import { counterUnit } from "../analysis/counter-reading.ts";
import { createDepthMemo } from "../analysis/depth-memo.ts";
import type { WaterAndSpeed } from "../analysis/downrigger-input.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { letOut } from "../analysis/let-out.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { LineToSet } from "../analysis/line-to-set.ts";
import { type TargetDepth, targetDepths } from "../analysis/target-depths.ts";
import { waterAndSpeed } from "../analysis/without-depth.ts";
import { lengthUnit, lengthWords, tempWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { defaultUnit, findItem } from "../model/quantities.ts";
import { counterValue, counterWords } from "../reports/counter-words.ts";
import { isWhole } from "./hover.ts";
import type { Snapshot } from "./snapshot.ts";

/** The kind of these actions. */
export const SET_FOR_KIND = "refactor.rewrite";

/**
 * Actions for the line: they change the length that is written there, or restate it where it isn't. None where the
 * depth isn't known. A stacked rod's length is where it is clipped; its ball stays.
 */
export function setForDepth(snapshot: Snapshot, lineIndex: number): CodeAction[] {
  const known = snapshot.depthAt(lineIndex);
  if (known === undefined || !isWhole(known.depth.event.line)) return [];
  const { day, depth } = known;
  const written = writtenLength(day.trip.gear, depth);
  if (written === undefined) return [];
  return targetDepths(day.trip, depth).flatMap((target) => {
    const answer = written.isClip
      ? clipAnswer(day, depth, target.depthM, written.unit)
      : outAnswer(day, depth, target.depthM, written.unit);
    const edit = answer === undefined ? undefined : editOf(written, answer);
    if (answer === undefined || edit === undefined) return [];
    const { start, stop, newText } = edit;
    const range = { start: { line: lineIndex, character: start }, end: { line: lineIndex, character: stop } };
    return [
      {
        title: `Set for ${lengthWords(day.trip.gear, target.depthM)}${reason(day.trip.gear, target.because)} (${answer.words})`,
        kind: SET_FOR_KIND,
        edit: { changes: { [snapshot.uri]: [{ range, newText }] } },
      },
    ];
  });
}

/** Where a length stands on the line, or is to be put. */
interface WrittenLength {
  readonly isClip: boolean;
  /** The unit that was written, else the one it is counted in. */
  readonly unit: string;
  readonly start: number;
  readonly stop: number;
  /** What stands there; nothing where the length isn't written on this line. */
  readonly text: string;
  /** The one number; undefined where there are several, as in `10 colors 50 ft`. */
  readonly number: string | undefined;
  /** What is out, or how high it is clipped, by this line and those before, m. */
  readonly nowM: number | undefined;
}

function writtenLength(gear: Gear, { event, rig: name, setting }: LineDepth): WrittenLength | undefined {
  const { line } = event;
  const rig = gear.rigs.get(name);
  const [slot] = line.slots;
  if (rig === undefined || slot === undefined) return undefined;
  const isClip = rig.kind === "stacked";
  const nowM = isClip ? setting.aboveM : setting.outM;
  const item = findItem(line, isClip ? "above" : "out");
  if (item === undefined) {
    const unit = isClip ? lengthUnit(gear) : counterUnit(gear, rig);
    return { isClip, unit, start: slot.stop, stop: slot.stop, text: "", number: undefined, nowM };
  }
  const { value, valueStart, stop } = item;
  const [part, ...more] = value.kind === "quantity" ? value.parts : [];
  const fallback = defaultUnit("length", line.verb, gear.defaults);
  const unit = (part?.unit ?? null) === null ? fallback : findUnit(part?.unit ?? "");
  if (part === undefined || unit === undefined) return undefined;
  const text = line.raw.slice(valueStart, stop);
  const number = more.length === 0 ? part.number : undefined;
  return { isClip, unit: unit.unit, start: valueStart, stop, text, number, nowM };
}

/** The length for a depth: as a journal takes it, its number where one is enough, and as it is said. */
interface Answer {
  readonly value: string;
  readonly number: string | undefined;
  readonly lengthM: number;
  readonly words: string;
}

function outAnswer(day: TripAnalysis, depth: LineDepth, depthM: number, unit: string): Answer | undefined {
  const asked = lineInWater(day, depth);
  const found = asked && letOut(asked.line, asked.water, depthM, createDepthMemo(), unit);
  if (found?.ok !== true) return undefined;
  const number = found.backing === null ? String(found.out) : undefined;
  return { value: counterValue(found), number, lengthM: found.outM, words: `${counterWords(found)} out` };
}

/** In whole units; a clip of none is at the ball. */
function clipAnswer(day: TripAnalysis, depth: LineDepth, depthM: number, unit: string): Answer | undefined {
  const asked = lineInWater(day, depth);
  const foundM = asked && clipForDepth(asked.line, asked.water, depthM);
  const row = findUnit(unit);
  if (foundM === undefined || row === undefined) return undefined;
  const number = Math.round(fromSi(foundM, row));
  if (number < 1) return undefined;
  const value = `${number} ${unit}`;
  return { value, number: String(number), lengthM: toSi(number, row), words: `${value} above the ball` };
}

function lineInWater(
  { trip: { gear }, timeline }: TripAnalysis,
  depth: LineDepth,
): { readonly line: LineToSet; readonly water: WaterAndSpeed } | undefined {
  const rig = gear.rigs.get(depth.rig);
  const water = waterAndSpeed(depth);
  if (rig === undefined || !water.ok) return undefined;
  const rods = timeline.spreadAfter.get(depth.event.lineIndex);
  return { line: { gear, rig, setting: depth.setting, rods }, water };
}

/** The number alone where one was typed and one is needed; else the whole length. Nothing where it stays as it is. */
function editOf(
  { isClip, start, stop, text, number, nowM }: WrittenLength,
  answer: Answer,
): { start: number; stop: number; newText: string } | undefined {
  if (text === "") {
    const isSame = nowM !== undefined && Math.abs(nowM - answer.lengthM) < 0.1;
    return isSame ? undefined : { start, stop, newText: ` ${isClip ? "above" : "out"} ${answer.value}` };
  }
  const at = number === undefined ? -1 : text.indexOf(number);
  if (number === undefined || answer.number === undefined || at < 0)
    return answer.value === text ? undefined : { start, stop, newText: answer.value };
  if (answer.number === number) return undefined;
  return { start: start + at, stop: start + at + number.length, newText: answer.number };
}

function reason(gear: Gear, because: TargetDepth["because"]): string {
  if (because === "marks") return ", the middle of the marks";
  if (typeof because === "string") return "";
  const { species, tempC } = because;
  return `, ${species} water of ${tempWords(gear, tempC.low).replace(/ .*$/u, "")} to ${tempWords(gear, tempC.high)}`;
}
