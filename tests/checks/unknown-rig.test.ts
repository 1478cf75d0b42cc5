import { describe, test } from "vitest";
import {
  BOOK,
  BOOK_URI,
  checkBookFix,
  checkDay,
  checkDayFix,
  checkFindings,
  checkFix,
  OPENER,
} from "./check-findings.ts";

const withRig = (line: string): string => BOOK.replace("nickname king", `${line}\n\nnickname king`);

test.each([
  "05:14 set P1 out 72 ft",
  "08:05 pull all",
  "08:05 pull ALL",
  "06:14 catch Unknown king 18 lb kept",
  "05:58 strike unknown",
  "06:14 catch unknown king 18 lb kept",
  `
  05:14 set p1 out 72 ft ball Round-12 lure GLOW-spoon
            ^^ unknown-rig The rig is called "P1" in the gear of "Bright Penny"; "p1" is read as that.
                              ^^^^^^^^ unknown-ball The ball is called "round-12" in the gear of "Bright Penny"; "Round-12" is read as that.
                                            ^^^^^^^^^^ unknown-lure The lure is called "glow-spoon" in the gear of "Bright Penny"; "GLOW-spoon" is read as that.
  `,
  `
  05:25 strike S9
               ^^ unknown-rig No rig "S9" in the gear of "Bright Penny". Did you mean S1?
  `,
  `
  05:25 strike kicker
               ^^^^^^ unknown-rig No rig "kicker" in the gear of "Bright Penny".
  `,
  `
  07:40 tangle P1 with S7
                       ^^ unknown-rig No rig "S7" in the gear of "Bright Penny". Did you mean S1?
  `,
  `
  07:05 check all
              ^^^ unknown-rig Only pull takes all; check needs one rig's name.
  `,
  `
  05:14 set unknown out 72 ft
            ^^^^^^^ unknown-rig No rig "unknown" in the gear of "Bright Penny".
  `,
  `
  05:58 strike king
               ^^^^ unknown-rig strike needs the rig before king.
  `,
  `
  rig A1 stacked B9
                 ^^ unknown-rig No rig "B9" in the gear of "Bright Penny".
  upkeep batteries every 60 h on P4
                                 ^^ unknown-rig No rig "P4" in the gear of "Bright Penny". Did you mean P1?
  calibrate rigger-wire drag 1.1
  calibrate P1 drag 1.1
  calibrate P5 drag 1.1
            ^^ unknown-rig No rig "P5" in the gear of "Bright Penny". Did you mean P1?
  `,
  "05:14 set P9 out 72,5 ft\n                 ^^^^ number-format",
])("%s", (source) => {
  checkDay(source);
});

test("a rig that the book has from a later day on", () => {
  checkDay(
    `
    05:14 set C1 out 72 ft
              ^^ unknown-rig The rig "C1" is in the gear of "Bright Penny" only from 2031-08-09 on, after this line's day.
    `,
    { books: { [BOOK_URI]: withRig("2031-08-09 rig C1 downrigger") } },
  );
});

test("a boat that no book describes: one message, and nothing about its sixty lines", () => {
  checkFindings(
    `
    trip 2031-06-21 "Tin Cup"
                    ^^^^^^^^^ unknown-boat
    05:14 set P9 out 72 lure nothing ball nothing
    06:14 catch P9 whatever 18 lb
    `,
  );
});

describe("fixes", () => {
  test("the nearest name", () => {
    checkDayFix("unknown-rig", "05:25 strike S9", "05:25 strike S1");
    checkDayFix("unknown-rig", "05:25 strike s1", "05:25 strike S1");
    checkDayFix("unknown-rig", "07:40 tangle P1 with s1", "07:40 tangle P1 with S1");
  });

  test.each([
    ["05:14 set PB out 5 colors", "rig PB leadcore"],
    ["05:14 set SD out 140 ft dial 2", "rig SD diver"],
    ["05:14 set FL out 140 ft board 60 ft", "rig FL flat"],
    ["09:38 set J1 out 146 ft anglers 4", "rig J1 jig"],
    ['05:14 set "long one" out 72 ft', 'rig "long one" downrigger'],
  ])("%s: added to the book", (line, added) => {
    checkBookFix(
      "unknown-rig",
      line,
      BOOK.replace(/^rig S1.*$/mu, (rig) => `${rig}\n${added}`),
    );
  });

  test("added to the trip's own file, where that describes the boat", () => {
    const before = `rig P1 downrigger\n\n${OPENER}05:14 set kicker out 72 ft`;
    const after = `rig P1 downrigger\nrig kicker downrigger\n\n${OPENER}05:14 set kicker out 72 ft`;
    checkFix("unknown-rig", before, after, { books: {}, fix: "Add" });
  });
});
