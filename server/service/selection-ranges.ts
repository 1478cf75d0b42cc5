/** What a selection grows to: the word, its attribute, the line, its block, its trip or boat, the file. */
import type { Position, Range, SelectionRange } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { Line } from "../../grammar/journal.ts";
import { ownerOf, ownersOf } from "../checks/owners.ts";
import type { Snapshot } from "./snapshot.ts";

/** For each position its ranges, the smallest first, each within the next. */
export function selectionRanges(snapshot: Snapshot, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => nested(rangesAt(snapshot, position)));
}

function rangesAt(snapshot: Snapshot, { line, character }: Position): Range[] {
  const { lines } = snapshot.parse.journal;
  const here = lines[line];
  const last = lines.length - 1;
  const file = {
    start: { line: 0, character: 0 },
    end: { line: last, character: lines[last]?.raw.length ?? 0 },
  };
  if (here === undefined) return [file];
  const on = ([start, stop]: readonly [number, number]): Range => ({
    start: { line, character: start },
    end: { line, character: stop },
  });
  return [
    ...piecesAt(here, character).map(on),
    ...(isBlank(here) ? [] : [blockAround(lines, line)]),
    ...ownerAround(snapshot, line),
    file,
  ];
}

/** Columns of the word at a column, its attribute with the value, the words of the line, the whole of it. */
function piecesAt(line: Line, column: number): (readonly [number, number])[] {
  const { raw } = line;
  const around = (start: number, stop: number): boolean => start <= column && column <= stop;
  const word = [...raw.matchAll(/"(?:[^"]|"")*"|[^\s,]+/gu)]
    .map((match) => [match.index, match.index + match[0].length] as const)
    .findLast(([start, stop]) => around(start, stop));
  const items = isRead(line) ? line.items.filter(({ start, stop }) => around(start, stop)) : [];
  const item = items.at(-1);
  const comment = isRead(line) ? (line.comment?.length ?? 0) : 0;
  const [indent, words] = [raw.length - raw.trimStart().length, raw.slice(0, raw.length - comment).trimEnd()];
  const pieces: (readonly [number, number] | undefined)[] = [
    word,
    item === undefined ? undefined : [item.start, item.stop],
    [indent, words.length],
    [indent, raw.trimEnd().length],
    [0, raw.length],
  ];
  return pieces.flatMap((piece) => (piece !== undefined && around(...piece) ? [piece] : []));
}

const isBlank = (line: Line | undefined): boolean => line === undefined || line.kind === "blank";

/** The lines around one that no blank line parts from it. */
function blockAround(lines: readonly Line[], line: number): Range {
  let [first, last] = [line, line];
  while (!isBlank(lines[first - 1])) first--;
  while (!isBlank(lines[last + 1])) last++;
  return {
    start: { line: first, character: 0 },
    end: { line: last, character: lines[last]?.raw.length ?? 0 },
  };
}

/** The trip or boat that a line stands under, from its opener to its last line that says something. */
function ownerAround({ analysis, parse }: Snapshot, line: number): Range[] {
  const owner = ownerOf(analysis, line);
  if (owner === undefined) return [];
  const { lines } = parse.journal;
  const owners = ownersOf(analysis);
  let last = (owners[owners.indexOf(owner) + 1]?.openerIndex ?? lines.length) - 1;
  while (last > line && isBlank(lines[last])) last--;
  const end = { line: last, character: lines[last]?.raw.length ?? 0 };
  return [{ start: { line: owner.openerIndex, character: 0 }, end }];
}

/** Chains ranges, the outermost last; one that does not hold what is inside it, or is the same, is left out. */
function nested(ranges: readonly Range[]): SelectionRange {
  const [first, ...more] = ranges;
  const chain = first === undefined ? [] : [first];
  for (const range of more) {
    const inner = chain.at(-1);
    if (inner !== undefined && holds(range, inner) && !holds(inner, range)) chain.push(range);
  }
  return chain.reduceRight<SelectionRange | undefined>(
    (parent, range) => (parent === undefined ? { range } : { range, parent }),
    undefined,
  ) as SelectionRange;
}

function holds(outer: Range, inner: Range): boolean {
  const isBefore = (a: Position, b: Position): boolean =>
    a.line < b.line || (a.line === b.line && a.character < b.character);
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}
