import { describe, expect, test } from "vitest";
import {
  eos80DensityKgM3,
  freshDensityKgM3,
  saltDensityKgM3,
  viscosityPaS,
  waterAt,
} from "../../server/physics/water.ts";
import { checkRows } from "./reference-rows.ts";

const TANAKA = "Tanaka et al. 2001, Metrologia 38:301, doi 10.1088/0026-1394/38/4/3; seen, run";
const KELL = "Kell 1975, J. Chem. Eng. Data 20:97; constants seen, run";
const IAPWS = "IAPWS SR6-08 at 0.1 MPa; memory, confirmed by seen test values";
const EOS80 = "UNESCO Tech. Pap. Mar. Sci. 44 (1983); seen in three public test suites";
const TEOS10 = "python3-gsw 3.6.16 rho_t_exact, absolute salinity 35.16504; run";

/** Temperature (C), then kg/m3 by Tanaka and by Kell, then uPa s. */
const PURE = [
  [0, 999.8428, 999.8395, 1791.7824],
  [4, 999.9749, 999.972, 1567.3201],
  [5, 999.9668, 999.9638, 1518.1983],
  [10, 999.7027, 999.6996, 1305.9017],
  [15, 999.1026, 999.0996, 1137.5478],
  [20, 998.2067, 998.2041, 1001.5673],
  [25, 997.047, 997.0449, 889.9968],
  [30, 995.6488, 995.6473, 797.2062],
  [40, 992.2152, 992.2158, 652.7335],
] as const;

describe("density of fresh water, kg/m3", () => {
  checkRows(
    PURE.map(([t, , kell]) => ({ name: `${t} C`, input: t, expected: kell, tolerance: 5e-4, source: KELL })),
    freshDensityKgM3,
  );
  checkRows(
    PURE.map(([t, tanaka]) => ({
      name: `${t} C`,
      input: t,
      expected: tanaka,
      tolerance: 0.01,
      source: TANAKA,
    })),
    freshDensityKgM3,
  );
  test("the constant with swapped digits would be caught: it gives 997.9355 at 20 C", () => {
    expect(Math.abs(freshDensityKgM3(20) - 997.9355)).toBeGreaterThan(0.2);
  });
});

describe("density of fresh water against later standards, kg/m3", () => {
  checkRows(
    [
      {
        name: "25 C, IAPWS",
        input: 25,
        expected: 997.047013,
        tolerance: 0.005,
        source: "IAPWS SR6-08 at 298.15 K, in a public test suite (jjgomera/iapws 18d2c48e); seen",
      },
      {
        name: "15 C, towing tanks",
        input: 15,
        expected: 999.1026,
        tolerance: 0.005,
        source: "ITTC 7.5-02-01-03 Rev 03; seen, secondary",
      },
    ],
    freshDensityKgM3,
  );
});

describe("viscosity of fresh water, uPa s: Laliberte against IAPWS, within 0.2 %", () => {
  checkRows(
    PURE.map(([t, , , mu]) => ({
      name: `${t} C`,
      input: t,
      expected: mu,
      tolerance: 0.002 * mu,
      source: IAPWS,
    })),
    (t) => 1e6 * viscosityPaS(t),
  );
  checkRows(
    [
      {
        name: "25 C, the release's own test value",
        input: 25,
        expected: 889.996774,
        tolerance: 0.002 * 889.996774,
        source: "IAPWS SR6-08 at 298.15 K, in a public test suite (jjgomera/iapws 18d2c48e); seen",
      },
    ],
    (t) => 1e6 * viscosityPaS(t),
  );
});

describe("EOS-80 at zero pressure, kg/m3, on its own T68 scale", () => {
  checkRows(
    [
      [0, 5, 999.96675],
      [0, 25, 997.04796],
      [35, 5, 1027.67547],
      [35, 25, 1023.34306],
      [0, 0, 999.842594],
      [0, 30, 995.65113374],
      [35, 0, 1028.10633141],
      [35, 30, 1021.72863949],
    ].map(([salinity = 0, t68 = 0, expected = 0]) => ({
      name: `S ${salinity}, ${t68} C`,
      input: { salinity, t68 },
      expected,
      tolerance: 1e-5,
      source: EOS80,
    })),
    ({ salinity, t68 }) => eos80DensityKgM3(t68, salinity),
  );
});

describe("salt water against a later standard, kg/m3", () => {
  checkRows(
    [
      [0, 1028.10718],
      [5, 1027.6756],
      [10, 1026.95411],
      [15, 1025.97603],
      [20, 1024.766],
      [25, 1023.34363],
      [30, 1021.72609],
    ].map(([t = 0, expected = 0]) => ({
      name: `${t} C`,
      input: t,
      expected,
      tolerance: 0.01,
      source: TEOS10,
    })),
    (t) => saltDensityKgM3(t, 35),
  );
  checkRows(
    [
      {
        name: "27.962 C, absolute salinity 34.46824",
        input: 27.962,
        expected: 1021.8866110446,
        tolerance: 0.01,
        source: "TEOS-10/GSW-C gsw_check_data.h (f63ac47e), rho_t_exact, first cast point; seen",
      },
    ],
    // Absolute salinity is practical salinity times 35.16504 / 35, but for what the sea's own salts add locally.
    (t) => saltDensityKgM3(t, (34.468236430490606 * 35) / 35.16504),
  );
  checkRows(
    [
      {
        name: "kinematic viscosity at 15 C, 35.165 g/kg, um2/s",
        input: 35.16504,
        expected: 1.18831,
        tolerance: 0.0024,
        source: "ITTC 7.5-02-01-03 Rev 03; seen, secondary; our salt correction is from memory",
      },
      {
        name: "kinematic viscosity at 15 C, fresh, um2/s",
        input: 0,
        expected: 1.13858,
        tolerance: 0.0012,
        source: "ITTC 7.5-02-01-03 Rev 03; seen, secondary",
      },
    ],
    (salinity) => {
      const water = waterAt(15, salinity);
      return water.ok ? 1e6 * water.kinematicViscosityM2S : Number.NaN;
    },
  );
});

describe("water that is refused", () => {
  test.each([
    [Number.NaN, 0, "the water temperature is not a number"],
    [Number.POSITIVE_INFINITY, 0, "the water temperature is not a number"],
    [60, 0, "the water temperature is 60 C, outside -2 to 45 C"],
    [10, -1, "the salinity is -1 psu, outside 0 to 42 psu"],
  ])("%s C, salinity %s", (temperatureC, salinity, why) => {
    expect(waterAt(temperatureC, salinity)).toMatchObject({ ok: false, why });
  });
});
