import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";

/** Standard acceleration of gravity, m/s2, exact by convention (CGPM 1901). */
export const GRAVITY_M_S2 = 9.80665;

/** What a line feels of the water around it. */
export interface Water {
  /** Density, kg/m3. */
  readonly densityKgM3: number;
  /** Kinematic viscosity, m2/s; used only by drag laws that depend on the Reynolds number. */
  readonly kinematicViscosityM2S: number;
}

/**
 * Water at one atmosphere from its temperature (-2 to 45 degrees C) and practical salinity (0 fresh, up to 42).
 * Fresh water takes Kell's density, salt water EOS-80; the viscosity is Laliberte's with a salt correction.
 * Pressure is left out: at 100 m it changes the density by 0.05 %.
 */
export function waterAt(temperatureC: number, salinity = 0): ({ readonly ok: true } & Water) | Refusal {
  const why =
    whyNotInRange("the water temperature", temperatureC, -2, 45, "C") ??
    whyNotInRange("the salinity", salinity, 0, 42, "psu");
  if (why !== undefined) return refuse(why);
  const densityKgM3 =
    salinity === 0 ? freshDensityKgM3(temperatureC) : saltDensityKgM3(temperatureC, salinity);
  const kinematicViscosityM2S = viscosityPaS(temperatureC, salinity) / densityKgM3;
  return { ok: true, densityKgM3, kinematicViscosityM2S };
}

/**
 * Density of fresh water, kg/m3, at a temperature in degrees C (0 to 100), within 0.005 kg/m3 of Tanaka 2001.
 * Source: Kell 1975, J. Chem. Eng. Data 20:97. The constant below the line is 16.879850e-3; many copies swap
 * its digits to 16.897850e-3, which is 0.27 kg/m3 too light at 20 C.
 */
export function freshDensityKgM3(temperatureC: number): number {
  const t = temperatureC;
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

/**
 * Density of salt water at the surface, kg/m3, from temperature (degrees C on the ITS-90 scale) and practical
 * salinity. Source: EOS-80 at zero pressure, Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44, equations
 * 13 and 14, which take the older T68 scale: T68 = 1.00024 T90.
 */
export function saltDensityKgM3(temperatureC: number, salinity: number): number {
  return eos80DensityKgM3(1.00024 * temperatureC, salinity);
}

/** EOS-80 at zero pressure with the temperature on its own T68 scale, as its published check values state it. */
export function eos80DensityKgM3(t68C: number, salinity: number): number {
  const t = t68C;
  const pure =
    999.842594 +
    t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const a = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
  return pure + a * salinity + b * salinity * Math.sqrt(salinity) + 4.8314e-4 * salinity * salinity;
}

/**
 * Dynamic viscosity, Pa s. Fresh: Laliberte 2007, J. Chem. Eng. Data 52:321 (its water term), within 0.15 % of
 * IAPWS. Salt: that value times the ratio of Sharqawy, Lienhard & Zubair 2010, with the constants from memory;
 * it agrees with the towing-tank table at 15 C and 35 g/kg within 0.1 %, ample for a drag coefficient.
 */
export function viscosityPaS(temperatureC: number, salinity = 0): number {
  const t = temperatureC;
  const fresh = (1e-3 * (t + 246)) / ((0.05594 * t + 5.2842) * t + 137.37);
  if (salinity === 0) return fresh;
  const s = salinity / 1000;
  const a = 1.541 + t * (1.998e-2 - t * 9.52e-5);
  const b = 7.974 + t * (-7.561e-2 + t * 4.724e-4);
  return fresh * (1 + a * s + b * s * s);
}
