/** Rigs told apart by value. */
import { expect, test } from "vitest";
import { completeDownrigger, type Downrigger } from "../../server/physics/downrigger.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { lineMake } from "../../server/physics/line-materials.ts";
import { rigKey, settingText } from "../../server/physics/rig-value.ts";

function rig(): Downrigger {
  const make = lineMake("steel", 0.9e-3);
  if (!make.ok) throw new Error("no line");
  return completeDownrigger({ outM: 30, speedMS: 1.1, cable: { make }, ball: { massKg: 5.4 }, rods: [] });
}

const ONE = rig();

test.each<[string, Partial<Downrigger>, "same setting" | "another setting"]>([
  ["in another stream", { flow: uniformFlow(1.2) }, "same setting"],
  [
    "in a sheared stream",
    { flow: { type: "piecewise", depthsM: [0, 20], speedsMS: [1, 1.2] } },
    "same setting",
  ],
  ["in colder water", { waterTemperatureC: 5 }, "same setting"],
  ["with more cable", { outM: 31 }, "another setting"],
  ["with a probe", { probeAboveBallM: 0.4 }, "another setting"],
  ["with a heavier ball", { ball: { ...ONE.ball, massKg: 6 } }, "another setting"],
  ["with a rougher cable", { cable: { ...ONE.cable, dragMultiplier: 1.3 } }, "another setting"],
  ["with another counter", { counterScale: 1.02 }, "another setting"],
  ["with another zero", { counterOffsetM: 0.3 }, "another setting"],
  ["in salt water", { salinityPsu: 35 }, "another setting"],
])("%s", (_, change, is) => {
  // Its rods the very same, or equal ones.
  for (const other of [
    { ...ONE, ...change },
    { ...rig(), ...change },
  ]) {
    expect(settingText(other) === settingText(ONE)).toBe(is === "same setting");
    expect(rigKey(other)).not.toBe(rigKey(ONE));
  }
});

test("equal rigs have one key", () => {
  expect(rigKey(rig())).toBe(rigKey(ONE));
  expect(rigKey(structuredClone(ONE))).toBe(rigKey(ONE));
});
