/** A text to write, and the change that writes it. */
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Fix, FixEdit } from "./check.ts";

/** What may have been meant. */
export interface Way {
  readonly text: string;
  readonly edit: FixEdit;
}

/** One fix for each way; the only one is preferred. */
export function writeFixes(ways: readonly Way[]): Fix[] {
  return ways.map(({ text, edit }) => ({
    title: FIX_TITLES.write(text),
    edits: [edit],
    isPreferred: ways.length === 1,
  }));
}
