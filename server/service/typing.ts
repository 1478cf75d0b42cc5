/** A line that is being typed. */
import type { Issue } from "../../grammar/issues.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import type { IndexedRow } from "../../grammar/vocabulary.ts";
import type { Snapshot } from "./snapshot.ts";

/** The line as far as it is typed, which is what decides. */
export interface Typing {
  readonly snapshot: Snapshot;
  readonly lineIndex: number;
  readonly line: ReadLine;
  readonly row: IndexedRow;
  readonly issue: Issue | null;
  /** Attributes that the line has behind the cursor. */
  readonly after: readonly string[];
}
