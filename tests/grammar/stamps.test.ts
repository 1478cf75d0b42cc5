/** Dates, clock times and offsets in front of a line; case, commas and comments around its words. */
import { describe, test } from "vitest";
import { checkIssues, checkTree } from "./check-grammar.ts";

describe("stamps", () => {
  test.each([
    ["5:25 pull P1", "fact 05:25 pull P1"],
    ["05:25:30 pull P1", "fact 05:25:30 pull P1"],
    ["~7:15 pull P1", "fact about 07:15 pull P1"],
    ["00:00 pull P1", "fact 00:00 pull P1"],
    ["23:59 pull P1", "fact 23:59 pull P1"],
    ["01:30-05:00 pull P1", "fact 01:30 offset -05:00 pull P1"],
    ["~01:30+05:30 pull P1", "fact about 01:30 offset +05:30 pull P1"],
    ["04:00Z pull P1", "fact 04:00 offset Z pull P1"],
    ["2031-06-15 00:20 pull P1", "fact 2031-06-15 00:20 pull P1"],
    ["2031-06-15 pull P1", "fact 2031-06-15 pull P1"],
    ["2032-02-29 pull P1", "fact 2032-02-29 pull P1"],
    ["2031-06-15, 00:20, pull, P1,", "fact 2031-06-15 00:20 pull P1"],
    ["pull 05:25", "fact pull 05:25"],
    ["pull 2031-06-15", "fact pull 2031-06-15"],
  ])("%s", checkTree);

  test("are wrong by themselves", () => {
    checkIssues(`
      25:00 pull P1
      ^^^^^ bad-clock 25:00
      12:61 pull P1
      ^^^^^ bad-clock 12:61
      12:00:75 pull P1
      ^^^^^^^^ bad-clock 12:00:75
      12:00+15:00 pull P1
      ^^^^^^^^^^^ bad-clock 12:00+15:00
      5:5 pull P1
      ^^^ bad-clock 5:5
      0545 pull P1
      ^^^^ bad-clock 0545
      ~7 pull P1
      ^^ bad-clock ~7
      2031-06-15 0020 pull P1
                 ^^^^ bad-clock 0020
      2031-02-29 pull P1
      ^^^^^^^^^^ bad-date 2031-02-29
      2031-13-01 pull P1
      ^^^^^^^^^^ bad-date 2031-13-01
      2031-6-15 pull P1
      ^^^^^^^^^ bad-date 2031-6-15
      2031/06/15 pull P1
      ^^^^^^^^^^ bad-date 2031/06/15
      05:45 2031-06-15 pull P1
            ^^^^^^^^^^ unknown-word verb 2031-06-15
      05:45 05:46 pull P1
            ^^^^^ unknown-word verb 05:46
      05:45
      ^^^^^ nothing-happened
      2031-06-15  # nothing
      ^^^^^^^^^^ nothing-happened
    `);
  });
});

describe("case does not matter in words and units", () => {
  test.each([
    ["SET c1 OUT 90 FT ON-BOTTOM", "fact set c1 > out=90 ft > on-bottom"],
    ["Catch P1 King 18 LBS Kept", "fact catch P1 King > .weight=18 lb > kept"],
    ["profile 0 Feet 16 degc", "fact profile > .point=(0 ft; 16 C)"],
    ["weather waves 1 TO 2 ft wind-speed 8 KMH", "fact weather > waves=1 ? to 2 ft > wind-speed=8 km/h"],
    ["Trip 2031-06-21 Skiff\n  HARBOUR Lee", "trip-property harbor Lee"],
    ["NOTE\n  text", "note-text"],
  ])("%j", checkTree);
});

describe("a comma before a blank separates and means nothing", () => {
  test.each([
    ["set C1, out 90 ft, lure x", "fact set C1 > out=90 ft > lure='x'"],
    ["set C1 , , out 90 ft ,", "fact set C1 > out=90 ft"],
    [", pull P1", "fact pull P1"],
    ['lost P1 fish "a, b", by G1', `fact lost P1 fish > .remark="a, b" > by='G1'`],
    ["set a,b out 90 ft", "fact set a,b > out=90 ft"],
    ["gps at 44.7683, -86.3617", "fact gps > at=(44.7683; -86.3617)"],
    ["set C1,, out 90 ft", "fact set C1 > out=90 ft"],
  ])("%s", checkTree);

  test("but not a comma before anything else", () => {
    checkIssues(`
      set C1 out 90 ,ft
                    ^^^ unknown-word item ,ft
      set C1 out 72,5 ft
                 ^^^^ number-format 72,5 meant 72.5
      ,
      ^ nothing-happened
    `);
  });
});

describe("comments start at the line's start or after a blank", () => {
  test.each([
    ["pull P1 # all in", "fact pull P1 > # all in"],
    ["pull P1 #", "fact pull P1 > #"],
    ["pull P#1", "fact pull P#1"],
    ['lost P1 fish "a # b" # c', 'fact lost P1 fish > .remark="a # b" > # c'],
    ["gps at 44.7 -86.3 #8", "fact gps > at=(44.7; -86.3) > #8"],
  ])("%s", checkTree);
});
