import { expect, test } from "vitest";
import { longestRising } from "../../server/model/longest-rising.ts";
import { timeDisorders } from "../../server/model/time-order.ts";
import { readTrip } from "./read-trip.ts";

/** Disorders as `afternoon 3,4 < 2`: the slip, the lines that have it, the line they disagree with; from 1. */
test.each<[string, string[]]>([
  ["05:00 birds some\n05:00 fleas some\n06:00 weeds some", []],
  ["05:44 birds some\n05:34 fleas some\n05:46 weeds some", ["before 3 < 2"]],
  ["05:10 birds some\n07:12 fleas some\n05:14 weeds some\n05:16 drift", ["ahead 3 < 4"]],
  ["11:50 birds some\n1:10 fleas some\n2:30 weeds some", ["afternoon 3,4 < 2"]],
  ["12:50 birds some\n1:10 fleas some\n13:20 weeds some\n2:00 drift", ["afternoon 3 < 2", "afternoon 5 < 4"]],
  ["20:30 birds some\n9:15 fleas some", ["afternoon 3 < 2"]],
  ["23:50 birds some\n00:10 fleas some\n00:20 weeds some", ["next-day 3,4 < 2"]],
  ["23:50 birds some\n2031-06-22 00:10 fleas some", []],
  // Dated by hand, it is no night without its date.
  ["23:50 birds some\n2031-06-21 00:10 fleas some", ["before 3 < 2"]],
  // Eleven hours' pause is no slip.
  ["09:00 birds some\n08:00 fleas some", ["before 3 < 2"]],
  // A single line far ahead explains it better than an afternoon to the end of the day.
  ["07:00 birds some\n17:12 fleas some\n07:14 weeds some\n07:20 drift", ["ahead 3 < 4"]],
  ["birds some\n05:00 fleas some\nweeds some\n04:00 drift", ["before 5 < 3"]],
])("%j", (lines, disorders) => {
  const found = timeDisorders(readTrip(lines)).map(({ slip, events, against }) => {
    const numbers = events.map((event) => event.lineIndex + 1).join(",");
    return `${slip} ${numbers} < ${against.lineIndex + 1}`;
  });
  expect(found).toEqual(disorders);
});

test.each<[number[], number[]]>([
  [[], []],
  [[3], [0]],
  [
    [1, 2, 2, 3],
    [0, 1, 2, 3],
  ],
  [
    [1, 3, 2, 4],
    [0, 1, 3],
  ],
  [[3, 2, 1], [0]],
  [
    [5, 1, 2, 9, 3],
    [1, 2, 3],
  ],
  [
    [2, 7, 3, 4],
    [0, 2, 3],
  ],
])("the longest rising part of %j", (values, places) => {
  expect([...longestRising(values)]).toEqual(places);
});
