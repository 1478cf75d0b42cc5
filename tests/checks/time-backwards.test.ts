import { describe, expect, test } from "vitest";
import { checkDay, checkFixOf, fixTitles } from "./check-day.ts";

test.each([
  `
  05:00 depart
  05:10 weather sky clear
  05:10 birds some
  `,
  `
  05:00 depart
  birds some
  05:10 weather sky clear
  `,
  // An approximate time may stand a quarter of an hour from its place.
  `
  05:30 depart
  ~05:20 weather sky clear
  05:40 birds some
  `,
  `
  05:30 depart
  ~05:50 weather sky clear
  05:40 birds some
  `,
  // A dated line is where it says.
  `
  2031-06-20 23:50 depart
  00:10 weather sky clear
  2031-06-22 00:05 birds some
  `,
  "05:44 depart\n05:34 weather sky clear sure",
  `
  05:44 depart
  05:34 weather sky clear
  ^^^^^ time-backwards 05:34 comes before 05:44, the line above.
  05:46 birds some
  `,
  `
  05:44 depart
  ~05:14 weather sky clear
  ^^^^^^ time-backwards 05:14 comes before 05:44, the line above.
  `,
  // The dock's lines too.
  `
  11:20 return
  11:10 box coho 1
  ^^^^^ time-backwards
  `,
  // The one that runs ahead is wrong, not all below it.
  `
  05:10 depart
  07:12 weather sky clear
  ^^^^^ time-backwards 07:12 comes after 05:14, the line below.
  05:14 birds some
  05:16 fleas some
  05:18 weeds some
  `,
  // The later of two that are swapped.
  `
  05:10 depart
  05:20 weather sky clear
  05:15 birds some
  ^^^^^ time-backwards 05:15 comes before 05:20, the line above.
  05:30 fleas some
  `,
  // One message for lines that belong together.
  `
  05:10 depart
  05:20 weather sky clear
  05:30 birds some
  05:40 birds none
  05:12 fleas some
  ^^^^^ time-backwards 05:12 comes before 05:40, the line above, and so does the 1 line after it.
  05:14 fleas none
  05:50 weeds some
  `,
  `
  23:40 depart
  23:50 weather sky clear
  00:10 birds some
  ^^^^^ time-backwards 00:10 comes before 23:50, the line above, and so does the 1 line after it; a time past midnight carries its date.
  00:20 fleas some
  `,
])("%s", (source) => {
  checkDay(source);
});

describe("fixes", () => {
  test("the line goes to its place, with the text of its note; comments stay", () => {
    const before = `
      05:10 depart
      # A remark.
      05:30 birds some
      05:20 note
        Gulls.
      05:40 fleas some
    `;
    const after = `
      05:10 depart
      05:20 note
        Gulls.
      # A remark.
      05:30 birds some
      05:40 fleas some
    `;
    checkFixOf("time-backwards", "opener", before, after, "Move it to its place");
  });

  test("a line that belongs before all others", () => {
    checkFixOf(
      "time-backwards",
      "opener",
      "05:10 depart\n05:00 birds some",
      "05:00 birds some\n05:10 depart",
    );
  });

  test("tomorrow's date on all lines past midnight, or yesterday's above", () => {
    const night = "23:40 depart\n00:10 birds some\n~00:20 fleas some\n";
    const later = "23:40 depart\n2031-06-22 00:10 birds some\n2031-06-22 ~00:20 fleas some\n";
    const sooner = "2031-06-20 23:40 depart\n00:10 birds some\n~00:20 fleas some\n";
    checkFixOf("time-backwards", "opener", night, later);
    checkFixOf("time-backwards", "opener", night, sooner, "2031-06-20");
  });

  test("several at once are one fix, since each would move the others' lines", () => {
    const before = "05:00 depart\n05:30 birds some\n05:10 fleas some\n05:40 birds none\n05:20 fleas none";
    const after = "05:00 depart\n05:10 fleas some\n05:20 fleas none\n05:30 birds some\n05:40 birds none";
    expect(fixTitles("time-backwards", "opener", before)).toEqual([
      "Move it to its place",
      "Move all 2 lines that are out of order to their places",
    ]);
    checkFixOf("time-backwards", "opener", before, after, "Move all 2");
  });
});
