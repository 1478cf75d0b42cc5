/** Computes a value when it is first asked for, and keeps it, also where it is none. */
export function once<T>(compute: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => {
    known ??= { value: compute() };
    return known.value;
  };
}
