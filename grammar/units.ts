/**
 * The units a journal may be written in: canonical spelling, what they measure, and the exact factor to SI.
 * Factors are exact by definition (international foot and pound of 1959, nautical mile of 1929; NIST SP 811 App. B).
 */

/** What a quantity measures. */
export type Dimension =
  | "length"
  | "speed"
  | "temperature"
  | "mass"
  | "duration"
  | "linear-density"
  | "angle"
  | "area"
  | "force"
  | "pressure";

/** One unit: `toSi = value × factor + shift`. */
export interface UnitRow {
  /** Canonical spelling, as the formatter writes it. */
  readonly unit: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly shift: number;
  /** Other spellings that are read; compared without regard to case. */
  readonly aliases: readonly string[];
  readonly doc: string;
}

/** The SI unit each dimension is computed in. */
export const SI_UNIT: Readonly<Record<Dimension, string>> = {
  length: "m",
  speed: "m/s",
  temperature: "°C",
  mass: "kg",
  duration: "s",
  "linear-density": "kg/m",
  angle: "°",
  area: "m²",
  force: "N",
  pressure: "Pa",
};

const row = (
  unit: string,
  dimension: Dimension,
  factor: number,
  aliases: string,
  doc: string,
  shift = 0,
): UnitRow => ({
  unit,
  dimension,
  factor,
  shift,
  aliases: aliases === "" ? [] : aliases.split(" "),
  doc,
});

/** Every unit of the language. A leadcore color is ten yards (common practice). */
export const UNITS: readonly UnitRow[] = [
  row("ft", "length", 0.3048, "foot feet '", "feet"),
  row("in", "length", 0.0254, 'inch inches "', "inches"),
  row("yd", "length", 0.9144, "yard yards yds", "yards"),
  row("fathoms", "length", 1.8288, "fathom fm", "fathoms of six feet"),
  row("colors", "length", 9.144, "color colour colours", "colors of leadcore, ten yards each"),
  row("mm", "length", 0.001, "millimeter millimeters", "millimeters"),
  row("cm", "length", 0.01, "centimeter centimeters", "centimeters"),
  row("m", "length", 1, "meter meters metre metres", "meters"),
  row("km", "length", 1000, "kilometer kilometers", "kilometers"),
  row("mi", "length", 1609.344, "mile miles", "statute miles"),
  row("nmi", "length", 1852, "nm", "nautical miles"),
  row("mph", "speed", 0.44704, "", "statute miles per hour"),
  row("kn", "speed", 1852 / 3600, "kt kts knot knots", "knots"),
  row("km/h", "speed", 1 / 3.6, "kph kmh", "kilometers per hour"),
  row("m/s", "speed", 1, "", "meters per second"),
  row("F", "temperature", 5 / 9, "°F degF", "degrees Fahrenheit", -160 / 9),
  row("C", "temperature", 1, "°C degC", "degrees Celsius"),
  row("lb", "mass", 0.45359237, "lbs pound pounds", "pounds"),
  row("oz", "mass", 0.028349523125, "ounce ounces", "ounces"),
  row("kg", "mass", 1, "kilo kilos", "kilograms"),
  row("g", "mass", 0.001, "gram grams", "grams"),
  row("h", "duration", 3600, "hr hrs hour hours", "hours"),
  row("min", "duration", 60, "mins minute minutes", "minutes"),
  row("s", "duration", 1, "sec second seconds", "seconds"),
  row("days", "duration", 86400, "day", "days"),
  row("g/m", "linear-density", 0.001, "", "grams per meter of line"),
  row("deg", "angle", 1, "° degree degrees", "degrees of angle"),
  row("cm2", "area", 1e-4, "cm²", "square centimeters"),
  row("lbf", "force", 4.4482216152605, "", "pounds of pull"),
  row("N", "force", 1, "newton newtons", "newtons"),
  row("hPa", "pressure", 100, "mb mbar", "hectopascals"),
  row("inHg", "pressure", 3386.389, "", "inches of mercury"),
];

const bySpelling = new Map<string, UnitRow>();
for (const unit of UNITS) {
  for (const spelling of [unit.unit, ...unit.aliases]) {
    const key = spelling.toLowerCase();
    if (bySpelling.has(key)) throw new Error(`two units are spelled "${spelling}"`);
    bySpelling.set(key, unit);
  }
}

/** Finds a unit by any of its spellings, in any case; undefined when there is none. */
export function findUnit(spelling: string): UnitRow | undefined {
  return bySpelling.get(spelling) ?? bySpelling.get(spelling.toLowerCase());
}

/** Converts a number in a unit to the dimension's SI unit (temperatures to °C). */
export function toSi(value: number, unit: UnitRow): number {
  return value * unit.factor + unit.shift;
}

/** Converts an SI value (temperatures in °C) to a unit. */
export function fromSi(value: number, unit: UnitRow): number {
  return (value - unit.shift) / unit.factor;
}
