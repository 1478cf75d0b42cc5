/** Lines and columns of the LSP ⇄ places of the core. Both count UTF-16 code units from 0; humans count from 1. */
import type { Position, Range } from "vscode-languageserver-types";
import type { Place } from "../checks/check.ts";

/** A place as an LSP range. */
export function rangeOf(place: Place): Range {
  return {
    start: { line: place.lineIndex, character: place.start },
    end: { line: place.lineIndex, character: place.stop },
  };
}

/** True when two ranges share a position, ends included. */
export function rangesMeet(a: Range, b: Range): boolean {
  return !isBefore(a.end, b.start) && !isBefore(b.end, a.start);
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

/** `line:column` as an editor's status bar counts them, from 1. */
export function humanPosition(place: Place): string {
  return `${place.lineIndex + 1}:${place.start + 1}`;
}
