/** What a row of the table of defaults says. */

/** How a row's standard deviation is meant. */
type SpreadKind = "absolute" | "of the logarithm" | "relative";

/** One value that the model takes when the gear book says nothing. */
export interface DefaultRow {
  /** In the unit named, SI. */
  readonly value: number;
  /** Standard deviation, or 0 where no band is drawn from it. */
  readonly sd: number;
  readonly spread: SpreadKind;
  /** "" for a plain number. */
  readonly unit: string;
  /** Where the value is from, in a few words. */
  readonly origin: string;
  /** One plain sentence for the captain. */
  readonly says: string;
}

/** A value that is taken as exact for the band. */
export function exact(value: number, unit: string, origin: string, says: string): DefaultRow {
  return { value, sd: 0, spread: "absolute", unit, origin, says };
}

/** A value with a standard deviation. */
export function spread(
  value: number,
  sd: number,
  kind: SpreadKind,
  unit: string,
  origin: string,
  says: string,
): DefaultRow {
  return { value, sd, spread: kind, unit, origin, says };
}

/** Where many values are from. */
export const TOWED_CABLE =
  "smooth-cylinder law for towed cables, raised for strumming; fitted from readings where there are any";
export const ASSUMED = "assumption, with a wide spread";
export const PRACTICE = "common practice";
export const JUDGED = "judgement";
