import { describe, expect, test } from "vitest";
import { checkFile, checkFixOf, fixTitles } from "./check-day.ts";

const NIGHT = 'trip 2031-11-02 "Bright Penny"\n';

test.each([
  `${NIGHT}00:59 depart\n01:30-04:00 birds some\n01:30-05:00 birds none\n02:00 return`,
  `${NIGHT}01:30 birds some\n^^^^^ clock-repeated 01:30 came twice that night, when the clocks went back: 01:30-04:00 or 01:30-05:00?`,
  // Back to one o'clock is not out of order; nobody can tell yet.
  `${NIGHT}01:50 birds some\n^^^^^ clock-repeated\n01:10 birds none\n^^^^^ clock-repeated\n02:10 return`,
])("%j", (source) => {
  checkFile(source);
});

describe("fixes", () => {
  test("one line", () => {
    checkFixOf("clock-repeated", "file", `${NIGHT}~1:30 birds some`, `${NIGHT}~1:30-04:00 birds some`);
    const second = `${NIGHT}1:30-05:00 birds some`;
    checkFixOf("clock-repeated", "file", `${NIGHT}1:30 birds some`, second, "-05:00");
  });

  const hour = `${NIGHT}01:20 birds some\n01:50 birds none\n01:10 fleas some\n02:10 return`;

  test("where the times turn back, all in their turn", () => {
    const after = `${NIGHT}01:20-04:00 birds some\n01:50-04:00 birds none\n01:10-05:00 fleas some\n02:10 return`;
    checkFixOf("clock-repeated", "file", hour, after, "in their turn");
    expect(fixTitles("clock-repeated", "file", hour)).toEqual([
      "Write 01:20-04:00*",
      "Write 01:20-05:00",
      "Write the offsets on all 3 lines of that hour, in their turn",
    ]);
  });

  test("where they don't, all with one or the other", () => {
    const both = `${NIGHT}01:20 birds some\n01:50 birds none`;
    const after = `${NIGHT}01:20-05:00 birds some\n01:50-05:00 birds none`;
    checkFixOf("clock-repeated", "file", both, after, "-05:00 on all 2");
  });
});
