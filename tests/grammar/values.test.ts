/** Numbers with units, compound quantities, ranges, positions, names and quotes. */
import { describe, test } from "vitest";
import { checkIssues, checkTree } from "./check-grammar.ts";

describe("numbers and units", () => {
  test.each([
    ["set P1 out 72ft", "fact set P1 > out=72 ft"],
    ["set P1 out 72'", "fact set P1 > out=72 ft"],
    ['lure x 35"', "fact lure x > .length=35 in"],
    ["set P1 out 72", "fact set P1 > out=72 ?"],
    ["set P1 72", "fact set P1 > .out=72 ?"],
    ["set P1 out 2.30 ft", "fact set P1 > out=2.30 ft"],
    ["set P1 out .5 ft", "fact set P1 > out=.5 ft"],
    ["set P1 out +5 ft", "fact set P1 > out=+5 ft"],
    ["set PB out 5 colours", "fact set PB > out=5 colors"],
    ["set PB out 5 color", "fact set PB > out=5 colors"],
    ["sonar bottom 25 fm", "fact sonar > bottom=25 fathoms"],
    ["gps speed 2 knots", "fact gps > speed=2 kn"],
    ["gps speed 2.7 kph", "fact gps > speed=2.7 km/h"],
    ["surface temp 61 °F", "fact surface > temp=61 F"],
    ["surface temp 61°f", "fact surface > temp=61 F"],
    ["upkeep x every 3 days", "fact upkeep x > every=3 days"],
    ["weather visibility 0.5 nm", "fact weather > visibility=0.5 nmi"],
    ["calibrate SD lift-area 165 cm²", "fact calibrate SD > lift-area=165 cm2"],
    ["weather pressure 29.92 inhg", "fact weather > pressure=29.92 inHg"],
  ])("%s", checkTree);
});

describe("compound quantities go on while each part is less than one of the unit before it", () => {
  test.each([
    ["catch P1 king 17 lb 8 oz", "fact catch P1 king > .weight=17 lb + 8 oz"],
    ["catch P1 king 35 in 17lb 8oz", "fact catch P1 king > .length=35 in > .weight=17 lb + 8 oz"],
    ["dock king 17 lb 8 oz 35 in", "fact dock king > .weight=17 lb + 8 oz > .length=35 in"],
    ["change P1 down 1 h 5 min 30 s", "fact change P1 > down=1 h + 5 min + 30 s"],
    ["set P1 setback 6 ft 6 in 72 ft", "fact set P1 > setback=6 ft + 6 in > .out=72 ft"],
    ["set P1 setback 20 yd 90 ft", "fact set P1 > setback=20 yd > .out=90 ft"],
    // Backing behind the colors, of any length; nothing but what is out is counted so.
    ["set PB out 10 colors 50 ft", "fact set PB > out=10 colors + 50 ft"],
    ["set PB 10 colors 50 ft", "fact set PB > .out=10 colors + 50 ft"],
    ["set PB setback 1 colors 50 ft", "fact set PB > setback=1 colors > .out=50 ft"],
    ["catch P1 king girth 2 ft 35 in", "fact catch P1 king > girth=2 ft > .length=35 in"],
    ["weather gusts 14 kn 1 mph", "fact weather > gusts=14 kn > .wind-speed=1 mph"],
    ["sonar marks 5 ft 6 in to 6 ft 2 in", "fact sonar > marks=5 ft + 6 in to 6 ft + 2 in"],
  ])("%s", checkTree);
});

describe("positions", () => {
  test.each([
    ["44 46.1N 086 21.7W", "(44 46.1N; 086 21.7W)"],
    ["44 46.1n 086 21.7w", "(44 46.1N; 086 21.7W)"],
    ["44 46.1 N 086 21.7 W", "(44 46.1N; 086 21.7W)"],
    ["44°46.1'N 86°21.7'W", "(44 46.1N; 86 21.7W)"],
    ["44°46.1′N, 86°21.7′W", "(44 46.1N; 86 21.7W)"],
    ["44 46 06N 86 21 42W", "(44 46 06N; 86 21 42W)"],
    [`44°46'06"N 86°21'42"W`, "(44 46 06N; 86 21 42W)"],
    ["44.768N 86.361W", "(44.768N; 86.361W)"],
    ["44.768S 86.361E", "(44.768S; 86.361E)"],
    ["44.768 -86.361", "(44.768; -86.361)"],
    ["+44.768, -86.361", "(+44.768; -86.361)"],
    ["90.0 180.0", "(90.0; 180.0)"],
  ])("%s", (typed, position) => {
    checkTree(`gps at ${typed} speed 2 mph`, `fact gps > at=${position} > speed=2 mph`);
  });

  test("are wrong out of range, half or in words", () => {
    checkIssues(`
      gps at 44 46.1N
             ^^^^^^^^ bad-position 44 46.1N
      gps at 91 00.0N 086 21.7W
             ^^^^^^^^ bad-position 91 00.0N
      gps at 44 61.0N 086 21.7W
             ^^^^^^^^ bad-position 44 61.0N
      gps at 44 46.1W 086 21.7N
             ^^^^^^^^ bad-position 44 46.1W
      gps at 44.7 -186.3
             ^^^^^^^^^^^ bad-position 44.7 -186.3
      gps at 44 -86
             ^^^^^^ bad-position 44 -86
      gps at "Anvil Bank"
             ^^^^^^^^^^^^ bad-position "Anvil Bank"
      gps at
          ^^ missing-value at needs position
    `);
  });
});

describe("names and quotes", () => {
  test.each([
    ["set set out 5 ft lure lure", "fact set set > out=5 ft > lure='lure'"],
    ["set out out 72 ft", "fact set out > out=72 ft"],
    ['set "out" 72 ft', 'fact set "out" > .out=72 ft'],
    ["set P1 lure sure sure", "fact set P1 > lure='sure' > sure"],
    ["catch P1 kept kept", "fact catch P1 kept > kept"],
    ['run to "a ""b"" c"', 'fact run > to="a \\"b\\" c"'],
    ['run to ""', 'fact run > to=""'],
    ['run to "#1"', 'fact run > to="#1"'],
    ['run to a"b', `fact run > to='a"b'`],
    ["run to Māhia", "fact run > to='Māhia'"],
    ["run to \uffff", "fact run > to='\uffff'"],
    ["run to 30", "fact run > to='30'"],
    ["set 2 out 30 ft", "fact set 2 > out=30 ft"],
    ["catch P1 king tag 12-34 18 lb", "fact catch P1 king > tag='12-34' > .weight=18 lb"],
  ])("%s", checkTree);
});
