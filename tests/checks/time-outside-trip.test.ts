import { test } from "vitest";
import { checkDay } from "./check-day.ts";

const DAY =
  "05:00 depart\n05:10 surface speed 2.4 mph\n05:12 set P1 out 60 ft\n09:00 pull P1\n10:00 return\n";

test.each([
  // What is done at the dock is no fishing.
  `
  04:50 weather sky clear
  05:00 depart
  10:00 return
  10:05 box coho 1
  10:05 dock coho 4 lb
  10:06 weigh-in fish 1
  10:07 serviced reel-drags
  10:08 weather sky rain
  10:09 note
    Home.
  `,
  `${DAY}10:10 catch P1 coho kept sure`,
  `
  05:00 depart
  10:00 return
  10:30 strike SD
  ^^^^^ time-outside-trip A strike at 10:30, but the boat was back at 10:00.
  `,
  `
  04:40 surface speed 2.4 mph
  04:50 set P1 out 60 ft
  ^^^^^ time-outside-trip A set at 04:50, but the boat left at 05:00.
  05:00 depart
  09:00 pull P1
  10:00 return
  `,
  // An approximate time within a quarter of an hour.
  `
  05:00 depart
  05:10 surface speed 2.4 mph
  05:12 set P1 out 60 ft
  10:00 return
        ^^^^^^ never-pulled
  ~10:10 strike P1
  `,
  // Out twice on one trip: the first departure and the last return count.
  `
  05:00 depart
  07:00 return
  08:00 depart
  08:10 surface speed 2.4 mph
  08:12 set P1 out 60 ft
  09:00 pull P1
  10:00 return
  `,
])("%s", (source) => {
  checkDay(source);
});
