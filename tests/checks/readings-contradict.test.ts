import { test } from "vitest";
import { checkDay, checkTrolling } from "./check-day.ts";

test.each([
  // Near each other, of another minute, of two probes, of two instruments.
  "05:10 surface speed 2.1 mph\n05:10 surface speed 2.6 mph",
  "05:10 surface speed 2.1 mph\n05:11 surface speed 3.1 mph",
  "05:10 probe C1 speed 2.1 mph\n05:10 probe S1 speed 3.1 mph",
  "05:10 probe C1 speed 2.1 mph\n05:10 surface speed 3.1 mph",
  // The boat turned in that minute, or a clock is approximate.
  "05:10 surface speed 2.1 mph\n05:10 turn left to 130\n05:10 surface speed 3.1 mph",
  "~05:10 surface speed 2.1 mph\n05:10 surface speed 3.1 mph",
  // One of the two is sure.
  "05:10 surface speed 2.1 mph\n05:10 surface speed 3.1 mph sure",
  "05:10 surface speed 2.1 mph sure\n05:10 surface speed 3.1 mph",
  `
  05:10 surface speed 2.1 mph
  05:10 surface speed 3.1 mph
                ^^^^^^^^^^^^^ readings-contradict 3.1 mph on top and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  `,
  `
  05:10 gps speed 2.1 mph
  05:10 gps speed 1.5 mph
            ^^^^^^^^^^^^^ readings-contradict 1.5 mph over ground and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  `,
  `
  05:10 probe C1 speed 2.1 mph
  05:10 probe C1 speed 3.1 mph
                 ^^^^^^^^^^^^^ readings-contradict 3.1 mph at C1's probe and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  05:10 probe C1 speed 2.1 mph
                 ^^^^^^^^^^^^^ readings-contradict 2.1 mph at C1's probe and 3.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  `,
])("%s", (source) => {
  checkTrolling(source);
});

const DEPTHS = "05:00 set C1 out 60 ft\n";
test.each([
  `${DEPTHS}05:10 probe C1 depth 50 ft\n05:10 probe C1 depth 55 ft`,
  // The cable was moved in between.
  `${DEPTHS}05:10 probe C1 depth 50 ft\n05:10 move C1 out 68 ft\n05:10 probe C1 depth 58 ft`,
  `${DEPTHS}05:10 probe C1 depth 50 ft\n05:10 pull C1\n05:10 probe C1 depth 0 ft`,
  // Another rig was.
  `
  05:00 set C1 out 60 ft
  05:01 set P1 out 60 ft setback 15 ft lure glow-spoon
  05:10 probe C1 depth 50 ft
  05:10 move P1 out 68 ft
  05:10 probe C1 depth 58 ft
                 ^^^^^^^^^^^ readings-contradict 58 ft at C1's probe and 50 ft in the same minute: depths lean on neither until one goes, or says sure.
  `,
])("%s", (source) => {
  checkDay(source, { boat: "quiet reading-missing depth-disagrees reading-stale" });
});

test("where nothing else was read, no speed is said to be missing, unless they are out of reach", () => {
  const set = (clock: string) => `${clock} set P1 out 60 ft setback 15 ft lure glow-spoon`;
  checkDay(`
  05:10 surface speed 2.1 mph
  05:10 surface speed 3.1 mph
                ^^^^^^^^^^^^^ readings-contradict 3.1 mph on top and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  ${set("05:20")}
  `);
  checkDay(`
  05:10 surface speed 2.1 mph
  05:10 surface speed 3.1 mph
                ^^^^^^^^^^^^^ readings-contradict 3.1 mph on top and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  ${set("07:20")}
            ^^ reading-missing No depth at 07:20: no speed (probe, surface or gps) was read in the 2 h before or the 1 h after.
  `);
});

test("by the boat's own limits", () => {
  const boat = "threshold same-minute-speed 0.2 mph";
  checkTrolling(
    `
  05:10 surface speed 2.1 mph
  05:10 surface speed 2.4 mph
                ^^^^^^^^^^^^^ readings-contradict 2.4 mph on top and 2.1 mph in the same minute: depths lean on neither until one goes, or says sure.
  `,
    { boat },
  );
});
