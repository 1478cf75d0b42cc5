import { describe, expect, test } from "vitest";
import {
  BOOK,
  BOOK_URI,
  checkDay,
  checkDayFix,
  checkFindings,
  checkFix,
  findingsIn,
} from "./check-findings.ts";

const CASES = [
  `
  05:14 set out 72 ft
            ^^^ syntax set needs a rig before out.
  `,
  `
  05:14 set
        ^^^ syntax set needs a rig.
  `,
  `
  06:33 lost S1
        ^^^^^^^ syntax lost needs a species, or the word fish.
  `,
  `
  05:14 set P1 out 72 ft lure
                         ^^^^ syntax lure needs the name of a lure.
  `,
  `
  05:14 set P1 out deep
               ^^^ syntax out needs a length, like 90 ft; "deep" is none.
  `,
  `
  05:45 gps course north
            ^^^^^^ syntax course needs a course, like 310; "north" is none.
  `,
  `
  05:48 sonar marks some
              ^^^^^ syntax marks needs a length or a range, like 90 ft or 90 to 100 ft; "some" is none.
  `,
  `
  05:10 profile
        ^^^^^^^ syntax This profile line says too little; it is written like: 05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F
  `,
  `
  05:14
  ^^^^^ syntax A clock alone: what happened at 05:14?
  `,
  `
  2031-06-22
  ^^^^^^^^^^ syntax A date alone: what happened on 2031-06-22?
  `,
  `
  2031-06-22 00:20
  ^^^^^^^^^^^^^^^^ syntax A date and a clock alone: what happened on 2031-06-22 at 00:20?
  `,
  `
  05:14 set P1 "away
               ^^^^^ syntax A quote is opened here and never closed.
  `,
  `
  06:14 pull P1 8
                ^ syntax Nothing on this pull line takes "8".
  `,
  `
  05:45 probe P1 145ft temp 48 F
                 ^^^^^ syntax What is 145 ft? Write depth 145 ft or behind 145 ft.
  `,
  `
  05:45 probe P1 98 ft 44 F 2.4 mph
                 ^^ syntax What is 98 ft 44 F 2.4 mph? Write depth 98 ft temp 44 F speed 2.4 mph or behind 98 ft temp 44 F speed 2.4 mph.
  `,
  `
  11:40 dock king 17 lb 20 oz
                        ^^^^^ syntax 17 lb 20 oz is 18 lb 4 oz: write it so.
  `,
  `
  05:45 surface 48 F
                ^^ syntax What is 48 F? Write temp 48 F.
  `,
  `
  05:14 set P1 80 ft out
                     ^^^ syntax Each word stands before its number: write out 80 ft.
  `,
  `
  05:14 set P1 80 ft out 20 ft back
                     ^^^^^^^^^ syntax Each word stands before its number: write out 80 ft setback 20 ft.
  `,
  `
  05:14 set P1 out 80 ft 20 ft back
                         ^^^^^ syntax Each word stands before its number: write setback 20 ft.
  `,
  `
  05:14 set P1 80 ft 20 ft
                     ^^^^^ syntax What is 20 ft? Write above 20 ft, board 20 ft, setback 20 ft, leader 20 ft or fixed 20 ft.
  `,
  `
  05:14 set P1 setback 12 to 15 ft
                          ^^^^^ syntax setback is one figure, not a range.
  `,
  `
  06:14 catch P1 king kept released
                           ^^^^^^^^ syntax kept and released can't both be so; keep one.
  `,
  `
  05:14 set P1 out 72 ft out 73 ft
                         ^^^^^^^^^ syntax out is said twice on this line; keep one.
  `,
  `
  25:00 set P1
  ^^^^^ syntax "25:00" is no time of day; write it like 05:14.
  `,
  `
  0514 set P1
  ^^^^ syntax "0514" is no time of day; write it like 05:14.
  `,
  `
  2031-02-30 05:14 set P1
  ^^^^^^^^^^ syntax "2031-02-30" is no day of the calendar; write it like 2031-06-21.
  `,
  `
  05:45 gps at 44 46.1 086
               ^^^^^^^ syntax "44 46.1" is no position; write it like 44 46.1N 086 21.7W or 44.7683 -86.3617.
  `,
  `
  05:45 gps course 400
                   ^^^ syntax "400" is no course; one is written like 310, from 000 to 360.
  `,
  `
  11:35 box king 1.5
                 ^^^ syntax "1.5" can't be; write a whole number above zero, like 6.
  `,
  `
  limit chinook per-angler -3
                           ^^ syntax "-3" can't be; write a whole number above zero, like 6.
  `,
  `
  limit chinook per-angler 3kg
                           ^^^ syntax "3kg" is no plain number; write it without a unit, like 6.
  `,
  `
  anglers 6
  ^^^^^^^ syntax anglers belongs under a trip line, indented.
  `,
  `
  rods-per-angler 3
  ^^^^^^^^^^^^^^^ syntax rods-per-angler belongs under a boat line, indented.
  `,
  `
  06:14 catch P1 king 18
                      ^^ syntax 18 of what: weight or length? Write its unit.
  `,
  `
  05:14 move P1 20 ft deeper
                ^^^^^^^^^^^^ syntax Write the amount afterwards, not the change: like out 90 ft.
  `,
  `
  05:14 set P1 out 72 ft
  05:20 move P1 20 ft deeper
                ^^^^^^^^^^^^ syntax Write the amount afterwards, not the change: out 92 ft.
  `,
  `
  05:14 move P1 up 20 ft
                ^^^^^^^^ syntax Write the amount afterwards, not the change: like out 90 ft.
  `,
];

test.each(CASES)("%s", (source) => {
  checkDay(source);
});

test.each([
  `
  trip 2031-06-21 "Bright Penny"
    2031-06-21 anglers 6
    ^^^^^^^^^^ syntax No date before anglers: what stands under a trip holds for all of it.
  `,
  // Indented as it should be; the line with a clock ended what is said of the whole trip.
  `
  trip 2031-06-21 "Bright Penny"
  05:10 depart
    anglers 6
    ^^^^^^^ syntax anglers goes right under its trip line; move it up, above what stands between them.
  `,
  `
  trip 2031-06-21 "Bright Penny"
  05:10 depart
    rods-per-angler 3
    ^^^^^^^^^^^^^^^ syntax rods-per-angler belongs under a boat line, indented.
  `,
  `
  trip 2031-06-21 "Bright Penny"
    birds some
    ^^^^^ syntax birds stands at the margin, or has a clock before it; here it is indented.
  `,
  `
  rig X1 port
  ^^^^^^^^^^^ syntax Say what the rig is: downrigger, stacked, diver, leadcore, copper, weighted-wire, flat or jig, as in: rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
  `,
])("%s", (source) => {
  checkFindings(source);
});

test("a line that is too long to be one", () => {
  const [found] = findingsIn(`# ${"x".repeat(30_000)}`);
  expect(found?.message).toBe(
    "This line has 30002 characters; lines of more than 20000 are kept as they are and not read.",
  );
});

const STACKED_BOOK = { [BOOK_URI]: `${BOOK}rig P1U stacked P1\n` };
const STACKED_SET = "05:14 set P1 out 72 ft\n05:15 set P1U above 20 ft\n05:20 ";

describe("fixes", () => {
  test.each([
    ["05:14 set P1 out 72 ft out 73 ft", "05:14 set P1 out 72 ft"],
    ['05:14 set P1 "away', '05:14 set P1 "away"'],
    ["0514 set P1", "05:14 set P1"],
    ["5:14pm set P1", "17:14 set P1"],
    ["5.14 set P1", "05:14 set P1"],
    ["2031-6-22 05:14 set P1", "2031-06-22 05:14 set P1"],
    ["anglers 6", "  anglers 6"],
    ["06:14 pull P1 8", "06:14 pull P1  # 8"],
    ["05:45 surface 48 F", "05:45 surface temp 48 F"],
    ["05:45 probe P1 145ft temp 48 F", "05:45 probe P1 depth 145 ft temp 48 F"],
    ["05:14 set P1 80 ft out sure", "05:14 set P1 out 80 ft sure"],
    ["06:14 pull P1 8  # late", "06:14 pull P1  # late 8"],
  ])("%s → %s", (before, after) => {
    checkDayFix("syntax", before, after);
  });

  test.each([
    ["move P1 +10 ft", "move P1 out 82 ft"],
    ["move P1 20 ft deeper", "move P1 out 92 ft"],
    ["move P1 out 2 ft shallower setback 10 ft", "move P1 out 70 ft setback 10 ft"],
    ["move P1 setback 5 ft more", "move P1 setback 20 ft"],
    ["again P1 10 up", "again P1 out 62 ft"],
    ["move P1 up 20 ft", "move P1 out 52 ft"],
    ["move P1 down by 6 ft setback 10 ft", "move P1 out 78 ft setback 10 ft"],
    ["move P1 out up 20", "move P1 out 52 ft"],
    ["change P1 setback less 5 ft", "change P1 setback 10 ft"],
  ])("a change becomes what is out afterwards: %s → %s", (before, after) => {
    const set = "05:14 set P1 out 72 ft setback 15 ft lure glow-spoon\n05:20 ";
    checkDayFix("syntax", set + before, set + after);
  });

  test.each([
    ["move P1U up 10 ft", "move P1U above 30 ft"],
    ["move P1U 5 ft deeper", "move P1U above 15 ft"],
    ["move P1U 5 ft up setback 10 ft", "move P1U above 25 ft setback 10 ft"],
  ])("of a stacked rod, where it is clipped: %s → %s", (before, after) => {
    checkDayFix("syntax", STACKED_SET + before, STACKED_SET + after, { books: STACKED_BOOK });
  });

  test("more of a clip may be either way, and is not guessed", () => {
    expect(() =>
      checkDayFix("syntax", `${STACKED_SET}move P1U 5 ft more`, "", { books: STACKED_BOOK }),
    ).toThrow("no such fix; there are: ");
  });

  test.each([
    ["06:14 catch P1 king kept released", "released", "06:14 catch P1 king kept"],
    ["06:14 catch P1 king kept released", "kept", "06:14 catch P1 king released"],
    ["06:14 catch P1 king 18", "18 lb", "06:14 catch P1 king 18 lb"],
    ["06:14 catch P1 king 18", "18 in", "06:14 catch P1 king 18 in"],
  ])("%s, %s → %s", (before, fix, after) => {
    checkDayFix("syntax", before, after, { fix });
  });

  test("words go before their numbers", () => {
    checkDayFix("syntax", "05:14 set P1 80 ft out 20 ft back", "05:14 set P1 out 80 ft setback 20 ft");
    checkDayFix(
      "syntax",
      "05:14 set P1 80ft out 20 ft lead lure glow-spoon",
      "05:14 set P1 out 80ft setback 20 ft lure glow-spoon",
    );
  });

  test("an event is moved to the margin, a date out of the properties", () => {
    checkDayFix("syntax", "  birds some", "birds some");
    checkFix(
      "syntax",
      'trip 2031-06-21 "Bright Penny"\n  2031-06-21 anglers 6',
      'trip 2031-06-21 "Bright Penny"\n  anglers 6',
    );
  });
});
