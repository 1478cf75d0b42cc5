import { describe, test } from "vitest";
import { checkDay, checkFixOf, checkTrolling } from "./check-day.ts";

test.each([
  "05:10 sonar bottom 1333 ft marks 65 to 80 ft",
  "05:10 profile 0 ft 61 F, 30 ft 58 F",
  "05:10 set S1 out 70 ft lure mini-spoon leader 0 ft",
  "05:10 sonar bottom 2400 ft sure",
  "05:10 touch P1 out 62 ft bottom 60 ft",
])("quiet: %s", (line) => {
  checkTrolling(line);
});

test.each([
  `05:10 set S1 out 60 ft setback -15 ft lure mini-spoon
                       ^^^^^^^^^^^^^^ length-implausible A setback of -15 ft can't be: it is zero or more. Was 15 ft meant?`,
  `05:10 set P1U above -20 ft setback 15 ft lure mini-spoon
              ^^^^^^^^^^^^ length-implausible A clip above the ball of -20 ft can't be: it is zero or more. Was 20 ft meant?`,
  `05:10 set SD board 900 ft leader -3 ft out 90 ft
             ^^^^^^^^^^^^ length-implausible A board of 900 ft is doubtful: boards run up to 400 ft to the side.
                          ^^^^^^^^^^^^ length-implausible A leader of -3 ft can't be: it is zero or more. Was 3 ft meant?`,
  // A bottom above the surface stops no ball, and a probe there disagrees with nothing.
  `05:10 sonar bottom -160 ft
            ^^^^^^^^^^^^^^ length-implausible A bottom of -160 ft can't be: it is 1 ft or more. Was 160 ft meant?
05:11 move P1 out 70 ft`,
  `05:10 sonar bottom 0 ft
            ^^^^^^^^^^^ length-implausible A bottom of 0 ft can't be: it is 1 ft or more.
05:11 move P1 out 70 ft`,
  `05:10 sonar bottom 9999999 ft marks 1600 to 1700 ft
            ^^^^^^^^^^^^^^^^^ length-implausible A bottom of 9999999 ft is doubtful: the lakes are up to 1500 ft deep.
                              ^^^^^^^^^^^^^^^^^^^^^ length-implausible A depth of marks of 1600 to 1700 ft is doubtful: the lakes are up to 1500 ft deep.`,
  `05:10 probe P1 depth -58 ft behind -9 ft
               ^^^^^^^^^^^^ length-implausible A depth of -58 ft can't be: it is zero or more. Was 58 ft meant?
                            ^^^^^^^^^^^^ length-implausible A distance behind of -9 ft can't be: it is zero or more. Was 9 ft meant?`,
  `05:10 touch P1 out -60 ft bottom -58 ft
               ^^^^^^^^^^ length-implausible A length of cable out of -60 ft can't be: it is 1 ft or more. Was 60 ft meant?
                          ^^^^^^^^^^^^^ length-implausible A bottom of -58 ft can't be: it is 1 ft or more. Was 58 ft meant?`,
  `05:10 profile 0 ft 61 F, -30 ft 52 F, 20000 ft 50 F
                         ^^^^^^^^^^^ length-implausible A depth of -30 ft can't be: it is zero or more.
                                      ^^^^^^^^^^^^^ length-implausible A depth of 20000 ft is doubtful: the lakes are up to 1500 ft deep.`,
])("%s", (lines) => {
  checkTrolling(lines);
});

test("the sea is deeper than any lake", () => {
  checkDay("05:10 sonar bottom 2400 ft", { boat: "water salt" });
});

describe("fixes", () => {
  test("the number without its minus", () => {
    checkFixOf("length-implausible", "trolling", "05:10 sonar bottom -160 ft", "05:10 sonar bottom 160 ft");
  });
});
