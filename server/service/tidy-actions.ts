/** The canonical form of a line, or of a whole trip, as an action: only lines that change are touched. */
import type { TextEdit } from "vscode-languageserver-types";
import { formatLine } from "../../grammar/format.ts";
import type { Line } from "../../grammar/journal.ts";
import { ownerOf, ownersOf } from "../checks/owners.ts";
import type { Snapshot } from "./snapshot.ts";

/** Edits that bring the lines from one to another into canonical form. */
export function tidyEdits(snapshot: Snapshot, first: number, last: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (let line = first; line <= last; line++) {
    const raw = snapshot.parse.journal.lines[line]?.raw ?? "";
    if (isTidy(snapshot, line)) continue;
    const range = { start: { line, character: 0 }, end: { line, character: raw.length } };
    edits.push({ range, newText: formatLine(snapshot.parse, line) });
  }
  return edits;
}

/** The lines of the trip that a line stands in, from its opener; undefined outside of trips. */
export function tripLines(
  { analysis, parse }: Snapshot,
  lineIndex: number,
): [first: number, last: number] | undefined {
  const owner = ownerOf(analysis, lineIndex);
  if (owner?.trip === undefined) return undefined;
  const owners = ownersOf(analysis);
  const next = owners[owners.indexOf(owner) + 1]?.openerIndex ?? parse.journal.lines.length;
  return [owner.openerIndex, next - 1];
}

/** True when at least one of the lines is not in canonical form. */
export function isUntidy(snapshot: Snapshot, first: number, last: number): boolean {
  for (let line = first; line <= last; line++) if (!isTidy(snapshot, line)) return true;
  return false;
}

/** Lines that were looked at; a line that is the very same is as tidy as before. */
const known = new WeakMap<Line, boolean>();

function isTidy({ parse }: Snapshot, lineIndex: number): boolean {
  const line = parse.journal.lines[lineIndex];
  if (line === undefined) return true;
  const tidy = known.get(line) ?? formatLine(parse, lineIndex) === line.raw;
  known.set(line, tidy);
  return tidy;
}
