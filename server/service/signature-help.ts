/** What a line may say, shown while it is typed: its verb, the names it must have, its attributes in any order. */
import type { ParameterInformation, Position, SignatureHelp } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { readLine } from "../../grammar/read-line.ts";
import { findItem, type IndexedRow, type ItemRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { code } from "./markdown.ts";
import { isWithin, rowOf } from "./name-at.ts";
import { openSlot, openWord } from "./open-word.ts";
import type { Snapshot } from "./snapshot.ts";
import { typedWord } from "./typed-word.ts";

/** The last parameter: what stands there is said of all attributes, and it is active between them. */
const ANY_ORDER: ParameterInformation = {
  label: "in any order",
  documentation: "What follows the names may stand in any order; what is in brackets may be left out.",
};

/** The signature of the line at a position, behind its verb; null in comments, notes and lines that can't be read. */
export function signatureHelp(
  snapshot: Snapshot,
  { line: lineIndex, character }: Position,
): SignatureHelp | null {
  const line = snapshot.parse.journal.lines[lineIndex];
  const block = snapshot.parse.blocks[lineIndex] ?? "margin";
  if (line === undefined || line.kind === "note-text") return null;
  const typed = typedWord(line.raw, character);
  if (typed === undefined) return null;
  const before = readLine(typed.before, "", block, VOCABULARY).line;
  const row = isRead(before) ? rowOf(before) : undefined;
  if (!isRead(before) || row === undefined || row.slots.length + row.items.length === 0) return null;
  const parameters = parametersOf(row);
  const active = activeOf(before, row, typed.word) ?? itemAround(line, row, character);
  const last = parameters.length - 1;
  const signature = {
    label: [row.verb, ...parameters.map(({ label }) => label)].join(" "),
    documentation: { kind: "markdown" as const, value: `${row.doc}\n\n${code(row.example)}` },
    parameters,
    activeParameter: Math.min(active ?? last, last),
  };
  return { signatures: [signature], activeSignature: 0, activeParameter: signature.activeParameter };
}

function parametersOf(row: IndexedRow): ParameterInformation[] {
  const slots = row.slots.map(({ label, rest }) => ({ label: `<${label}>${rest ? " …" : ""}` }));
  const items = row.items.map((item) => ({ label: itemLabel(item, row.needs), documentation: item.doc }));
  return [...slots, ...items, ...(items.length > 1 ? [ANY_ORDER] : [])];
}

/** `[out length]`, `<point depth temperature> …`: what may be left out in brackets, what has to be there in angles. */
function itemLabel(item: ItemRow, needs: readonly string[]): string {
  const words = `${item.word}${valueLabel(item)}`;
  return `${needs.includes(item.word) ? `<${words}>` : `[${words}]`}${item.many ? " …" : ""}`;
}

function valueLabel({ type }: ItemRow): string {
  switch (type.kind) {
    case "flag":
      return "";
    case "quantity":
      return type.range ? ` ${type.dimension}, or range` : ` ${type.dimension}`;
    case "number":
      return type.what === "count" ? " number" : ` ${type.what}`;
    case "name":
      return ` ${type.of}`;
    case "clock":
      return type.range ? " time to time" : " time";
    case "point":
      return " depth temperature";
    case "position":
    case "date":
      return ` ${type.kind}`;
  }
}

/** The parameter that is being typed: a name, an attribute begun, or the number of one that lacks its unit. */
function activeOf(before: ReadLine, row: IndexedRow, word: string): number | undefined {
  const slot = openSlot(before, row);
  if (slot !== undefined) return row.slots.indexOf(slot);
  const open = openWord(before, row);
  if (open === "range") return indexOfItem(row, lastWordOf(before, row));
  if (open !== undefined) return indexOfItem(row, open.word);
  const begun = findItem(row, word);
  if (begun !== undefined) return indexOfItem(row, begun.word);
  const last = before.items.at(-1);
  const part = last?.value.kind === "quantity" ? last.value.parts.at(-1) : undefined;
  return part?.unit === null ? indexOfItem(row, last?.word ?? "") : undefined;
}

/** The last attribute's word on a line; one whose range is half typed is not read yet. */
function lastWordOf({ raw }: ReadLine, row: IndexedRow): string {
  const words = raw.split(/\s+/u).flatMap((word) => findItem(row, word)?.word ?? []);
  return words.at(-1) ?? "";
}

/** The attribute that the cursor stands in. */
function itemAround(line: { kind: string }, row: IndexedRow, column: number): number | undefined {
  const read = line as ReadLine;
  const items = line.kind === "fact" || line.kind === "property" ? read.items : [];
  const item = items.find(({ start, stop }) => isWithin(column, start, stop) && column > start);
  return item === undefined ? undefined : indexOfItem(row, item.word);
}

function indexOfItem(row: IndexedRow, word: string): number | undefined {
  const index = row.items.findIndex((item) => item.word === word);
  return index < 0 ? undefined : row.slots.length + index;
}
