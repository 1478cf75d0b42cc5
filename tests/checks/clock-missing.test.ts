import { test } from "vitest";
import { checkFile, checkFixOf } from "./check-day.ts";

const NIGHT = 'trip 2031-03-09 "Bright Penny"\n';

test.each([
  `${NIGHT}01:59 depart\n03:00 birds some`,
  `${NIGHT}02:30-05:00 birds some`,
  `${NIGHT}02:30 birds some\n^^^^^ clock-missing There was no 02:30 that night: the clocks went ahead, and it was 03:30 by then.`,
])("%j", (source) => {
  checkFile(source);
});

test("past the gap, or by a watch not yet set", () => {
  checkFixOf("clock-missing", "file", `${NIGHT}~02:30 birds some`, `${NIGHT}~03:30 birds some`);
  checkFixOf("clock-missing", "file", `${NIGHT}2:30 birds some`, `${NIGHT}2:30-05:00 birds some`, "-05:00");
});
