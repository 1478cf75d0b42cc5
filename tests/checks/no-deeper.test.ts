import { expect, test } from "vitest";
import { checkDay } from "./check-day.ts";
import { findingsIn, OPENER } from "./check-findings.ts";

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
05:12 move P3 out 590 ft
05:14 move P3 out 100 ft
05:16 move P3 out 600 ft
              ^^^^^^^^^^ no-deeper`);
});

test("names both speeds where the water runs otherwise on top", () => {
  const text = `${OPENER}${GEAR.replace("speed 4 mph", "speed 3.2 mph")}rig IW flat port cable mono-12 inline-weight 2 oz
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
05:06 set C1 out 100 ft
05:08 probe C1 depth 95 ft speed 2.2 mph
05:10 set IW out 400 ft lure green-spoon
`;
  const found = findingsIn(text).filter(({ slug }) => slug === "no-deeper");
  expect(found.map(({ message }) => message.split(" more line")[0])).toEqual([
    "At 3.2 mph on top and 2.2 mph at 95 ft",
  ]);
});

test("the captain may set what counts as deeper", () => {
  checkDay(`${GEAR}05:10 set P3 out 600 ft`, { boat: "threshold no-deeper 0.01" });
});
