/** How a run ends; scripts go by it. */

/** Everything fine. */
export const FINE = 0;
/** `check` found errors, or a `--check` found something to change. */
export const FOUND = 1;
/** Arguments or a named input could not be used. The rest of the run went on all the same. */
export const UNUSABLE = 2;

export type ExitCode = typeof FINE | typeof FOUND | typeof UNUSABLE;

/** The graver of several endings. */
export function gravest(...codes: readonly ExitCode[]): ExitCode {
  return codes.includes(UNUSABLE) ? UNUSABLE : codes.includes(FOUND) ? FOUND : FINE;
}
