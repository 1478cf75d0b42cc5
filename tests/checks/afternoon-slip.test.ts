import { test } from "vitest";
import { checkDay, checkFixOf } from "./check-day.ts";

test.each([
  `
  12:50 weather sky clear
  13:10 birds some
  `,
  `
  12:50 weather sky clear
  1:10 birds some
  ^^^^ afternoon-slip 01:10 comes before 12:50, the line above; 13:10 would fit.
  13:20 return
  `,
  // All afternoon by a twelve-hour clock: said once.
  `
  05:00 depart
  11:50 weather sky clear
  1:10 birds some
  ^^^^ afternoon-slip 01:10 comes before 11:50, the line above, and so do the 2 lines after it; 13:10 would fit.
  2:00 fleas some
  3:30 return
  `,
  // It doesn't fit between its neighbors: out of order, not twelve hours short.
  `
  12:50 weather sky clear
  1:10 birds some
  ^^^^ time-backwards
  12:55 fleas some
  `,
  // The other way around.
  `
  05:12 weather sky clear
  17:20 birds some
  ^^^^^ afternoon-slip 17:20 is half a day after 05:12, the line above, and below the morning goes on; 05:20 would fit.
  05:25 fleas some
  `,
  `
  05:12 weather sky clear
  17:20 birds some
  ^^^^^ afternoon-slip 17:20 and the 1 line after it are half a day after 05:12, the line above, and below the morning goes on; 05:20 would fit.
  17:22 birds heavy
  05:25 fleas some
  `,
  // Twelve hours earlier it doesn't fit either.
  `
  05:12 weather sky clear
  17:02 birds some
  05:25 fleas some
  ^^^^^ time-backwards
  `,
  // Too long a pause.
  `
  05:44 depart
  05:34 weather sky clear
  ^^^^^ time-backwards
  `,
])("%s", (source) => {
  checkDay(source);
});

test("a strike in the afternoon is no strike before the set", () => {
  checkDay(`
    11:58 surface speed 2.4 mph
    12:00 set P1 out 60 ft setback 15 ft lure glow-spoon
    1:10 strike P1
    ^^^^ afternoon-slip
    13:20 pull P1
  `);
});

test.each([
  ["12:50 depart\n1:10 birds some", "12:50 depart\n13:10 birds some"],
  ["5:12 depart\n17:20 birds some\n5:25 return", "5:12 depart\n05:20 birds some\n5:25 return"],
  ["12:50 depart\n~1:10:30 birds some\n2:00 return", "12:50 depart\n~13:10:30 birds some\n14:00 return"],
])("%j is mended", (before, after) => {
  checkFixOf("afternoon-slip", "opener", before, after);
});
