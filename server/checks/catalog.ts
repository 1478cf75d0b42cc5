/** The one table of checks. Message texts and severities live in its parts and nowhere else. */
import * as day from "./catalog/day.ts";
import * as language from "./catalog/language.ts";
import type { CheckRow } from "./check.ts";

/** Every check, sorted by slug. */
export const CATALOG: readonly CheckRow<never>[] = [
  ...Object.values(language as Record<string, CheckRow<never>>),
  ...Object.values(day),
].sort((a, b) => (a.slug < b.slug ? -1 : 1));

/** Finds a check by its slug. */
export function findCheck(slug: string): CheckRow<never> | undefined {
  return CATALOG.find((row) => row.slug === slug);
}
