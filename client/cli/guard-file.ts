/** Keeps one file's failure to that file: the rest of the run goes on. */

/** What a file gave, or why it gave nothing. */
type Guarded<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/** Runs the work on one file; a bug in it costs that file, not the run. */
export function guardFile<T>(work: () => T): Guarded<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return { ok: false, why: `a bug in deepwake stopped it (${said.split("\n")[0]}); please report it` };
  }
}
