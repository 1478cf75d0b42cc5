/**
 * What every solver here answers instead of a number it cannot stand behind: `why` is one plain sentence part
 * for the captain, without a capital or a full stop, so that a caller can put it after "no depth: ".
 */
export interface Refusal {
  readonly ok: false;
  readonly why: string;
}

/** Builds a refusal. */
export function refuse(why: string): Refusal {
  return { ok: false, why };
}

/**
 * Says why a value is not usable, or `undefined` when it is: it must be a finite number from `low` to `high`
 * inclusive, in the unit named.
 */
export function whyNotInRange(
  name: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): string | undefined {
  if (typeof value !== "number" || !Number.isFinite(value)) return `${name} is not a number`;
  if (value < low || value > high) return `${name} is ${value} ${unit}, outside ${low} to ${high} ${unit}`;
  return undefined;
}
