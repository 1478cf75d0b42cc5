import { describe, test } from "vitest";
import { checkFindings, checkFix } from "./check-findings.ts";

test.each([
  'trip 2031-06-21 "Bright Penny"\n05:14 set P1 out 72 ft',
  'rig Q1 downrigger\ntrip 2031-06-21 "Tin Cup"\n05:14 set Q1 out 72 ft',
  'boat "Tin Cup"\nrig Q1 downrigger\ntrip 2031-06-21 "Tin Cup"\n05:14 set Q1 out 72 ft',
  `
  trip 2031-06-21 "Bright Pennie"
                  ^^^^^^^^^^^^^^^ unknown-boat No gear book in reach describes "Bright Pennie": its rigs and units can't be checked, and no depth computed. Did you mean "Bright Penny"?
  05:14 set P9 out 72
  trip 2031-06-22 "Bright Penny"
  05:14 set P9 out 72
            ^^ unknown-rig
  `,
  // A name without its quotes is told once, where it goes on.
  `
  trip 2031-06-21 Bright Penny
                         ^^^^^ unknown-word
  05:14 set P9 out 72
  `,
  `
  trip 2031-06-21 Tin Cup charter
                      ^^^ unknown-word
  `,
  `
  trip 2031-06-21 bright penny
                         ^^^^^ unknown-word
  `,
  `
  trip 2031-06-21 Kestrel chartr
                          ^^^^^^ unknown-word
                  ^^^^^^^ unknown-boat
  `,
])("%s", (source) => {
  checkFindings(source);
});

test("no book at all, and lures alone", () => {
  const source = `
    lure glow-spoon spoon 4 in
    trip 2031-06-21 "Tin Cup"
                    ^^^^^^^^^ unknown-boat No gear book in reach describes "Tin Cup": its rigs and units can't be checked, and no depth computed.
      zone America/Detroid
           ^^^^^^^^^^^^^^^ unknown-zone
    05:14 set P9 out 72
  `;
  checkFindings(source, { books: {} });
});

describe("fixes", () => {
  test("the nearest name", () => {
    checkFix("unknown-boat", 'trip 2031-06-21 "Bright Pennie"', 'trip 2031-06-21 "Bright Penny"');
  });

  test("the boat is opened above its trip", () => {
    checkFix(
      "unknown-boat",
      "# A day\ntrip 2031-06-21 Kestrel\n",
      "# A day\nboat Kestrel\n\ntrip 2031-06-21 Kestrel\n",
    );
  });
});
