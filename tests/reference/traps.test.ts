/** Numbers that are often copied wrong, or mixed from two tables: ours are the right ones. */
import { describe, expect, test } from "vitest";
import { findUnit, toSi } from "../../grammar/units.ts";
import { wayBetween } from "../../server/analysis/geodesic.ts";
import { eos80DensityKgM3, freshDensityKgM3, saltDensityKgM3 } from "../../server/physics/water.ts";

const si = (value: number, spelling: string): number => {
  const unit = findUnit(spelling);
  if (unit === undefined) throw new Error(`no unit ${spelling}`);
  return toSi(value, unit);
};

describe("units are exact by definition (international foot, pound and nautical mile)", () => {
  test.each([
    ["ft", 0.3048],
    ["yd", 0.9144],
    ["in", 0.0254],
    ["mi", 1609.344],
    // Six international feet; on the survey foot, withdrawn in 2022, it would be 1.828804.
    ["fathoms", 1.8288],
    ["lb", 0.45359237],
  ])("%s is %d, not a rounded one", (unit, wanted) => {
    expect(si(1, unit)).toBe(wanted);
  });
  test("a knot is 1852 m in an hour", () => {
    expect(si(1, "kn")).toBeCloseTo(1852 / 3600, 15);
  });
});

test("Kell's denominator has 16.879850e-3; with its digits swapped water at 20 C would be 997.9355", () => {
  expect(freshDensityKgM3(20)).toBeCloseTo(998.2041, 4);
});

test("EOS-80 takes the older scale: its published 1027.67547 is at T68 = 5, and so at T90 = 5 / 1.00024", () => {
  expect(eos80DensityKgM3(5, 35)).toBeCloseTo(1027.67547, 5);
  expect(saltDensityKgM3(5 / 1.00024, 35)).toBeCloseTo(1027.67547, 5);
  expect(Math.abs(saltDensityKgM3(5, 35) - 1027.67547)).toBeGreaterThan(1e-4);
});

test("sea water at 15 C is that of one atmosphere (TEOS-10: 1025.976), not the towing tanks' 1026.021", () => {
  expect(Math.abs(saltDensityKgM3(15, 35) - 1025.976)).toBeLessThan(0.01);
  expect(Math.abs(saltDensityKgM3(15, 35) - 1026.021)).toBeGreaterThan(0.03);
});

test("a minute of latitude at 43.5 N is 1851.71 m on the ellipsoid: it is not the nautical mile", () => {
  const at = (latitudeDeg: number) => ({ latitudeDeg, longitudeDeg: -86 });
  const way = wayBetween(at(43.5 - 1 / 120), at(43.5 + 1 / 120));
  expect(way?.distanceM).toBeCloseTo(1851.708, 2);
});
