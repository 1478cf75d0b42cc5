/** The names of a whole workspace, each kept once, so that a place in a file is a few small numbers. */
import type { NamedKind, NamedPlace } from "../model/named-places.ts";

/** What a place says apart from where it stands. */
export type NameEntry = Pick<NamedPlace, "kind" | "name" | "role">;

/** Numbers for names. They are only ever added: what isn't written any more costs its few letters. */
export class NameTable {
  readonly #entries: NameEntry[] = [];
  readonly #ids = new Map<string, number>();

  /** The number of a name of that kind and role. */
  idOf(kind: NamedKind, name: string, role: NameEntry["role"]): number {
    const key = `${kind} ${role} ${name}`;
    const known = this.#ids.get(key);
    if (known !== undefined) return known;
    const id = this.#entries.length;
    this.#entries.push({ kind, name: standalone(name), role });
    this.#ids.set(standalone(key), id);
    return id;
  }

  entry(id: number): NameEntry | undefined {
    return this.#entries[id];
  }

  get entries(): readonly NameEntry[] {
    return this.#entries;
  }
}

/** A copy that doesn't hold on to the whole text it was cut from, as a slice of a string does. */
export function standalone(text: string): string {
  return ` ${text}`.slice(1);
}
