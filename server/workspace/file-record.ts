/** Makes the record of a file: of one that is open from its parse, of one that is not from its text, line by line. */
import { isRead } from "../../grammar/is-read.ts";
import type { Parse } from "../../grammar/parse.ts";
import { type Block, readLine } from "../../grammar/read-line.ts";
import { lineText, textLines } from "../../grammar/text-lines.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { type NamedPlace, namedPlaces, placesOn } from "../model/named-places.ts";
import { contentHash } from "./content-hash.ts";
import type { FileRecord } from "./index-view.ts";
import { type NameTable, standalone } from "./name-table.ts";
import { PlacePacker, unpackPlaces } from "./packed-places.ts";
import { HeadingGatherer, type LineFact, lineFact } from "./trip-headings.ts";

const BOM = "\ufeff";
const GEAR_ENDING = ".gear";
const SPACE = 32;
const ZERO = 48;
const COLON = 58;

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

/** As long as `05:14`. */
const CLOCK_LENGTH = 5;
/** Past so many different lines the reader forgets them and starts anew. */
const MOST_GISTS = 50_000;

/** Makes records of texts. Logs repeat themselves: a line that was read in any file before is not read again. */
export class RecordReader {
  readonly #names: NameTable;
  readonly #packer = new PlacePacker();
  /** By the block a line stands in, or as `timed`; then by its text, without the clock of a timed one. */
  readonly #gists: Record<Block | "timed", Map<string, LineGist>> = {
    margin: new Map(),
    boat: new Map(),
    trip: new Map(),
    note: new Map(),
    timed: new Map(),
  };
  #known = 0;
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
    this.#known = 0;
    for (const gists of Object.values(this.#gists)) gists.clear();
  }

  read(uri: string, text: string): PackedRecord {
    const bom = text.startsWith(BOM);
    const lines = textLines(bom ? text.slice(1) : text);
    const gatherer = new HeadingGatherer();
    let block: Block = "margin";
    for (let lineIndex = 0; lineIndex < lines.starts.length; lineIndex++) {
      const raw = lineText(lines, lineIndex);
      const gist = this.#gistOf(raw, block);
      block = gist.next;
      const { places, fact } = gist;
      for (let at = 0; at < places.length; at += 3)
        this.#packer.add(lineIndex, places[at] ?? 0, places[at + 1] ?? 0, places[at + 2] ?? 0);
      if (fact !== undefined)
        gatherer.add(lineIndex, fact, gist.clock ?? (hasPlainClock(raw) ? raw.slice(0, CLOCK_LENGTH) : null));
    }
    const outline = { uri, kind: kindOfFile(uri), hash: contentHash(text), bom, ...gatherer.end() };
    return new PackedRecord(outline, this.#packer.take(), this.#names);
  }

  #gistOf(raw: string, block: Block): LineGist {
    // After a plain clock at the margin neither the block above nor the minute matters.
    const isTimed = hasPlainClock(raw);
    const gists = this.#gists[isTimed ? "timed" : block];
    const key = isTimed ? raw.slice(CLOCK_LENGTH) : raw;
    const known = gists.get(key);
    if (known !== undefined) return known;
    const gist = this.#readGist(raw, block, isTimed);
    if (this.#known >= MOST_GISTS) this.forget();
    this.#known++;
    gists.set(standalone(key), gist);
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

/** `05:14 ` and such at the very start, of a minute that there is. */
function hasPlainClock(raw: string): boolean {
  if (raw.charCodeAt(5) !== SPACE || raw.charCodeAt(2) !== COLON) return false;
  const [tens, ones] = [digitAt(raw, 0), digitAt(raw, 1)];
  return isDigit(ones) && tens * 10 + ones < 24 && digitAt(raw, 3) < 6 && isDigit(digitAt(raw, 4));
}

/** What is no digit is larger than any. */
function digitAt(raw: string, at: number): number {
  const digit = raw.charCodeAt(at) - ZERO;
  return digit >= 0 && digit <= 9 ? digit : Number.POSITIVE_INFINITY;
}

function isDigit(digit: number): boolean {
  return digit <= 9;
}

function standaloneFact(fact: LineFact | undefined): LineFact | undefined {
  if (fact === undefined) return undefined;
  return Object.fromEntries(
    Object.entries(fact).map(([key, value]) => [key, standalone(value)]),
  ) as unknown as LineFact;
}
