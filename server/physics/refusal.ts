/**
 * What every solver here answers instead of a number it cannot stand behind: `why` is one plain sentence part
 * without a capital or a full stop, so that a caller can put it after "no depth: ". It is in SI.
 */
export interface Refusal {
  readonly ok: false;
  readonly why: string;
  /** The value that is refused, where it is one: for whoever words it in other units. */
  readonly outside?: OutOfRange;
}

/** A value beyond what is solved, in the SI unit named (temperatures in C); `why` says so in words. */
export interface OutOfRange {
  readonly what: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly why: string;
}

/** A reason to refuse: a sentence part, or a value that is out of range. */
export type Reason = string | OutOfRange;

/** Builds a refusal. */
export function refuse(reason: Reason): Refusal {
  return typeof reason === "string"
    ? { ok: false, why: reason }
    : { ok: false, why: reason.why, outside: reason };
}

/**
 * Says why a value is not usable, or `undefined` when it is: it must be a finite number from `low` to `high`
 * inclusive, in the unit named.
 */
export function whyNotInRange(
  what: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): Reason | undefined {
  if (typeof value !== "number" || !Number.isFinite(value)) return `${what} is not a number`;
  if (value >= low && value <= high) return undefined;
  const [shown, range] = [Number(value.toPrecision(6)), `${low} to ${high} ${unit}`.trim()];
  const why = `${what} is ${`${shown} ${unit}`.trim()}, outside ${range}`;
  return { what, value, low, high, unit, why };
}
