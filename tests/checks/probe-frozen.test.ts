import { test } from "vitest";
import { checkDay } from "./check-day.ts";

/** The depth that was expected is another check's. */
const QUIET = { boat: "quiet depth-disagrees" };

const SET =
  "05:00 set C1 out 60 ft setback 20 ft lure glow-spoon\n05:10 probe C1 depth 56 ft speed 2.4 mph\n";

test.each([
  "05:30 move C1 out 75 ft\n05:35 probe C1 depth 56 ft",
  "05:30 move C1 out 85 ft\n05:35 probe C1 depth 57 ft",
  "05:30 move C1 out 85 ft on-bottom\n05:35 probe C1 depth 56 ft",
  "05:30 move C1 out 85 ft\n05:35 probe C1 depth 56 ft on-bottom",
  "05:30 move C1 out 85 ft\n05:35 probe C1 depth 56 ft sure",
])("quiet: %s", (source) => {
  checkDay(SET + source, QUIET);
});

test("more cable, the same depth", () => {
  checkDay(
    `
  05:00 set C1 out 60 ft setback 20 ft lure glow-spoon
  05:10 probe C1 depth 56 ft speed 2.4 mph
  05:30 move C1 out 85 ft
  05:35 probe C1 depth 56 ft
                 ^^^^^^^^^^^ probe-frozen C1's probe still shows 56 ft as at 05:10, with 25 ft more cable out.
  05:38 move C1 out 58 ft
  05:39 probe C1 depth 56 ft
                 ^^^^^^^^^^^ probe-frozen C1's probe still shows 56 ft as at 05:35, with 27 ft less cable out.
  `,
    QUIET,
  );
});
