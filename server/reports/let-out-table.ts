/** The let-out table in words: rows are the depths wanted, columns the captain's own rigs. */
import type { LetOut } from "../analysis/let-out.ts";
import type { LetOutColumn } from "../analysis/let-out-columns.ts";
import { lengthUnit, lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { counterCell, counterWords } from "./counter-words.ts";
import { placeWords } from "./place-words.ts";

/** A table in words, for any form it is shown in. */
export interface LetOutTable {
  readonly title: string;
  /** What holds for all of it, a sentence an entry. */
  readonly facts: readonly string[];
  readonly heads: readonly string[];
  readonly rows: readonly { readonly depth: string; readonly cells: readonly string[] }[];
  /** What the marks in the cells stand for, in their order from 1. */
  readonly notes: readonly string[];
  /** How well it is known. */
  readonly sure: readonly string[];
  readonly caution: string;
}

export const LET_OUT_TITLE = "Cable to set";
export const LET_OUT_CAUTION =
  "Lengths are estimates for a straight tow: not for navigation, not for clearing the bottom.";

/** Puts columns into words; rigs whose columns are alike share one. `about` says at what speed, of what day. */
export function letOutTable(
  gear: Gear,
  depthsM: readonly number[],
  columns: readonly LetOutColumn[],
  about: readonly string[],
): LetOutTable {
  const notes: string[] = [];
  const shown = grouped(columns).map((group) => shownColumn(gear, group, notes));
  return {
    title: LET_OUT_TITLE,
    facts: [...about, unitFact(gear, columns), ...backingFacts(gear, columns), ...calibrationFacts(columns)],
    heads: shown.map(({ head }) => head),
    rows: depthsM.map((depthM, row) => ({
      depth: lengthWords(gear, depthM),
      cells: shown.map(({ cells }) => cells[row] ?? ""),
    })),
    notes,
    sure: shown.flatMap(({ sure }) => sure),
    caution: LET_OUT_CAUTION,
  };
}

interface Group {
  readonly names: string;
  readonly column: LetOutColumn;
}

function grouped(columns: readonly LetOutColumn[]): Group[] {
  const groups = new Map<string, LetOutColumn[]>();
  for (const column of columns) {
    const { line, cells, calibration } = column;
    // Ranges cost more than depths: that of one row tells whether the rigs are equally well known.
    const said = cells.map((cell) => (cell.ok ? counterWords(cell) : whyNone(line.gear, cell)));
    const key = JSON.stringify([line.rig.kind, calibration?.of, said, sureSentence(line.gear, "", column)]);
    groups.set(key, [...(groups.get(key) ?? []), column]);
  }
  return [...groups.values()].flatMap((group) => {
    const [column] = group;
    return column === undefined ? [] : [{ names: group.map(({ line }) => line.rig.name).join(", "), column }];
  });
}

function shownColumn(
  gear: Gear,
  { names, column }: Group,
  notes: string[],
): { head: string; cells: string[]; sure: string[] } {
  const of = column.cells.find((cell) => cell.of !== undefined)?.of;
  const cells = column.cells.map((cell) => {
    if (cell.ok) return counterCell(cell);
    const why = whyNone(gear, cell);
    // Some reasons name the rig themselves.
    const note = why.startsWith(names) ? `${why}.` : `${names}: ${why}.`;
    const known = notes.indexOf(note);
    return `—${mark(known < 0 ? notes.push(note) : known + 1)}`;
  });
  return { head: of === "ball" ? `${names} ball` : names, cells, sure: sureSentence(gear, names, column) };
}

/** `not reachable at this speed; the deepest is 38 ft with 300 ft out` */
function whyNone(gear: Gear, { why, deepest }: LetOut & { ok: false }): string {
  if (deepest === undefined) return why;
  return `${why}; the deepest is ${lengthWords(gear, deepest.depthM)} with ${counterWords(deepest)} out`;
}

/** The range at the deepest row that is reached: at the others it is narrower. */
function sureSentence(gear: Gear, names: string, { cells }: LetOutColumn): string[] {
  const last = cells.findLast((cell) => cell.ok);
  if (last === undefined || !last.ok || last.band === undefined) return [];
  return [`${names} with ${counterWords(last)} out: ${last.of} about ${placeWords(gear, last.band)}.`];
}

const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A footnote's number, raised. */
export function mark(number: number): string {
  return [...String(number)].map((digit) => RAISED[Number(digit)]).join("");
}

/** What the figures in the cells count. */
function unitFact(gear: Gear, columns: readonly LetOutColumn[]): string {
  const unit = lengthUnit(gear);
  const words = unit === "m" ? "Meters" : unit === "ft" ? "Feet" : unit;
  const has = (is: (column: LetOutColumn) => boolean, fact: string): string => (columns.some(is) ? fact : "");
  return [
    `${words} on the counter`,
    has(({ line }) => line.rig.kind === "leadcore", ", leadcore in colors"),
    has(({ line }) => line.rig.kind === "stacked", ", stacked rods by the counter of their ball"),
    ": so much brings the lure to the depth",
    has(({ cells }) => cells.some(({ of }) => of === "ball"), ", or the ball where the heading says so"),
    ".",
  ].join("");
}

/** Leadcore's backing stands in its cells; of other lines a length may run on into it unseen. */
function backingFacts(gear: Gear, columns: readonly LetOutColumn[]): string[] {
  return columns.flatMap(({ line: { rig }, cells }) => {
    const { holdsM, kind } = rig;
    if (holdsM === undefined || kind === "leadcore") return [];
    const isBeyond = cells.some((cell) => cell.ok && cell.outM > holdsM);
    return isBeyond ? [`${rig.name} holds ${lengthWords(gear, holdsM)}; beyond that is its backing.`] : [];
  });
}

function calibrationFacts(columns: readonly LetOutColumn[]): string[] {
  const checked = columns.flatMap(({ line, calibration }) =>
    calibration === undefined
      ? []
      : [`${line.rig.name}${dated(line.rig.name, calibration.of, calibration.origin.from)}`],
  );
  const unchecked = columns.flatMap(({ line, calibration }) =>
    calibration === undefined ? [line.rig.name] : [],
  );
  return [
    ...(checked.length === 0 ? [] : [`Calibrated: ${checked.join(", ")}.`]),
    ...(unchecked.length === 0 ? [] : [`Never checked on this boat, so less sure: ${unchecked.join(", ")}.`]),
  ];
}

/** ` (2031-06-08)`, ` (lead-27, 2031-05-03)` */
function dated(rig: string, of: string, from: string | null): string {
  const parts = [...(of === rig ? [] : [of]), ...(from === null ? [] : [from])];
  return parts.length === 0 ? "" : ` (${parts.join(", ")})`;
}
