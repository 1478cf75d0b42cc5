/** The last value of each attribute on a rig before a line, as it was written: the best guess for the next one. */
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { canonicalLine } from "../../grammar/print.ts";
import type { Snapshot } from "./snapshot.ts";

/** How far up to look. */
const MOST_LINES = 2000;
const CARRIED = new Set(["out", "setback", "lure", "above", "dial", "board", "leader", "flasher", "slider"]);

/** Values by attribute, canonically written; empty for lines without a rig. */
export function lastValues(
  snapshot: Snapshot,
  lineIndex: number,
  line: ReadLine,
): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  const rig = line.slots[0]?.text;
  if (rig === undefined) return values;
  const { lines } = snapshot.parse.journal;
  for (let index = lineIndex - 1; index >= Math.max(0, lineIndex - MOST_LINES); index--) {
    const other = lines[index];
    if (other === undefined || !isRead(other) || other.slots[0]?.text !== rig) continue;
    if (other.verb === "rig") break;
    for (const item of other.items) {
      if (CARRIED.has(item.word) && !values.has(item.word))
        values.set(item.word, valueText(other, item.word));
    }
  }
  return values;
}

/** The attribute's value alone, in canonical form. */
function valueText(line: ReadLine, word: string): string {
  const items = line.items.filter((item) => item.word === word).map((item) => ({ ...item, bare: true }));
  const alone = { ...line, kind: "fact" as const, date: null, clock: null, slots: [], items, comment: null };
  return canonicalLine(alone).slice(line.verb.length + 1);
}
