import { test } from "vitest";
import { checkBookFix } from "./check-book-fix.ts";
import { checkDay } from "./check-day.ts";

const SET = "05:00 set C1 out 90 ft setback 15 ft lure glow-spoon";
/** A calibration with its errors: the range is narrow. */
const CALIBRATED =
  "2031-06-01 calibrate C1 drag 1.31 drag-error 0.09 counter-scale 1.02 counter-scale-error 0.013 counter-offset -1.5 ft counter-offset-error 0.9 ft drag-scale-link 0.7 drag-offset-link -0.48 scale-offset-link -0.89";

test.each([
  `${SET}\n05:10 probe C1 depth 82 ft speed 2.4 mph`,
  // Never calibrated: the range is wide.
  `${SET}\n05:10 probe C1 depth 74 ft speed 2.4 mph`,
  `${CALIBRATED}\n${SET}\n05:10 probe C1 depth 80 ft speed 2.4 mph`,
  `${SET}\n05:10 probe C1 depth 40 ft speed 2.4 mph sure`,
  // No speed to go by, or on the bottom, or up.
  `
  05:00 set C1 out 90 ft
            ^^ reading-missing No depth at 05:00: no speed (probe, surface or gps) was read in the 2 h before or the 1 h after.
  05:10 probe C1 depth 40 ft
  `,
  `05:00 set C1 out 90 ft on-bottom\n05:10 probe C1 depth 60 ft speed 2.4 mph`,
  `${SET}\n05:05 pull C1\n05:10 probe C1 depth 40 ft speed 2.4 mph`,
  // The book doesn't say where a probe rides on P1.
  `05:00 set P1 out 90 ft\n05:10 probe P1 depth 60 ft speed 2.4 mph`,
  `
  ${CALIBRATED}
  ${SET}
  05:10 probe C1 depth 75 ft speed 2.4 mph
                 ^^^^^^^^^^^ depth-disagrees The probe on C1 shows 75 ft; about 82 ft (80 to 84) was expected with 90 ft out at 2.4 mph. What alone would explain it: 82 ft out, or 3.1 mph at the ball, or a cable that drags 1.9 times as much as reckoned.
  `,
  // Once for a rig and day, at the farthest.
  `
  ${SET}
  05:10 probe C1 depth 70 ft speed 2.4 mph
  05:20 probe C1 depth 68 ft speed 2.4 mph
                 ^^^^^^^^^^^ depth-disagrees The probe on C1 shows 68 ft; about 82 ft (77 to 88) was expected with 90 ft out at 2.4 mph. What alone would explain it: 73 ft out, or 3.8 mph at the ball, or a cable that drags 3 times as much as reckoned.
  05:30 probe C1 depth 70 ft speed 2.4 mph
  `,
  `
  ${SET}
  05:10 probe C1 depth 5 ft speed 2.4 mph
                 ^^^^^^^^^^ depth-disagrees The probe on C1 shows 5 ft; about 82 ft (77 to 88) was expected with 90 ft out at 2.4 mph. No single change explains it: look at the numbers of the line.
  `,
])("depth-disagrees %#", (source) => checkDay(source));

test("the book may ask for more", () => {
  const far = `${CALIBRATED}\n${SET}\n05:10 probe C1 depth 75 ft speed 2.4 mph`;
  checkDay(far, { boat: "threshold depth-disagrees 10 ft" });
});

const LEAD =
  "cable lead-27 leadcore diameter 0.85 mm\nrig PB leadcore port cable lead-27 leader 30 ft probe 0 ft";
const CORE = `${LEAD}\n05:00 surface speed 2.2 mph\n05:01 set PB out 300 ft lure glow-spoon`;

test.each([
  `${CORE}\n05:10 touch PB bottom 40 ft`,
  `
  ${CORE.replaceAll("\n", "\n  ")}
  05:10 touch PB bottom 15 ft
                 ^^^^^^^^^^^^ depth-disagrees PB touched bottom in 15 ft; about 49 ft (35 to 67) was expected with 300 ft out at 2.2 mph. No single change explains it: look at the numbers of the line.
  `,
])("on a line that is on no downrigger %#", (source) => checkDay(source));

test("the fix writes what touches of the bottom say of a line into the gear book, and then it is quiet", () => {
  checkBookFix(
    "depth-disagrees",
    `
05:00 set PB out 300 ft lure glow-spoon
05:10 probe PB depth 29 ft speed 2.2 mph
05:20 touch PB out 240 ft bottom 32 ft
05:30 move PB out 240 ft
05:40 probe PB depth 24 ft speed 2.2 mph`,
    /^\n2031-06-21 calibrate PB drag [\d.]+ drag-error [\d.]+ counter-scale .* readings 3$/u,
    `${LEAD}
2031-05-01 calibrate PB drag 1.2 drag-error 0.06 counter-scale 1 counter-scale-error 0.01 counter-offset 0 ft counter-offset-error 1 ft`,
  );
});
