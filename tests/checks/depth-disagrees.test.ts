import { test } from "vitest";
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
