import { expect, test } from "vitest";
import { depthOf } from "./depth-of.ts";

/** The speed that a line's depth leans on, in tenths of a mile an hour, and the bottom in feet. */
function usedBy(lines: string): { mph: number | null; bottomFt: number | null } {
  const { speed, bottom } = depthOf(lines);
  const rounded = (value: number | undefined, unit: number, digits: number): number | null =>
    value === undefined ? null : Number((value / unit).toFixed(digits));
  return { mph: rounded(speed?.value, 0.44704, 1), bottomFt: rounded(bottom?.waterM, 0.3048, 0) };
}

test.each<[string, string, ReturnType<typeof usedBy>]>([
  [
    "a line of the afternoon takes the afternoon's readings, not the morning's",
    "12:40 surface speed 2.8 mph\n12:45 sonar bottom 140 ft\n12:50 pull all\n1:10 set P1 out 60 ft",
    { mph: 2.8, bottomFt: 140 },
  ],
  [
    "and so do readings that slipped with it",
    "12:50 birds some\n1:05 surface speed 2.8 mph\n1:06 sonar bottom 140 ft\n1:10 set P1 out 60 ft",
    { mph: 2.8, bottomFt: 140 },
  ],
  [
    "a line past midnight without its date takes the night's",
    "23:40 surface speed 1.8 mph\n23:45 sonar bottom 40 ft\n00:10 set P1 out 60 ft",
    { mph: 1.8, bottomFt: 40 },
  ],
  [
    "a line out of order that no slip explains is taken at its word",
    "05:30 surface speed 2.8 mph\n05:20 set P1 out 60 ft",
    { mph: 2.3, bottomFt: null },
  ],
])("%s", (_, lines, used) => {
  expect(usedBy(lines)).toEqual(used);
});
