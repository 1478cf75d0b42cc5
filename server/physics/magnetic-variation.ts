/**
 * Magnetic variation at a place and time: the angle from true north to the compass needle's, east positive. The field
 * is the sum of the World Magnetic Model's spherical harmonics on the WGS 84 ellipsoid (Chulliat et al., The US/UK
 * World Magnetic Model, technical report, section 1.2).
 */
import { MAGNETIC_MODEL } from "./magnetic-coefficients.ts";

const RAD = Math.PI / 180;
/** The model's reference radius, and the ellipsoid's half axes, m. */
const REFERENCE_M = 6_371_200;
const EQUATOR_M = 6_378_137;
const POLE_M = 6_356_752.3142;
/** Where the field is nearly upright a compass tells nothing: the model's makers warn below this, nT. */
const LEAST_LEVEL_NT = 2000;

/** A place and a time: degrees, north and east positive; height above the ellipsoid, m; a year with its fraction. */
export interface MagneticPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly heightM?: number;
  readonly year: number;
}

/**
 * The variation in degrees, east positive. Undefined outside of the model's years, at a place that is none, and where
 * the needle points down rather than north, as near the poles.
 */
export function magneticVariationDeg(place: MagneticPlace): number | undefined {
  const { latitudeDeg, longitudeDeg, year } = place;
  if (!(year >= MAGNETIC_MODEL.fromYear && year < MAGNETIC_MODEL.toYear)) return undefined;
  if (!(Math.abs(latitudeDeg) < 89.99) || !Number.isFinite(longitudeDeg)) return undefined;
  const { northNT, eastNT } = levelField(place);
  return Math.hypot(northNT, eastNT) < LEAST_LEVEL_NT ? undefined : Math.atan2(eastNT, northNT) / RAD;
}

/** The level part of the field, nT. */
function levelField({ latitudeDeg, longitudeDeg, heightM = 0, year }: MagneticPlace): {
  northNT: number;
  eastNT: number;
} {
  const latitude = latitudeDeg * RAD;
  const { radiusM, geocentric } = fromCenter(latitude, heightM);
  const [cos, sin] = [Math.sin(geocentric), Math.cos(geocentric)];
  const shapes = legendre(cos, sin);
  const years = year - MAGNETIC_MODEL.fromYear;
  let [north, east, down] = [0, 0, 0];
  coefficients().forEach((row, i) => {
    const degree = i + 1;
    const reach = (REFERENCE_M / radiusM) ** (degree + 2);
    row.forEach(([g0, h0, gYear, hYear], order) => {
      const [g, h] = [g0 + gYear * years, h0 + hYear * years];
      const angle = order * longitudeDeg * RAD;
      const { value, slope } = shapes[degree]?.[order] ?? NO_SHAPE;
      const along = g * Math.cos(angle) + h * Math.sin(angle);
      north += reach * along * slope;
      east += (reach * order * (g * Math.sin(angle) - h * Math.cos(angle)) * value) / sin;
      down -= reach * (degree + 1) * along * value;
    });
  });
  const tilt = geocentric - latitude;
  return { northNT: north * Math.cos(tilt) - down * Math.sin(tilt), eastNT: east };
}

/** Distance from the earth's center, and the latitude seen from there. */
function fromCenter(latitude: number, heightM: number): { radiusM: number; geocentric: number } {
  const [cos, sin] = [Math.cos(latitude), Math.sin(latitude)];
  const curvatureM = EQUATOR_M ** 2 / Math.hypot(EQUATOR_M * cos, POLE_M * sin);
  const outM = (curvatureM + heightM) * cos;
  const upM = ((POLE_M / EQUATOR_M) ** 2 * curvatureM + heightM) * sin;
  return { radiusM: Math.hypot(outM, upM), geocentric: Math.atan2(upM, outM) };
}

/** A Legendre function of one degree and order at an angle from the north pole, and its slope by that angle. */
interface Shape {
  readonly value: number;
  readonly slope: number;
}

const NO_SHAPE: Shape = { value: 0, slope: 0 };

/** Schmidt's semi-normalized functions by degree and order, from the angle's cosine and sine. */
function legendre(cos: number, sin: number): Shape[][] {
  const shapes: Shape[][] = [[{ value: 1, slope: 0 }]];
  for (let n = 1; n <= MAGNETIC_MODEL.rows.length; n++) {
    const row: Shape[] = [];
    for (let m = 0; m < n; m++) {
      const [one, two] = [shapes[n - 1]?.[m] ?? NO_SHAPE, shapes[n - 2]?.[m] ?? NO_SHAPE];
      const scale = Math.sqrt(n * n - m * m);
      const back = Math.sqrt(Math.max(0, (n - 1) ** 2 - m * m));
      row.push({
        value: ((2 * n - 1) * cos * one.value - back * two.value) / scale,
        slope: ((2 * n - 1) * (cos * one.slope - sin * one.value) - back * two.slope) / scale,
      });
    }
    const last = shapes[n - 1]?.[n - 1] ?? NO_SHAPE;
    const share = n === 1 ? 1 : Math.sqrt((2 * n - 1) / (2 * n));
    row.push({ value: share * sin * last.value, slope: share * (sin * last.slope + cos * last.value) });
    shapes.push(row);
  }
  return shapes;
}

type Coefficients = readonly [g: number, h: number, gYear: number, hYear: number];

let known: readonly (readonly Coefficients[])[] | undefined;

/** By degree from 1 and order from 0; read from the table when first asked for. */
function coefficients(): readonly (readonly Coefficients[])[] {
  known ??= MAGNETIC_MODEL.rows.map((row) =>
    row.split("; ").map((words): Coefficients => {
      const [g = 0, h = 0, gYear = 0, hYear = 0] = words.split(" ").map(Number);
      return [g, h, gYear, hYear];
    }),
  );
  return known;
}
