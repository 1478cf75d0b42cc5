/** Depth from the angle at which a wire comes out of the water, as sounding crews reckon it. */
import { describe } from "vitest";
import type { SolvedLine } from "../../server/physics/towed-line.ts";
import { RESTING, solved } from "./bare-line.ts";
import { checkBands, checkRows } from "./reference-rows.ts";

/** The part of a sounding line in the air feels no water: it is straight, at the angle of the forces at its end. */
describe("a sounding line in the air, what it is longer than the way straight down, in percent of that", () => {
  checkRows(
    [
      [4, 0.244],
      [10, 1.543],
      [20, 6.418],
      [30, 15.47],
      [36, 23.607],
    ].map(([angle = 0, expected = 0]) => ({
      name: `${angle} degrees`,
      input: angle,
      expected,
      tolerance: 5e-4,
      source: "air correction, Rantz et al. 1982, USGS WSP 2175 p. 160; rule seen, digits arithmetic",
    })),
    (angle) => {
      const endForceXN = 10 * Math.tan((angle * Math.PI) / 180);
      const { depthM } = solved({ ...RESTING, lengthM: 30, endWeightN: 10, endForceXN });
      return 100 * (30 / depthM - 1);
    },
  );
});

/** A wire with no weight of its own and a heavy body without drag, at an angle from the vertical at the surface. */
function atTopAngle(angleDeg: number): SolvedLine {
  const tan = Math.tan((angleDeg * Math.PI) / 180);
  return solved({ ...RESTING, lengthM: 10, coefficient: 2, speedMS: 1, endWeightN: 10 / tan });
}

/**
 * Loss in percent of length when the drag on each foot of depth stays that of an upright wire: an upper bound,
 * since a leaning wire feels less.
 */
function lossBound(angleDeg: number): number {
  const angle = (angleDeg * Math.PI) / 180;
  const tan = Math.tan(angle);
  return 100 * (1 - 2 / (1 / Math.cos(angle) + Math.asinh(tan) / tan));
}

describe("depth from a wire's angle at the surface", () => {
  checkBands(
    [
      [4, 0.06],
      [6, 0.16],
      [8, 0.32],
      [10, 0.5],
      [12, 0.72],
      [14, 0.98],
      [16, 1.28],
      [18, 1.64],
      [20, 2.04],
      [22, 2.48],
      [24, 2.96],
      [26, 3.5],
      [28, 4.08],
      [30, 4.72],
      [32, 5.44],
      [34, 6.2],
      [36, 6.98],
    ].map(([angle = 0, percent = 0]) => ({
      name: `${angle} degrees, loss in percent: between the table and the bound`,
      input: angle,
      low: percent,
      high: lossBound(angle),
      source: "wet-line table, Rantz 1982 (USGS WSP 2175), Corbett 1943, ISO 748; memory",
    })),
    (angle) => 100 * (1 - atTopAngle(angle).depthM / 10),
  );
  // Practice takes the wire as straight; a bowed wire with the same angle at the top lies deeper than that.
  checkBands(
    [
      {
        name: "300 m at 45 degrees fishes about 210 m or more",
        input: { out: 300, angle: 45 },
        low: 210,
        high: 300,
        source: "CalCOFI bongo tow, NOAA SWFSC; seen",
      },
      {
        name: "70 m at 15 degrees or less reaches 67.6 m",
        input: { out: 70, angle: 15 },
        low: 67.6,
        high: 70,
        source: "CalCOFI vertical tow, NOAA SWFSC; limit seen, product arithmetic",
      },
    ],
    ({ out, angle }) => (out / 10) * atTopAngle(angle).depthM,
  );
});
