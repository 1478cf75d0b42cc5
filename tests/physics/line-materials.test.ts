import { describe, expect, test } from "vitest";
import { type LineMaterial, lineMake, weightInWaterNPerM } from "../../server/physics/line-materials.ts";
import { expectNear, WATER } from "./line-maker.ts";

/** Diameter mm, mass g/m, displaced mm2, weight in fresh water N/m: worked out by hand from density and geometry. */
const TABLE: readonly (readonly [LineMaterial, number, number, number, number])[] = [
  ["steel", 0.9, 3.92, 0.494, 0.0336],
  ["steel", 0.53, 1.36, 0.171, 0.0117],
  ["braid", 0.8, 0.341, 0.352, -0.0001],
  ["copper", 0.95, 4.92, 0.551, 0.0429],
  ["leadcore", 0.85, 2.21, 0.447, 0.0172],
  ["mono", 0.4, 0.143, 0.126, 0.00017],
  ["fluorocarbon", 0.36, 0.181, 0.102, 0.00078],
];

describe("line from its material and diameter", () => {
  test.each(TABLE)("%s of %s mm", (material, diameterMm, gramsM, areaMm2, weightN) => {
    const made = lineMake(material, diameterMm / 1000);
    if (!made.ok) throw new Error(made.why);
    expectNear("mass", made.massKgM * 1000, gramsM, 0.006);
    expectNear("section", made.displacedM2 * 1e6, areaMm2, 0.0006);
    expectNear("weight", weightInWaterNPerM(made, WATER.densityKgM3), weightN, 6e-5);
  });
  test("a weighed mass replaces the computed one and keeps the water it displaces", () => {
    const made = lineMake("leadcore", 0.85e-3, 0.0025);
    expect(made).toMatchObject({ massKgM: 0.0025 });
    if (made.ok) expectNear("section", made.displacedM2 * 1e6, 0.447, 0.001);
  });
  test("a thicker core sinks more", () => {
    const weight = (coreM: number) => {
      const made = lineMake("leadcore", 0.85e-3, undefined, coreM);
      return made.ok ? weightInWaterNPerM(made, WATER.densityKgM3) : Number.NaN;
    };
    expect(weight(0.5e-3)).toBeGreaterThan(weight(0.38e-3));
  });
  test.each([
    [Number.NaN, undefined, /diameter is not a number/],
    [0, undefined, /diameter is 0 m/],
    [0.5, undefined, /diameter is 0.5 m/],
    [9e-4, -1, /mass is -1 kg\/m/],
    [9e-4, Number.NaN, /mass is not a number/],
  ])("diameter %s, weighed %s is refused", (diameterM, weighed, why) => {
    const made = lineMake("steel", diameterM, weighed);
    expect(made.ok ? "" : made.why).toMatch(why);
  });
});
