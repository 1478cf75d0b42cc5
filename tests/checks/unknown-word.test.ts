import { describe, test } from "vitest";
import { checkDay, checkDayFix, checkFindings, checkFix } from "./check-findings.ts";

test.each([
  `
  05:14 sett P1 out 72 ft
        ^^^^ unknown-word No line starts with "sett". Did you mean set?
  `,
  `
  05:14 xylophone P1
        ^^^^^^^^^ unknown-word No line starts with "xylophone".
  `,
  `
  05:14 set P1 out 72 ft setbak 12 ft
                         ^^^^^^ unknown-word "setbak" says nothing on a set line. Did you mean setback?
  `,
  `
  05:14 check P1 pronto
                 ^^^^^^ unknown-word "pronto" says nothing on a check line. It takes down, sure or remark. A remark goes in quotes: "pronto".
  `,
  `
  05:58 strike S1 at the turn
                  ^^ unknown-word "at" says nothing on a strike line. It takes slider, sure or remark. A remark goes in quotes: "at the turn".
  `,
  `
  06:33 lost S1 king big one sure
                     ^^^ unknown-word "big" says nothing on a lost line. It takes slider, by, sure or remark. A remark goes in quotes: "big one".
  `,
  `
  05:14 again P1 at 75 ft
                 ^^ unknown-word "at" says nothing on an again line. Did you mean out?
  `,
  `
  05:14 set P1 out 100 ft on 2
                          ^^ unknown-word "on" says nothing on a set line. Did you mean dial?
  `,
  `
  05:14 wind SW 10 kn
        ^^^^ unknown-word wind is said on a weather line.
  `,
  `
  05:14 speed 2.4 mph
        ^^^^^ unknown-word speed is said on a probe, surface or gps line.
  `,
  `
  05:14 caught P1 king
        ^^^^^^ unknown-word No line starts with "caught". Did you mean catch?
  `,
  `
  05:14 12 lb king on P1
        ^^ unknown-word No line starts with "12": first comes what happened, like set, catch or gps.
  `,
  `
  05:14 run to Anvil Bank
                     ^^^^ unknown-word "Bank" says nothing on a run line. A name of several words goes in quotes: "Anvil Bank".
  `,
  `
  05:14 set P1 out 72 ft back 20 ft
                         ^^^^ unknown-word "back" says nothing on a set line. Did you mean setback?
  `,
  `
  05:14 set P1 line 72 ft
               ^^^^ unknown-word "line" says nothing on a set line. Did you mean out?
  `,
  `
  05:14 set P1 out 72 fet
                      ^^^ unknown-word "fet" is no unit. Did you mean ft?
  `,
  `
  05:14 set P1 out 72zz
                     ^^ unknown-word "zz" is no unit.
  `,
])("%s", (source) => {
  checkDay(source);
});

test.each([
  `
  boat "Tin Cup"
    units ft mpg F
             ^^^ unknown-word "mpg" is no unit. Did you mean mph?
    water brackish
          ^^^^^^^^ unknown-word "brackish" can't follow water. It takes fresh or salt.
  `,
  `
  boat "Tin Cup"
    water Fresh
  boat "Tin Mug"
    wter fresh
    ^^^^ unknown-word No line starts with "wter". Did you mean water?
    threshold reading-stale 40 mim
                               ^^^ unknown-word "mim" is no unit. Did you mean min?
  `,
])("%s", (source) => {
  checkFindings(source);
});

describe("fixes", () => {
  test.each([
    ["05:14 sett P1", "05:14 set P1"],
    ["05:14 set P1 setbak 12 ft", "05:14 set P1 setback 12 ft"],
    ["05:14 set P1 out 72 fet", "05:14 set P1 out 72 ft"],
    ["05:14 set P1 out 72fet", "05:14 set P1 out 72ft"],
    ["05:14 set P1 out 72 ft back 15 ft", "05:14 set P1 out 72 ft setback 15 ft"],
    ["05:58 strike S1 at the turn", '05:58 strike S1 "at the turn"'],
    ["  harbuor Hollis", "  harbor Hollis"],
    ["  harbor Otter Creek", '  harbor "Otter Creek"'],
    ["05:14 again P1 at 75 ft", "05:14 again P1 out 75 ft"],
    ["05:14 wind SW 10 kn", "05:14 weather wind SW 10 kn"],
    ["05:14 caught P1 king", "05:14 catch P1 king"],
  ])("%s → %s", (before, after) => {
    checkDayFix("unknown-word", before, after);
  });

  test("words of a boat's properties", () => {
    checkFix("unknown-word", 'boat "Tin Cup"\n  units ft mpg', 'boat "Tin Cup"\n  units ft mph', {
      fix: "mph",
    });
    checkFix("unknown-word", 'boat "Tin Cup"\n  water fesh', 'boat "Tin Cup"\n  water fresh');
  });
});
