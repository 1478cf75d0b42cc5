/**
 * Thermocline and metalimnion against published profiles. The 23-point profile is that of the rLakeAnalyzer manual
 * (its answers were printed by running that package, commit e74974f7); the Sparkling Lake days and their answers are
 * shipped with it (lake data of the North Temperate Lakes programme).
 */
import { describe, expect, test } from "vitest";
import { lakeLayers, steepIntervals } from "../../server/physics/lake-layers.ts";
import { freshDensityKgM3 } from "../../server/physics/water.ts";

/** The density formula of the published answers: Martin & McCutcheon 1999. */
function lakeDensity(t: number): number {
  return 1000 * (1 - ((t + 288.9414) * (t - 3.9863) ** 2) / (508929.2 * (t + 68.12963)));
}

const profileOf = (depthsM: readonly number[], tempsC: readonly number[], density = lakeDensity) => ({
  depthsM,
  tempsC,
  densitiesKgM3: tempsC.map(density),
});

const MANUAL_DEPTHS = [0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20];
const MANUAL_TEMPS = [
  22.51, 22.42, 22.4, 22.4, 22.4, 22.36, 22.3, 22.21, 22.11, 21.23, 16.42, 15.15, 14.24, 13.35, 10.94, 10.43,
  10.36, 9.94, 9.45, 9.1, 8.91, 8.58, 8.43,
];

describe("the manual's profile", () => {
  const profile = profileOf(MANUAL_DEPTHS, MANUAL_TEMPS);

  test("by the greatest gradient", () => {
    const layers = lakeLayers(profile, false);
    expect(layers?.thermoclineM).toBeCloseTo(7.50212117488811, 11);
    expect(layers?.topM).toBeCloseTo(5.94372745080984, 11);
    expect(layers?.bottomM).toBeCloseTo(11.09140146145325, 11);
  });

  test("the seasonal one", () => {
    const layers = lakeLayers(profile, true);
    expect(layers?.thermoclineM).toBeCloseTo(11.4072455666574, 11);
    expect(layers?.topM).toBeCloseTo(9.42109466253239, 11);
    expect(layers?.bottomM).toBeCloseTo(12.24274330625614, 11);
  });

  test("with our own density, within a centimeter", () => {
    const ours = profileOf(MANUAL_DEPTHS, MANUAL_TEMPS, freshDensityKgM3);
    expect(lakeLayers(ours, true)?.thermoclineM).toBeCloseTo(11.4072, 2);
  });

  test("1 C per meter: 4.81, 1.27 and 2.41, and not 0.91 or 0.89", () => {
    expect(steepIntervals(MANUAL_DEPTHS, MANUAL_TEMPS)).toEqual([
      { topM: 7, bottomM: 8 },
      { topM: 8, bottomM: 9 },
      { topM: 11, bottomM: 12 },
    ]);
  });
});

const SPARKLING_DEPTHS = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 11, 13, 15, 18];

describe("Sparkling Lake, 2009", () => {
  test.each([
    {
      day: "2 May",
      temps: [
        6.555, 6.5285, 6.435, 6.465, 6.375, 6.415, 6.385, 6.335, 6.3415, 6.315, 6.255, 6.255, 6.1865, 5.9215,
        5.8065, 5.5585, 5.48, 5.255, 5.0765, 4.605,
      ],
      greatest: 7.54395369569,
      seasonal: 7.54395369569,
    },
    {
      day: "31 May",
      temps: [
        14.426, 14.774, 14.764, 14.794, 14.721, 14.812, 14.79, 14.742, 14.783, 14.703, 14.631, 14.419, 12.814,
        10.9, 9.6332, 7.7471, 6.6886, 5.968, 5.6327, 5.1988,
      ],
      greatest: 6.99673424407,
      seasonal: 9.16795510718,
    },
    {
      day: "30 July",
      temps: [
        19.882, 20.099, 20.186, 20.206, 20.1, 20.251, 20.181, 20.096, 20.203, 20.155, 20.046, 20.031, 19.671,
        17.359, 14.232, 11.929, 10.094, 7.8997, 6.8428, 5.9323,
      ],
      greatest: 8.22423928216,
      seasonal: 8.22423928216,
    },
  ])("$day", ({ temps, greatest, seasonal }) => {
    const profile = profileOf(SPARKLING_DEPTHS, temps);
    expect(lakeLayers(profile, false)?.thermoclineM).toBeCloseTo(greatest, 9);
    expect(lakeLayers(profile, true)?.thermoclineM).toBeCloseTo(seasonal, 9);
  });
});

describe("none where there is none", () => {
  test.each([
    ["two depths", [0, 10], [20, 8]],
    ["less than a degree in all", [0, 10, 20, 30], [5.9, 5.6, 5.2, 5]],
    ["repeated depths", [0, 10, 10, 20], [20, 12, 9, 6]],
    ["water that is heaviest on top throughout", [0, 10, 20], [4, 8, 12]],
  ])("%s", (_, depths, temps) => {
    expect(lakeLayers(profileOf(depths, temps))).toBeUndefined();
  });
});
