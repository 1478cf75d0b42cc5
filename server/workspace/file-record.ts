/** Makes the record of a file: of one that is open from its parse, of one that is not from its text, line by line. */
import { isRead } from "../../grammar/is-read.ts";
import { LineSpans, type Parse } from "../../grammar/parse.ts";
import { type Block, readLine } from "../../grammar/read-line.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { type NamedPlace, namedPlaces, placesOn } from "../model/named-places.ts";
import { contentHash } from "./content-hash.ts";
import type { FileRecord } from "./index-view.ts";
import { type NameTable, standalone } from "./name-table.ts";
import { PlacePacker, unpackPlaces } from "./packed-places.ts";
import { HeadingGatherer, type LineFact, lineFact } from "./trip-headings.ts";

const BOM = "\ufeff";
const GEAR_ENDING = ".gear";

/** What kind of file an address names. */
export function kindOfFile(uri: string): FileRecord["kind"] {
  return uri.toLowerCase().endsWith(GEAR_ENDING) ? "gear" : "trip";
}

/** A record without its places, which are kept packed. */
export type Outline = Omit<FileRecord, "places">;

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
  };
  recordOfParse.set(parse, record);
  return record;
}

/** What the index keeps of a line, whatever file and minute it stands in. */
interface LineGist {
  readonly next: Block;
  /** Start, length and name number of each place, one after the other. */
  readonly places: readonly number[];
  readonly fact: LineFact | undefined;
  readonly clock: string | null;
}

/** A line with a plain clock at its margin reads the same at any minute. */
const PLAIN_CLOCK = /^(?:[01]\d|2[0-3]):[0-5]\d /;
const CLOCK_LENGTH = 5;
/** Past so many different lines the reader forgets them and starts anew. */
const MOST_GISTS = 50_000;

/** Makes records of texts. Logs repeat themselves: a line that was read in any file before is not read again. */
export class RecordReader {
  readonly #names: NameTable;
  readonly #packer = new PlacePacker();
  #gists = new Map<string, LineGist>();
  #linesRead = 0;

  constructor(names: NameTable) {
    this.#names = names;
  }

  /** How many lines were read, repeated ones left out. */
  get linesRead(): number {
    return this.#linesRead;
  }

  /** Forgets the lines it has read; for when a long row of files is done. */
  forget(): void {
    this.#gists = new Map();
  }

  read(uri: string, text: string): PackedRecord {
    const bom = text.startsWith(BOM);
    const spans = new LineSpans(text, bom ? 1 : 0);
    const gatherer = new HeadingGatherer();
    let block: Block = "margin";
    for (let lineIndex = 0; lineIndex < spans.length; lineIndex++) {
      const raw = spans.text(lineIndex);
      const gist = this.#gistOf(raw, block);
      block = gist.next;
      const { places, fact } = gist;
      for (let at = 0; at < places.length; at += 3)
        this.#packer.add(lineIndex, places[at] ?? 0, places[at + 1] ?? 0, places[at + 2] ?? 0);
      if (fact !== undefined) gatherer.add(lineIndex, fact, gist.clock ?? plainClock(raw));
    }
    const outline = { uri, kind: kindOfFile(uri), hash: contentHash(text), bom, ...gatherer.end() };
    return new PackedRecord(outline, this.#packer.take(), this.#names);
  }

  #gistOf(raw: string, block: Block): LineGist {
    const isTimed = PLAIN_CLOCK.test(raw);
    // After a plain clock the block above doesn't matter; the sign can't start a line's text.
    const key = isTimed ? `:${raw.slice(CLOCK_LENGTH)}` : `${block} ${raw}`;
    const known = this.#gists.get(key);
    if (known !== undefined) return known;
    const gist = this.#readGist(raw, block, isTimed);
    if (this.#gists.size >= MOST_GISTS) this.forget();
    this.#gists.set(standalone(key), gist);
    return gist;
  }

  #readGist(raw: string, block: Block, isTimed: boolean): LineGist {
    this.#linesRead++;
    const { line, next } = readLine(raw, "\n", block, VOCABULARY);
    const places = isRead(line)
      ? placesOn(line).flatMap(({ kind, name, role, start, stop }) => [
          start,
          stop - start,
          this.#names.idOf(kind, name, role),
        ])
      : [];
    const clock = isRead(line) && !isTimed ? line.clock : null;
    return { next, places, fact: standaloneFact(lineFact(line)), clock };
  }
}

function plainClock(raw: string): string | null {
  return PLAIN_CLOCK.test(raw) ? raw.slice(0, CLOCK_LENGTH) : null;
}

function standaloneFact(fact: LineFact | undefined): LineFact | undefined {
  if (fact === undefined) return undefined;
  return Object.fromEntries(
    Object.entries(fact).map(([key, value]) => [key, standalone(value)]),
  ) as unknown as LineFact;
}
