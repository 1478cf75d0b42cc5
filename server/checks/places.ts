/** Places of a line to point at. */
import type { Line, ReadLine } from "../../grammar/journal.ts";
import { findItem } from "../model/quantities.ts";
import type { Place } from "./check.ts";

/** The whole line without its blanks and comment. */
export function wholeLine(lineIndex: number, line: Line): Place {
  const start = line.raw.length - line.raw.trimStart().length;
  return { lineIndex, start, stop: Math.max(start, line.raw.trimEnd().length) };
}

/** The verb. */
export function verbPlace(lineIndex: number, line: ReadLine): Place {
  return { lineIndex, start: line.verbStart, stop: line.verbStop };
}

/** A slot, or the verb where the slot is missing. */
export function slotPlace(lineIndex: number, line: ReadLine, index = 0): Place {
  const slot = line.slots[index];
  return slot === undefined ? verbPlace(lineIndex, line) : { lineIndex, start: slot.start, stop: slot.stop };
}

/** An attribute with its value, or the verb where the line doesn't have it. */
export function itemPlace(lineIndex: number, line: ReadLine, word: string): Place {
  const item = findItem(line, word);
  return item === undefined ? verbPlace(lineIndex, line) : { lineIndex, start: item.start, stop: item.stop };
}

/** The date and clock at the start of a line; empty where there is none. */
export function stampPlace(lineIndex: number, line: ReadLine): Place {
  const stop = line.raw.slice(0, line.verbStart).trimEnd().length;
  const start = line.raw.length - line.raw.trimStart().length;
  return { lineIndex, start: Math.min(start, stop), stop };
}
