import { test } from "vitest";
import { checkDay } from "./check-day.ts";

test.each([
  "05:48 sonar bottom 162 ft marks 80 to 90 ft bait 40 ft",
  "05:48 sonar bottom 62 ft marks 55 to 62 ft",
  "05:48 sonar marks 80 to 90 ft\n05:49 sonar bottom 62 ft",
  "05:48 sonar bottom 62 ft marks 80 ft sure",
  // A slope, and water of another place.
  "05:48 sonar bottom 62 ft\n05:50 probe C1 depth 70 ft",
  "05:48 sonar bottom 62 ft\n05:56 profile 0 ft 61 F, 100 ft 45 F",
  `
  05:48 sonar bottom 62 ft marks 80 to 90 ft bait 40 ft
                           ^^^^^^^^^^^^^^^^^ deeper-than-bottom Marks at 90 ft, below the bottom, 62 ft: one of the two is wrong.
  `,
  `
  05:48 sonar bottom 62 ft
  05:50 profile 0 ft 61 F, 30 ft 58 F, 100 ft 45 F
                                       ^^^^^^^^^^^ deeper-than-bottom A profile at 100 ft, below the bottom of 05:48, 62 ft: one of the two is wrong.
  `,
  `
  05:48 sonar bottom 62 ft
  05:50 probe C1 depth 84 ft temp 48 F
                 ^^^^^^^^^^^ deeper-than-bottom The probe at 84 ft, below the bottom of 05:48, 62 ft: one of the two is wrong.
  `,
])("%s", (source) => {
  checkDay(source);
});
