import { describe, test } from "vitest";
import { checkDay, checkDayFix, checkFindings, checkFix } from "./check-findings.ts";

const BARE = { books: {} };

test.each([
  "05:14 set P1 out 72 setback 15 lure glow-spoon",
  "06:14 catch P1 king 18 lb length 35",
  "05:10 profile 0 61, 30 58",
  "05:48 sonar marks 65 to 80 ft bait 50 to 60",
  "05:48 sonar marks 65 ft to 80",
  "05:45 gps course 310",
  `
  05:20 change P1 down 4
                       ^ unit-missing down 4 what? Write 4 min or 4 h.
  `,
  `
  04:45 depart engine 1243.6
                      ^^^^^^ unit-missing engine 1243.6 what? Write 1243.6 h.
  `,
])("by the book: %s", (source) => {
  checkDay(source);
});

test.each([
  `
  boat "Tin Cup"
    units ft
  rig PB leadcore port holds 10
                             ^^ unit-missing holds 10 what? Write 10 colors or 10 ft.
  rig CU copper port holds 10
  trip 2031-06-21 "Tin Cup"
  05:14 set PB 5
               ^ unit-missing 5 what? Write 5 colors or 5 ft.
  05:20 move PB out 5.5 setback 10
                    ^^^ unit-missing out 5.5 what? Write 5.5 colors or 5.5 ft.
  05:24 move PB out 150
  05:26 set CU out 15
  `,
  `
  boat "Tin Cup"
    sounder 2
            ^ unit-missing 2 what? Write 2 ft, 2 in or 2 m.
    variation -7
              ^^ unit-missing -7 what? Write -7 deg.
    threshold reading-stale 40
                            ^^ unit-missing reading-stale 40 what? Write 40 min.
  cable wire steel diameter 0.9
                            ^^^ unit-missing diameter 0.9 what? Write 0.9 mm or 0.9 in.
  lure plug-a plug 4.5 in pulls-down 4 to 8
                                          ^ unit-missing pulls-down 8 what? Write 8 ft, 8 in or 8 m.
  band coho 50 to 57
                  ^^ unit-missing 57 what? Write 57 F or 57 C.
  upkeep oil every 100
                   ^^^ unit-missing every 100 what? Write 100 h or 100 days.
  rig A1 downrigger boom 4
                         ^ unit-missing boom 4 what? Write 4 ft, 4 in or 4 m.
  calibrate A1 counter-offset -1.5
                              ^^^^ unit-missing counter-offset -1.5 what? Write -1.5 ft, -1.5 in or -1.5 m.
  `,
  `
  boat "Tin Cup"
  rig A1 downrigger
  trip 2031-06-21 "Tin Cup"
  05:14 set A1 out 72
                   ^^ unit-missing out 72 what? Write 72 ft, 72 in or 72 m.
  05:10 profile 0 ft 61, 30 58 F
                     ^^ unit-missing 61 what? Write 61 F or 61 C.
                         ^^ unit-missing 30 what? Write 30 ft, 30 in or 30 m.
  05:48 sonar bait 50 to 60
                         ^^ unit-missing bait 60 what? Write 60 ft, 60 in or 60 m.
  05:48 sonar bait 50 fathoms to 60
                                 ^^ unit-missing bait 60 what? Write 60 fathoms, 60 ft, 60 in or 60 m.
  05:50 sonar bait 50 to 60 ft
  06:01 weigh-in fish 4 total 40
                              ^^ unit-missing total 40 what? Write 40 lb, 40 oz or 40 kg.
  `,
  `
  boat "Tin Cup"
    units ft mph F lb in
  cable wire steel diameter 0.9
                            ^^^ unit-missing diameter 0.9 what? Write 0.9 mm or 0.9 in.
  cable core-27 leadcore core 0.02 diameter 0.035 in
                              ^^^^ unit-missing core 0.02 what? Write 0.02 mm or 0.02 in.
  `,
  `
  lure glow-spoon spoon length 4
                               ^ unit-missing length 4 what? Write 4 in, 4 cm or 4 ft.
  `,
  `
  boat "Tin Cup"
    units in
  lure glow-spoon spoon length 4
  lure mini-spoon spoon 2.5
  `,
])("without a book: %s", (source) => {
  checkFindings(source, BARE);
});

describe("fixes", () => {
  test.each([
    ["05:20 change P1 down 4", "4 h", "05:20 change P1 down 4 h"],
    ['05:20 change P1 down 4 "fleas"', "4 min", '05:20 change P1 down 4 min "fleas"'],
    ["04:45 depart engine 1243.6", "h", "04:45 depart engine 1243.6 h"],
  ])("%s, %s → %s", (before, fix, after) => {
    checkDayFix("unit-missing", before, after, { fix });
  });

  test.each([
    ['boat "Tin Cup"\n  threshold reading-stale 40', 'boat "Tin Cup"\n  threshold reading-stale 40 min'],
    [
      'boat "Tin Cup"\n  units ft\ncable wire steel diameter 0.9',
      'boat "Tin Cup"\n  units ft\ncable wire steel diameter 0.9 mm',
    ],
    ['boat "Tin Cup"\n  sounder 2', 'boat "Tin Cup"\n  sounder 2 ft'],
    ['boat "Tin Cup"\nband coho 50 to 57', 'boat "Tin Cup"\nband coho 50 to 57 F'],
    [
      'boat "Tin Cup"\ntrip 2031-06-21 "Tin Cup"\n05:10 profile 30 58 F',
      'boat "Tin Cup"\ntrip 2031-06-21 "Tin Cup"\n05:10 profile 30 ft 58 F',
    ],
  ])("%s → %s", (before, after) => {
    checkFix("unit-missing", before, after, BARE);
  });
});
