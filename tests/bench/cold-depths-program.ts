/** What a process does that just started and is asked for the depths of a day: run by `cold-depths.ts`, bundled. */
import { readFileSync } from "node:fs";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";

/** Reads a journal, then times its depths alone: every set, move and again line, with its bands. Milliseconds. */
export function timeDepths(path: string): { lines: number; milliseconds: number } {
  const { trips } = analyzeJournal({ uri: "file:///day.trip", parse: parse(readFileSync(path, "utf8")) }, []);
  for (const { timeline } of trips) timeline.ordered.at(0);
  const start = performance.now();
  let lines = 0;
  for (const { depths } of trips)
    for (const { ball, lure, weight } of depths) {
      const places = [ball, lure, weight].filter((place) => place != null);
      if (places.some(({ lowM, highM }) => Number.isFinite(highM - lowM))) lines += 1;
    }
  return { lines, milliseconds: performance.now() - start };
}
