/** Completion looks at few lines, however long the file: once a version everything is indexed, then it is looked up. */
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { NO_THRESHOLDS } from "../../server/model/thresholds.ts";
import { completion } from "../../server/service/completion.ts";
import { Snapshot } from "../../server/service/snapshot.ts";
import { BOOK, BOOK_URI, MORNING, URI } from "./open-service.ts";

const TYPED = [
  "06:20 ",
  "06:20 set ",
  "06:20 move ",
  "06:20 set P1 ",
  "06:20 catch C1 ",
  "06:20 set C1 lure ",
  "",
];

/** How many lines and events of the file are looked at to complete each typed line at its end, after a first time. */
function looksAt(text: string): number {
  let [looks, total] = [0, 0];
  const counted = <T extends object>(list: readonly T[]): readonly T[] =>
    new Proxy(list, {
      get: (target, key, self) => {
        if (typeof key === "string" && /^\d+$/u.test(key)) looks++;
        return Reflect.get(target, key, self);
      },
    });
  for (const typed of TYPED) {
    const parsed = parse(text + typed);
    const lines = counted(parsed.journal.lines) as typeof parsed.journal.lines;
    const file = { uri: URI, version: 1, parse: { ...parsed, journal: { ...parsed.journal, lines } } };
    const books = [{ uri: BOOK_URI, parse: parse(BOOK) }];
    const snapshot = new Snapshot(file, books, createDepthMemo(), {
      severities: new Map(),
      thresholds: NO_THRESHOLDS,
      today: undefined,
    });
    for (const { trip } of snapshot.analysis.trips) Object.assign(trip, { events: counted(trip.events) });
    const position = { line: text.split("\n").length - 1, character: typed.length };
    const first = completion(snapshot, position);
    expect(first).not.toEqual([]);
    looks = 0;
    expect(completion(snapshot, position)).toEqual(first);
    total += looks;
  }
  return total;
}

/** One long day. */
const dayOf = (lines: number): string =>
  MORNING +
  Array.from(
    { length: lines },
    (_, n) => `06:${15 + (n % 3)} set C1 out ${60 + (n % 40)} ft setback 20 ft lure glow-spoon dial 2\n`,
  ).join("");

test("a day of ten times the lines costs hardly more looks", () => {
  const [short, long] = [looksAt(dayOf(300)), looksAt(dayOf(3000))];
  expect(short).toBeGreaterThan(0);
  expect(long).toBeLessThan(short + 60);
});
