/** On a line that lets something out: the length that brings it to a depth nearby. */
import type { CodeAction } from "vscode-languageserver-types";
import type { Item } from "../../grammar/journal.ts";
import { findUnit } from "../../grammar/units.ts";
import { createDepthMemo } from "../analysis/depth-memo.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { type LetOut, letOut } from "../analysis/let-out.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { type TargetDepth, targetDepths } from "../analysis/target-depths.ts";
import { waterAndSpeed } from "../analysis/without-depth.ts";
import { lengthWords, tempWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { defaultUnit, findItem } from "../model/quantities.ts";
import { counterValue, counterWords } from "../reports/counter-words.ts";
import { isWhole } from "./hover.ts";
import type { Snapshot } from "./snapshot.ts";

/** The kind of these actions. */
export const SET_FOR_KIND = "refactor.rewrite";

/** Actions for the line; none without an `out` of its own, or where its depth isn't known. */
export function setForDepth(snapshot: Snapshot, lineIndex: number): CodeAction[] {
  const known = snapshot.depthAt(lineIndex);
  if (known === undefined || !isWhole(known.depth.event.line)) return [];
  const { day, depth } = known;
  const item = findItem(depth.event.line, "out");
  const typed = item === undefined ? undefined : typedLength(item, day.trip.gear, depth);
  if (item === undefined || typed === undefined) return [];
  return targetDepths(day.trip, depth).flatMap((target) => {
    const answer = lengthFor(day, depth, target.depthM, typed.unit);
    const edit = answer?.ok === true ? editOf(item, typed, answer) : undefined;
    if (answer?.ok !== true || edit === undefined || edit.newText === edit.before) return [];
    const { start, stop, newText } = edit;
    const range = { start: { line: lineIndex, character: start }, end: { line: lineIndex, character: stop } };
    return [
      {
        title: titleOf(day.trip.gear, target, answer),
        kind: SET_FOR_KIND,
        edit: { changes: { [snapshot.uri]: [{ range, newText }] } },
      },
    ];
  });
}

interface TypedLength {
  /** The unit that was written, else the book's. */
  readonly unit: string;
  readonly text: string;
  /** The one number; undefined where there are several, as in `10 colors 50 ft`. */
  readonly number: string | undefined;
}

function typedLength(
  { value, valueStart, stop }: Item,
  gear: Gear,
  { event }: LineDepth,
): TypedLength | undefined {
  const [part, ...more] = value.kind === "quantity" ? value.parts : [];
  const fallback = defaultUnit("length", event.line.verb, gear.defaults);
  const unit = (part?.unit ?? null) === null ? fallback : findUnit(part?.unit ?? "");
  if (part === undefined || unit === undefined) return undefined;
  const text = event.line.raw.slice(valueStart, stop);
  return { unit: unit.unit, text, number: more.length === 0 ? part.number : undefined };
}

function lengthFor(
  { trip, timeline }: TripAnalysis,
  depth: LineDepth,
  depthM: number,
  unit: string,
): LetOut | undefined {
  const { gear } = trip;
  const rig = gear.rigs.get(depth.rig);
  const water = waterAndSpeed(depth);
  if (rig === undefined || !water.ok) return undefined;
  const rods = timeline.spreadAfter.get(depth.event.lineIndex);
  return letOut({ gear, rig, setting: depth.setting, rods }, water, depthM, createDepthMemo(), unit);
}

/** The number alone where one was typed and one is needed; else the whole length. */
function editOf(
  { valueStart, stop }: Item,
  { text, number }: TypedLength,
  answer: LetOut & { ok: true },
): { start: number; stop: number; before: string; newText: string } | undefined {
  const at = number === undefined ? -1 : text.indexOf(number);
  if (number === undefined || answer.backing !== null || at < 0)
    return { start: valueStart, stop, before: text, newText: counterValue(answer) };
  const start = valueStart + at;
  return { start, stop: start + number.length, before: number, newText: String(answer.out) };
}

/** `Set for 55 ft (60 ft out)` */
function titleOf(gear: Gear, { depthM, because }: TargetDepth, answer: LetOut & { ok: true }): string {
  return `Set for ${lengthWords(gear, depthM)}${reason(gear, because)} (${counterWords(answer)} out)`;
}

function reason(gear: Gear, because: TargetDepth["because"]): string {
  if (because === "marks") return ", the middle of the marks";
  if (typeof because === "string") return "";
  const { species, tempC } = because;
  return `, ${species} water of ${tempWords(gear, tempC.low).replace(/ .*$/u, "")} to ${tempWords(gear, tempC.high)}`;
}
