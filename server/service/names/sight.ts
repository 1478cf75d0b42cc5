/** What each file sees of the gear books: the names known to a boat there. */
import { type BookFile, fileGear, linesOfBoat } from "../../model/gear-lines.ts";
import type { Journals } from "./journals.ts";
import { KnownNames } from "./known-names.ts";
import type { NamedFile } from "./named-file.ts";

/** The gear within reach of one file, itself included. */
export class Sight {
  readonly #files: readonly BookFile[];
  readonly #known = new Map<string | null, KnownNames>();

  constructor(files: readonly BookFile[]) {
    this.#files = files;
  }

  /** The names of a boat's gear; without a boat, of the gear above any. */
  known(boat: string | null): KnownNames {
    const known = this.#known.get(boat) ?? new KnownNames(this.#linesOf(boat));
    this.#known.set(boat, known);
    return known;
  }

  /** The lines that open a boat. */
  openers(boat: string): { uri: string; lineIndex: number }[] {
    return this.#files.flatMap((file) =>
      fileGear(file)
        .boats.filter((opener) => opener.boat === boat)
        .map(({ lineIndex }) => ({ uri: file.uri, lineIndex })),
    );
  }

  #linesOf(boat: string | null): ReturnType<typeof linesOfBoat> {
    if (boat !== null) return linesOfBoat(this.#files, boat);
    return this.#files.flatMap((file) => fileGear(file).lines.filter((line) => line.boat === null));
  }
}

/** Sights of the files of a workspace, each looked up once; trips of one folder see the same books. */
export class Sights {
  readonly #journals: Journals;
  readonly #byFolder = new Map<string, Sight>();
  readonly #byFile = new Map<string, Sight>();

  constructor(journals: Journals) {
    this.#journals = journals;
  }

  of(record: NamedFile): Sight {
    const folder = record.uri.slice(0, record.uri.lastIndexOf("/"));
    const [kept, key] = holdsGear(record) ? [this.#byFile, record.uri] : [this.#byFolder, folder];
    const sight = kept.get(key) ?? new Sight(this.#filesFor(record));
    kept.set(key, sight);
    return sight;
  }

  #filesFor({ uri, ...record }: NamedFile): readonly BookFile[] {
    const books = this.#journals.booksNear(uri);
    const parse = holdsGear(record) ? this.#journals.read(uri) : undefined;
    return parse === undefined ? books : [{ uri, parse }, ...books];
  }
}

/** Names that a trip defines for itself are no gear. */
const OF_TRIPS: ReadonlySet<string> = new Set(["guest", "person"]);

function holdsGear({ kind, places }: Pick<NamedFile, "kind" | "places">): boolean {
  return kind === "gear" || places.some((place) => place.role === "definition" && !OF_TRIPS.has(place.kind));
}
