/** Temperatures that no water has don't drive the depths. */
import { expect, test } from "vitest";
import { depthOf } from "./depth-of.ts";

const SET = "06:00 set P1 out 60 ft";

test.each([
  ["05:30 probe P1 temp 48 F", (48 - 32) / 1.8],
  // Left out, the reading before holds: 50 F.
  ["05:30 probe P1 temp 500 F", 10],
  ["05:30 probe P1 temp 4.8 F sure", 10],
  ["05:30 probe P1 temp 95 F", 10],
  ["05:30 probe P1 temp 95 F sure", 35],
  ["05:30 profile 0 ft 60 F, 30 ft 500 F, 50 ft 42 F", (60 - 32 + 42 - 32) / 3.6],
  ["05:30 profile 30 ft 500 F", 10],
])("%s", (line, tempC) => {
  const { water, why } = depthOf(`${line}\n${SET}`);
  expect(why).toBeNull();
  expect(water?.tempC).toBeCloseTo(tempC, 9);
});
