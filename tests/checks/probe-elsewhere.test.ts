import { test } from "vitest";
import { checkDay, checkFixOf } from "./check-day.ts";

const C1 = "05:00 surface speed 2.4 mph\n05:02 set C1 out 60 ft\n05:02 set P1 out 60 ft\n";

test.each([
  `${C1}05:10 probe C1 speed 2.4 mph`,
  `${C1}05:10 probe P1 speed 2.4 mph sure`,
  // Clipped elsewhere for a look.
  "05:00 surface speed 2.4 mph\n05:02 set P1 out 60 ft\n05:10 probe P1 speed 2.4 mph",
  `${C1}05:09 pull C1\n05:10 probe P1 speed 2.4 mph`,
  `${C1}05:10 probe P1 speed 2.4 mph
            ^^ probe-elsewhere P1 has no probe in the gear book, and the one on C1 is in the water: which rig was it? If P1 has one too, write probe on its line in the book; nothing is learned from its depth until then.
05:40 probe P1 speed 2.3 mph`,
  `${C1}05:10 probe P1U speed 2.4 mph
            ^^^ probe-elsewhere`,
])("%s", (source) => {
  checkDay(source);
});

test("the rig that has one is at hand", () => {
  const [before, after] = ["P1", "C1"].map((rig) => `${C1}05:10 probe ${rig} speed 2.4 mph`);
  checkFixOf("probe-elsewhere", "opener", before ?? "", after ?? "");
});
