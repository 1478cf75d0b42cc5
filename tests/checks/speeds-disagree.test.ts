import { test } from "vitest";
import { checkDay, checkTrolling } from "./check-day.ts";

test.each([
  "05:40 surface speed 2.6 mph\n05:41 gps speed 2.1 mph",
  // A strong current, at the limit.
  "05:40 surface speed 4.6 mph\n05:41 gps speed 1.6 mph",
  // Not of one minute.
  "05:40 surface speed 5.6 mph\n05:46 gps speed 2.1 mph",
  // Near a turn.
  "05:39 turn left to 130\n05:40 surface speed 5.6 mph\n05:41 gps speed 2.1 mph",
  "05:40 surface speed 5.6 mph\n05:41 gps speed 2.1 mph sure",
  `
  05:40 surface speed 5.6 mph
  05:41 gps speed 2.1 mph
            ^^^^^^^^^^^^^ speeds-disagree 2.1 mph over ground and 5.6 mph on top would mean a current of 3.5 mph; more than 3 mph is doubtful.
  `,
  `
  05:40 probe C1 speed 1.0 mph
  05:40 gps speed 4.2 mph
            ^^^^^^^^^^^^^ speeds-disagree 4.2 mph over ground and 1 mph at C1's probe would mean a current of 3.2 mph; more than 3 mph is doubtful.
  `,
  // On top against at the probe: 2 mph is as much as a depth is reckoned with.
  "05:40 surface speed 2.4 mph\n05:40 probe C1 speed 4.4 mph",
  "05:39 turn left to 130\n05:40 surface speed 2.0 mph\n05:40 probe C1 speed 4.4 mph",
  "05:40 surface speed 2.0 mph\n05:46 probe C1 speed 4.4 mph",
  `
  05:40 surface speed 2.0 mph
  05:41 probe C1 depth 60 ft speed 4.4 mph
                             ^^^^^^^^^^^^^ speeds-disagree 4.4 mph at C1's probe and 2 mph on top would mean a current of 2.4 mph; more than 2 mph is doubtful.
  `,
  `
  05:40 probe C1 speed 1.0 mph
                 ^^^^^^^^^^^^^ speeds-disagree 1 mph at C1's probe and 5 mph on top would mean a current of 4 mph; more than 2 mph is doubtful.
  05:40 surface speed 5.0 mph
  05:40 gps speed 3.0 mph
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("nothing trolled", () => {
  checkDay("05:40 surface speed 5.6 mph\n05:41 gps speed 1.1 mph");
});
