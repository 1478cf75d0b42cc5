/** The measures of a line in another unit: feet as meters, mph as knots, with the same meaning to the digit written. */
import { type CodeAction, CodeActionKind, type Position, type TextEdit } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { Item, Part, ReadLine, Value } from "../../grammar/journal.ts";
import { readLine } from "../../grammar/read-line.ts";
import { findUnit, toSi, type UnitRow } from "../../grammar/units.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { stepOf, writtenIn } from "../model/written-in.ts";
import { isWithin } from "./name-at.ts";
import type { Snapshot } from "./snapshot.ts";

/** What a unit may be written as. Colors count leadcore and time is time everywhere: they stay. */
const OTHERS: Readonly<Record<string, readonly string[]>> = {
  ft: ["m"],
  m: ["ft"],
  yd: ["ft", "m"],
  fathoms: ["ft", "m"],
  in: ["cm"],
  cm: ["in"],
  mm: ["in"],
  mi: ["nmi", "km"],
  nmi: ["mi", "km"],
  km: ["mi", "nmi"],
  mph: ["kn", "km/h"],
  kn: ["mph", "km/h"],
  "km/h": ["mph", "kn"],
  "m/s": ["mph", "kn"],
  F: ["C"],
  C: ["F"],
  lb: ["kg"],
  kg: ["lb"],
  oz: ["g"],
  g: ["oz"],
  hPa: ["inHg"],
  inHg: ["hPa"],
};

/** A measure before and after. */
interface Conversion {
  readonly edit: { readonly start: number; readonly stop: number; readonly text: string };
  readonly before: string;
}

/** An action for each unit of the line and each unit that it may be written as; those of the measure at the cursor only, where there is one. */
export function convertUnits(snapshot: Snapshot, { line: lineIndex, character }: Position): CodeAction[] {
  const line = snapshot.parse.journal.lines[lineIndex];
  if (line === undefined || !isRead(line) || snapshot.parse.issues[lineIndex] !== null) return [];
  const measured = line.items.filter((item) => unitsIn(item.value).length > 0);
  const here = measured.filter(({ start, stop }) => isWithin(character, start, stop));
  const units = new Set((here.length > 0 ? here : measured).flatMap((item) => unitsIn(item.value)));
  return [...units].flatMap((from) =>
    (OTHERS[from] ?? []).flatMap((to) => {
      const done = line.items.flatMap((item) => converted(line, item, from, to) ?? []);
      const [first] = done;
      if (first === undefined || !meansTheSame(snapshot, lineIndex, line, done)) return [];
      const edits = done.map(({ edit }) => editOf(lineIndex, edit));
      return [
        {
          title: `Write ${from} as ${to} (${first.before} is ${first.edit.text})`,
          kind: CodeActionKind.RefactorRewrite,
          edit: { changes: { [snapshot.uri]: edits } },
        },
      ];
    }),
  );
}

function editOf(line: number, { start, stop, text }: Conversion["edit"]): TextEdit {
  return { range: { start: { line, character: start }, end: { line, character: stop } }, newText: text };
}

/** The units that a value's measures are written in: of each the first and biggest. */
function unitsIn(value: Value): string[] {
  return measuresOf(value).flatMap((parts) => parts[0]?.unit ?? parts.at(-1)?.unit ?? []);
}

function measuresOf(value: Value): (readonly Part[])[] {
  if (value.kind === "quantity") return [value.parts];
  if (value.kind === "range") return [value.high];
  return value.kind === "point" ? [value.depth, value.temp] : [];
}

function converted({ raw }: ReadLine, item: Item, from: string, to: string): Conversion | undefined {
  const unit = findUnit(to);
  const text = unit === undefined ? undefined : valueIn(item.value, from, unit);
  const before = raw.slice(item.valueStart, item.stop);
  if (text === undefined || text === before) return undefined;
  return { before, edit: { start: item.valueStart, stop: item.stop, text } };
}

/** A value with its measures in `from` written in another unit; undefined where it has none. */
function valueIn(value: Value, from: string, unit: UnitRow): string | undefined {
  switch (value.kind) {
    case "quantity":
      return measureIn(value.parts, from, unit);
    case "range": {
      const last = value.high.at(-1)?.unit ?? null;
      const isShared = value.low.every((part) => part.unit === null);
      const low = isShared ? value.low.map((part) => ({ ...part, unit: last })) : value.low;
      const [lowText, highText] = [measureIn(low, from, unit), measureIn(value.high, from, unit)];
      if (lowText === undefined || highText === undefined) return undefined;
      return `${isShared ? lowText.split(" ")[0] : lowText} to ${highText}`;
    }
    case "point": {
      const [depth, temp] = [measureIn(value.depth, from, unit), measureIn(value.temp, from, unit)];
      if (depth === undefined && temp === undefined) return undefined;
      return `${depth ?? partsText(value.depth)} ${temp ?? partsText(value.temp)}`;
    }
    default:
      return undefined;
  }
}

/** A measure as one number in another unit; undefined when it isn't written in `from`, or counts colors. */
function measureIn(parts: readonly Part[], from: string, unit: UnitRow): string | undefined {
  if (parts[0]?.unit !== from) return undefined;
  let sumSi = 0;
  let stepSi = Number.POSITIVE_INFINITY;
  for (const part of parts) {
    const own = part.unit === null ? undefined : findUnit(part.unit);
    if (own === undefined || own.dimension !== unit.dimension || own.unit === "colors") return undefined;
    sumSi += toSi(Number(part.number), own);
    stepSi = Math.min(stepSi, stepOf(part.number, own));
  }
  const number = writtenIn(sumSi, stepSi, unit);
  return number === undefined ? undefined : `${number} ${unit.unit}`;
}

function partsText(parts: readonly Part[]): string {
  return parts.map(({ number, unit }) => (unit === null ? number : `${number} ${unit}`)).join(" ");
}

/** The line still reads without an issue, word for word: no measure has joined the one beside it. */
function meansTheSame(
  snapshot: Snapshot,
  lineIndex: number,
  line: ReadLine,
  done: readonly Conversion[],
): boolean {
  const text = done.reduceRight(
    (raw, { edit }) => raw.slice(0, edit.start) + edit.text + raw.slice(edit.stop),
    line.raw,
  );
  const { line: after, issue } = readLine(
    text,
    line.end,
    snapshot.parse.blocks[lineIndex] ?? "margin",
    VOCABULARY,
  );
  const words = ({ items }: ReadLine): string =>
    items.map(({ word, value }) => `${word} ${value.kind}`).join();
  return issue === null && isRead(after) && words(after) === words(line);
}
