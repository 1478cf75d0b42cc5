import { test } from "vitest";
import { checkDay, checkFixOf } from "./check-day.ts";

test.each([
  "05:10 probe C1 speed 2.4 mph",
  "05:10 probe P1 speed 2.4 mph sure",
  `
  05:10 probe P1 speed 2.4 mph
              ^^ probe-elsewhere P1 has no probe in the gear book, C1 has: another rig, or is probe missing on P1's line? Until then nothing is learned from its depth.
  05:40 probe P1 speed 2.3 mph
  `,
  `
  05:10 probe P1U speed 2.4 mph
              ^^^ probe-elsewhere P1 has no probe in the gear book, C1 has: another rig, or is probe missing on P1's line? Until then nothing is learned from its depth.
  `,
])("%s", (source) => {
  checkDay(source);
});

test("the rig that has one is at hand", () => {
  checkFixOf("probe-elsewhere", "opener", "05:10 probe P1 speed 2.4 mph", "05:10 probe C1 speed 2.4 mph");
});
