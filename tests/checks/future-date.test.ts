import { describe, test } from "vitest";
import { checkFile, checkFixOf } from "./check-day.ts";

const BOAT = '"Bright Penny"';
const AROUND = { today: "2031-11-25" };

test.each([
  `trip 2031-11-25 ${BOAT}\n05:00 depart`,
  // Somewhere it is tomorrow.
  `trip 2031-11-26 ${BOAT}\n05:00 depart`,
  // Planned, not logged.
  `trip 2032-05-01 ${BOAT} charter\n  harbor "Hollis Point"\n  anglers 6\nnote\n  Bring the long net.`,
  // Gear may be planned too.
  `2032-05-01 rig D1 flat`,
  `
  trip 2062-06-21 ${BOAT}
       ^^^^^^^^^^ future-date 2062-06-21 is still to come: today is 2031-11-25. Was it 2031-06-21?
  05:00 depart
  2062-06-22 00:10 return
  `,
  // Not of this year either.
  `
  trip 2032-12-03 ${BOAT}
       ^^^^^^^^^^ future-date 2032-12-03 is still to come: today is 2031-11-25. Was it 2030-12-03?
  05:00 depart
  `,
  // Only one line of it.
  `
  trip 2031-06-21 ${BOAT}
  22:00 depart
  2032-06-22 00:10 return
  ^^^^^^^^^^ future-date 2032-06-22 is still to come: today is 2031-11-25. Was it 2031-06-22?
  `,
  `trip 2031-06-21 ${BOAT}\n22:00 depart\n2032-06-22 00:10 return sure`,
  // No day at all, which is told, is not still to come besides.
  `
  trip 2031-06-21 ${BOAT}
  22:00 depart
  2032-02-30 00:10 return
  ^^^^^^^^^^ syntax "2032-02-30" is no day of the calendar; write it like 2031-06-21.
  `,
])("%s", (source) => {
  checkFile(source, AROUND);
});

test("a boat that is asked not to say it", () => {
  checkFile(`trip 2062-06-21 ${BOAT}\n05:00 depart`, { ...AROUND, boat: "quiet future-date" });
});

describe("fix", () => {
  test.each([
    [
      `trip 2062-06-21 ${BOAT}\n22:00 depart\n2062-06-22 00:10 return`,
      `trip 2031-06-21 ${BOAT}\n22:00 depart\n2031-06-22 00:10 return`,
    ],
    // A leap day goes back to a leap year.
    [`trip 2032-02-29 ${BOAT}\n05:00 depart`, `trip 2028-02-29 ${BOAT}\n05:00 depart`],
    // Over New Year's Eve.
    [
      `trip 2032-12-31 ${BOAT}\n22:00 depart\n2033-01-01 00:10 return`,
      `trip 2030-12-31 ${BOAT}\n22:00 depart\n2031-01-01 00:10 return`,
    ],
  ])("%j → %j", (before, after) => {
    checkFixOf("future-date", "file", before, after, undefined, AROUND);
  });
});
