import { test } from "vitest";
import { checkDay } from "./check-day.ts";

const GEAR = `lure green-spoon spoon 4 in
cable rigger-braid braid diameter 0.9 mm
cable mono-12 mono diameter 0.36 mm
ball round-8 sphere 8 lb
rig P3 downrigger cable rigger-braid ball round-8
rig FL flat cable mono-12
05:00 surface speed 4 mph
`;

test.each([
  "05:10 set P3 out 100 ft",
  // A flat line runs as deep as its lure takes it.
  "05:10 set FL out 200 ft lure green-spoon",
  "05:10 set P3 out 600 ft sure",
  "05:10 set P3 out 600 ft on-bottom",
])("%s", (line) => {
  checkDay(GEAR + line);
});

test("says it once, until more line goes deeper again", () => {
  checkDay(`${GEAR}05:10 set P3 out 600 ft
             ^^^^^^^^^^ no-deeper At 4 mph more line out hardly takes it deeper: the ball gains 0.8 for every 10 let out.
05:12 move P3 out 650 ft
05:14 move P3 out 100 ft
05:16 move P3 out 600 ft
              ^^^^^^^^^^ no-deeper`);
});

test("the captain may set what counts as deeper", () => {
  checkDay(`${GEAR}05:10 set P3 out 600 ft`, { boat: "threshold no-deeper 0.01" });
});
