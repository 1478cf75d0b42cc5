/** Names are compared letter for letter; capitals are forgiven where only one thing can be meant. */

type Names = ReadonlyMap<string, unknown>;

/** Names by their lowercase; null where several have the same. Kept for as long as the gear is. */
const lowered = new WeakMap<Names, ReadonlyMap<string, string | null>>();

/**
 * The known name that a written one stands for: itself where it is known, else the only one that differs in capitals
 * alone. Gives the written name back where there is none, or more than one.
 */
export function matchName(known: Names, written: string): string {
  if (known.has(written)) return written;
  return loweredNames(known).get(written.toLowerCase()) ?? written;
}

/** The same for a name that may not be there. */
export function matchMaybe(known: Names, written: string | undefined): string | undefined {
  return written === undefined ? undefined : matchName(known, written);
}

function loweredNames(known: Names): ReadonlyMap<string, string | null> {
  const made = lowered.get(known);
  if (made !== undefined) return made;
  const names = new Map<string, string | null>();
  for (const name of known.keys()) {
    const key = name.toLowerCase();
    names.set(key, names.has(key) ? null : name);
  }
  lowered.set(known, names);
  return names;
}
