import { describe, expect, test } from "vitest";
import { applyEdits } from "../harness/apply-edits.ts";
import { checkDay, checkFile, checkFixOf, fixTitles } from "./check-day.ts";
import { BOOK_URI, findingsIn, OPENER } from "./check-findings.ts";

const SPEED = "05:00 surface speed 2.1 mph\n";

/** Cases in the form: gear and lines of a day under the trolling speed. */
describe("gear that doesn't say enough", () => {
  test.each([
    `rig X1 downrigger port cable rigger-wire
05:10 set X1 out 60 ft
          ^^ no-depth No depth: X1 has no ball in the gear book (ball NAME on its rig line).`,
    `rig X1 downrigger port ball round-12
05:10 set X1 out 60 ft
          ^^ no-depth No depth: X1 has no cable in the gear book (cable NAME on its rig line).`,
    `cable bare-wire steel
rig X1 downrigger port cable bare-wire ball round-12
05:10 set X1 out 60 ft
          ^^ no-depth No depth: the diameter of cable bare-wire isn't in the gear book (diameter 0.9 mm).`,
    `cable some-wire diameter 0.9 mm
rig X1 downrigger port cable some-wire ball round-12
05:10 set X1 out 60 ft
          ^^ no-depth No depth: what cable some-wire is made of isn't in the gear book (steel, braid or the like).`,
    `cable heavy weighted diameter 0.9 mm
rig WW weighted-wire cable heavy
05:10 set WW out 60 ft
          ^^ no-depth No depth: the weight of weighted line heavy isn't in the gear book (weight 2.1 g/m).`,
    `rig CU copper
05:10 set CU out 200 ft
          ^^ no-depth No depth: CU has no line in the gear book (cable NAME on its rig line).`,
    `rig X2 diver
05:10 set X2 out 100 ft
          ^^ no-depth`,
    `rig PB leadcore
05:10 set PB out 10 colors 50 ft
          ^^ no-depth No depth: the backing of PB isn't in the gear book (backing NAME on its rig line).`,
    // Said once a trip, however many rigs lean on it and lines are written.
    `cable bare-wire steel
rig X1 downrigger port cable bare-wire ball round-12
rig X2 downrigger starboard cable bare-wire ball round-12
05:10 set X1 out 60 ft
          ^^ no-depth
05:11 set X2 out 60 ft
05:20 move X1 out 70 ft`,
    // The line of the day is what lacks something.
    `05:10 set P1 lure glow-spoon
          ^^ no-depth No depth: how much cable P1 has out isn't stated.
05:11 set P1U above 20 ft lure mini-spoon`,
    `05:10 set P1 out 60 ft
05:11 set P1U setback 20 ft lure mini-spoon
          ^^^ no-depth No depth: how far above the ball P1U is clipped isn't stated (above 20 ft).`,
    `2031-06-01 calibrate SD lift-area 165 cm2 drag-area 105 cm2
05:10 set SD out 100 ft dial 3
                        ^^^^^^ no-depth No depth: SD's diver was measured at dial 2, and 3 is set.`,
  ])("%s", (lines) => {
    checkDay(SPEED + lines);
  });
});

test.each([
  // No speed to go by: that is said instead.
  `rig X1 downrigger port cable rigger-wire
05:10 set X1 out 60 ft
          ^^ reading-missing`,
  `${SPEED}rig X1 downrigger port cable rigger-wire\nset X1 out 60 ft`,
  // Not measured yet: nothing is missing that could be written down.
  `${SPEED}05:10 set SD out 100 ft`,
  `${SPEED}05:10 set J1`,
  // Nothing but the rig: who writes that asks for no depth.
  `${SPEED}05:10 set P1`,
  `${SPEED}rig X1 downrigger port cable rigger-wire\n05:10 set X1 out 60 ft sure`,
  // The line is unread, the number without its unit, the name unknown, the backing missing: each is told by itself.
  `${SPEED}05:10 set P1 out 60,5 ft
                 ^^^^ number-format`,
  `${SPEED}rig X1 downrigger port cable rope ball round-12
                             ^^^^ unknown-cable
05:10 set X1 out 60 ft`,
  `${SPEED}rig PB leadcore holds 10 colors
05:10 set PB out 12 colors
             ^^^^^^^^^^^^^ line-too-long
05:20 again PB`,
  // A number that can't be is told where it stands.
  `${SPEED}ball pea sphere -3 lb
                ^^^^^ gear-implausible
rig X1 downrigger port cable rigger-wire ball pea
05:10 set X1 out 60 ft`,
  `${SPEED}05:10 set P1 out 60 ft setback -15 ft
                       ^^^^^^^^^^^^^^ length-implausible`,
])("quiet: %s", (lines) => {
  checkDay(lines);
});

test("a name that only the book can't tell is said on the line, and where the rig is", () => {
  const book = `boat "Bright Penny"\n  units ft mph F lb in\ncable wire steel diameter 0.9 mm\nball egg sphere -8 lb\nrig P1 downrigger cable wire ball egg\nrig S1 downrigger cable rope ball egg\n`;
  const day = `${OPENER}05:00 surface speed 2 mph\n05:10 set P1 out 60 ft\n05:11 set S1 out 60 ft\n`;
  const found = findingsIn(day, { books: { [BOOK_URI]: book } });
  expect(found.map(({ lineIndex, message }) => [lineIndex, message])).toEqual([
    [2, "No depth: the ball's mass is -8 lb, below zero."],
    [3, "No depth: cable rope isn't in the gear book."],
  ]);
  expect(found[1]?.related).toMatchObject([{ uri: BOOK_URI, lineIndex: 5, message: "S1 in the gear book" }]);
});

test("a book without any cable is one gap, said once for all its rigs", () => {
  checkFile(`
  boat "Dory"
    units ft mph F lb in
    zone America/Detroit
  rig A1 downrigger
  rig A2 downrigger
  trip 2031-06-21 "Dory"
  05:00 surface speed 2.1 mph
  05:10 set A1 out 60 ft
            ^^ no-depth No depth for A1, A2: the gear of "Dory" has no cable or line to reckon with (cable rigger-wire steel diameter 0.9 mm, and its name on the rig line).
  05:11 set A2 out 60 ft
  05:20 move A1 out 70 ft
  `);
});

describe("fixes", () => {
  test("the only ball of the book goes onto the rig's line, before its comment", () => {
    checkFixOf(
      "no-depth",
      "opener",
      `${SPEED}rig X1 downrigger port cable rigger-wire  # new\n05:10 set X1 out 60 ft`,
      `${SPEED}rig X1 downrigger port cable rigger-wire ball round-12  # new\n05:10 set X1 out 60 ft`,
    );
  });

  test("lines that such rigs are of, what others of the kind carry first; none that couldn't be reckoned with", () => {
    const gear =
      "cable odd-wire steel\ncable thin-braid braid diameter 0.6 mm\nrig X1 downrigger ball round-12\n";
    expect(fixTitles("no-depth", "opener", `${SPEED}${gear}05:10 set X1 out 60 ft`)).toEqual([
      "Write cable rigger-wire on X1's line in the gear book",
      "Write cable thin-braid on X1's line in the gear book",
      "Write cable diver-wire on X1's line in the gear book",
    ]);
    expect(fixTitles("no-depth", "opener", `${SPEED}rig CU copper\n05:10 set CU out 200 ft`)).toEqual([]);
  });

  test("in the book, where the rig is described there", () => {
    const book = `boat "Bright Penny"\n  units ft mph F lb in\ncable wire steel diameter 0.9 mm\nball "egg 8" sphere 8 lb\nrig P1 downrigger cable wire\n`;
    const day = `${OPENER}05:00 surface speed 2 mph\n05:10 set P1 out 60 ft\n`;
    const [found] = findingsIn(day, { books: { [BOOK_URI]: book } });
    const edits = found?.fixes[0]?.edits ?? [];
    expect(edits[0]?.uri).toBe(BOOK_URI);
    const mended = applyEdits(book, edits);
    expect(mended).toContain('rig P1 downrigger cable wire ball "egg 8"\n');
    expect(findingsIn(day, { books: { [BOOK_URI]: mended } })).toEqual([]);
  });
});
