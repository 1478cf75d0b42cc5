import { test } from "vitest";
import { checkFile } from "./check-day.ts";

test.each([
  // A morning and an afternoon.
  `
  trip 2031-06-21 "Bright Penny" charter
  05:00 depart
  10:00 return
  10:30 box coho 1
  trip 2031-06-21 "Bright Penny" charter
  10:20 weather sky clear
  11:00 depart
  15:00 return
  `,
  // One that was called off has no hours.
  `
  trip 2031-06-21 "Bright Penny"
    canceled "gale"
  trip 2031-06-21 "Bright Penny"
  05:00 depart
  10:00 return
  `,
  `
  trip 2031-06-21 "Bright Penny"
  05:00 depart
  10:00 return
  trip 2031-06-21 "Bright Penny"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ overlapping-trips The boat is on this trip from 09:00 to 15:00, and on another one from 05:00 to 10:00.
  09:00 depart
  15:00 return
  `,
])("%s", (source) => {
  checkFile(source);
});
