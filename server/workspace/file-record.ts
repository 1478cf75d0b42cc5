/** What is kept of a file: its places packed where it is not open, as they were read where it is. */
import { isRead } from "../../grammar/is-read.ts";
import type { Parse } from "../../grammar/parse.ts";
import { type NamedPlace, namedPlaces } from "../model/named-places.ts";
import { contentHash } from "./content-hash.ts";
import type { FileRecord } from "./index-view.ts";
import type { NameTable } from "./name-table.ts";
import { unpackPlaces } from "./packed-places.ts";
import { HeadingGatherer, lineFact } from "./trip-headings.ts";

const BOM = "\ufeff";
const GEAR_ENDING = ".gear";

/** What kind of file an address names. */
export function kindOfFile(uri: string): FileRecord["kind"] {
  return uri.toLowerCase().endsWith(GEAR_ENDING) ? "gear" : "trip";
}

/** A record without its places, which are kept packed. */
export type Outline = Omit<FileRecord, "places" | "definitions">;

/** The record of a file that isn't open. */
export class PackedRecord implements FileRecord {
  readonly uri: string;
  readonly kind: FileRecord["kind"];
  readonly hash: string;
  readonly bom: boolean;
  readonly boats: readonly string[];
  readonly describes: readonly string[];
  readonly hasLooseGear: boolean;
  readonly trips: FileRecord["trips"];
  readonly packed: Uint8Array;
  readonly #names: NameTable;

  constructor(outline: Outline, packed: Uint8Array, names: NameTable) {
    this.uri = outline.uri;
    this.kind = outline.kind;
    this.hash = outline.hash;
    this.bom = outline.bom;
    this.boats = outline.boats;
    this.describes = outline.describes;
    this.hasLooseGear = outline.hasLooseGear;
    this.trips = outline.trips;
    this.packed = packed;
    this.#names = names;
  }

  get places(): readonly NamedPlace[] {
    return unpackPlaces(this.packed, this.#names) ?? [];
  }

  get definitions(): readonly NamedPlace[] {
    return unpackPlaces(this.packed, this.#names, isDefinition) ?? [];
  }
}

function isDefinition({ role }: Pick<NamedPlace, "role">): boolean {
  return role === "definition";
}

const recordOfParse = new WeakMap<Parse, FileRecord>();

/** The record of a file that is read anyway; the very same while its parse is. */
export function fileRecord(uri: string, parse: Parse): FileRecord {
  const known = recordOfParse.get(parse);
  if (known?.uri === uri) return known;
  const { lines, bom } = parse.journal;
  const gatherer = new HeadingGatherer();
  lines.forEach((line, lineIndex) => {
    const fact = lineFact(line);
    if (fact !== undefined) gatherer.add(lineIndex, fact, isRead(line) ? line.clock : null);
  });
  const text = (): string => lines.map(({ raw, end }) => raw + end).join("");
  const record: FileRecord = {
    uri,
    kind: kindOfFile(uri),
    bom,
    ...gatherer.end(),
    get hash(): string {
      return contentHash(bom ? BOM + text() : text());
    },
    get places(): readonly NamedPlace[] {
      return namedPlaces(parse);
    },
    get definitions(): readonly NamedPlace[] {
      return namedPlaces(parse).filter(isDefinition);
    },
  };
  recordOfParse.set(parse, record);
  return record;
}
