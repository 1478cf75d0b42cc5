import { describe, expect, test } from "vitest";
import { checkFixOf, checkTrolling, fixTitles } from "./check-day.ts";

test.each([
  "05:30 move P1 out 70 ft",
  "05:30 pull P1\n05:40 set P1 out 70 ft",
  // A fish, a tangle or a break-off took it out.
  "05:30 strike P1\n05:35 lost P1 fish\n05:40 set P1 out 70 ft",
  "05:30 tangle P1 with S1\n05:40 set P1 out 70 ft",
  "05:30 broke P1 lure glow-spoon\n05:40 set P1 out 70 ft lure mini-spoon",
  "05:30 set P1 out 70 ft sure",
  `
  05:30 set P1 out 70 ft
            ^^ already-set P1 is fishing already, since 05:00: was it moved, or is a pull missing?
  `,
  `
  05:30 strike P1
  05:35 lost P1 fish
  05:40 again P1
  05:45 set P1 out 70 ft
            ^^ already-set P1 is fishing already, since 05:40: was it moved, or is a pull missing?
  `,
])("%s", (source) => {
  checkTrolling(source);
});

describe("fixes", () => {
  test.each([
    ["05:30 set P1 out 70 ft", "05:30 move P1 out 70 ft", "move"],
    ["05:30 set P1 out 70 ft lure mini-spoon", "05:30 again P1 out 70 ft lure mini-spoon", "again"],
    ["05:30 set P1 out 70 ft", "05:30 pull P1\n05:30 set P1 out 70 ft", "pull"],
  ])("%j → %j", (before, after, title) => {
    checkFixOf("already-set", "trolling", before, after, title);
  });

  test("a move takes no lure", () => {
    expect(fixTitles("already-set", "trolling", "05:30 set P1 out 70 ft lure mini-spoon")).toEqual([
      "Write again",
      'Add "05:30 pull P1" above',
    ]);
  });
});
