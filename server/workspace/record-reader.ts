/** Makes the records of texts. Logs repeat themselves: a line that was read before, in any file, is not read again. */
import { isRead } from "../../grammar/is-read.ts";
import { type Block, readLine } from "../../grammar/read-line.ts";
import { lineStop, textLines } from "../../grammar/text-lines.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { readPlaces } from "../model/named-places.ts";
import { contentHash } from "./content-hash.ts";
import { kindOfFile, PackedRecord } from "./file-record.ts";
import { type NameTable, standalone } from "./name-table.ts";
import { PlacePacker } from "./packed-places.ts";
import { CLOCK_LENGTH, hasPlainClock } from "./plain-clock.ts";
import { HeadingGatherer, type LineFact, lineFact } from "./trip-headings.ts";

const BOM = "\ufeff";
/** Past so many different lines they are forgotten. */
const MOST_GISTS = 50_000;

/** A line's block; after a plain clock at the margin neither the block above nor the minute matters. */
type Setting = Block | "timed";
const SETTINGS: readonly Setting[] = ["margin", "boat", "trip", "note", "timed"];

/** What the index keeps of a line, whatever file and minute it stands in. */
interface LineGist {
  readonly setting: Setting;
  /** The line; of a timed one what follows its clock. */
  readonly text: string;
  readonly next: Block;
  /** Start, length and name number of each place, one after the other. */
  readonly places: readonly number[];
  readonly fact: LineFact | undefined;
  /** Of a line that isn't timed. */
  readonly clock: string | null;
}

/** Reads texts, and remembers lines. */
export class RecordReader {
  readonly #names: NameTable;
  readonly #packer = new PlacePacker();
  /** By a number made from setting and text; of two lines with one number the later is remembered. */
  readonly #gists = new Map<number, LineGist>();
  #linesRead = 0;

  constructor(names: NameTable) {
    this.#names = names;
  }

  /** How many lines were read, remembered ones left out. */
  get linesRead(): number {
    return this.#linesRead;
  }

  /** Forgets the lines; for when a long row of files is done. */
  forget(): void {
    this.#gists.clear();
  }

  read(uri: string, text: string): PackedRecord {
    const bom = text.startsWith(BOM);
    const lines = textLines(bom ? text.slice(1) : text);
    const gatherer = new HeadingGatherer();
    let block: Block = "margin";
    for (let lineIndex = 0; lineIndex < lines.starts.length; lineIndex++) {
      const start = lines.starts[lineIndex] ?? 0;
      const isTimed = hasPlainClock(lines.text, start);
      const gist = this.#gistOf(
        lines.text,
        start,
        lineStop(lines, lineIndex),
        isTimed ? "timed" : block,
        block,
      );
      block = gist.next;
      const { places, fact } = gist;
      for (let at = 0; at < places.length; at += 3)
        this.#packer.add(lineIndex, places[at] ?? 0, places[at + 1] ?? 0, places[at + 2] ?? 0);
      if (fact === undefined) continue;
      gatherer.add(lineIndex, fact, isTimed ? lines.text.slice(start, start + CLOCK_LENGTH) : gist.clock);
    }
    const outline = { uri, kind: kindOfFile(uri), hash: contentHash(text), bom, ...gatherer.end() };
    return new PackedRecord(outline, this.#packer.take(), this.#names);
  }

  #gistOf(text: string, start: number, stop: number, setting: Setting, block: Block): LineGist {
    const from = setting === "timed" ? start + CLOCK_LENGTH : start;
    const key = lineKey(text, from, stop, setting);
    const known = this.#gists.get(key);
    if (known?.setting === setting && known.text.length === stop - from && text.startsWith(known.text, from))
      return known;
    const gist = this.#readGist(text.slice(start, stop), setting, block);
    if (this.#gists.size >= MOST_GISTS) this.forget();
    this.#gists.set(key, gist);
    return gist;
  }

  #readGist(raw: string, setting: Setting, block: Block): LineGist {
    this.#linesRead++;
    const { line, next } = readLine(raw, "\n", block, VOCABULARY);
    const places = isRead(line)
      ? readPlaces(line).flatMap(({ kind, name, role, start, stop }) => [
          start,
          stop - start,
          this.#names.idOf(kind, name, role),
        ])
      : [];
    return {
      setting,
      text: standalone(setting === "timed" ? raw.slice(CLOCK_LENGTH) : raw),
      next,
      places,
      fact: standaloneFact(lineFact(line)),
      clock: isRead(line) ? line.clock : null,
    };
  }
}

/** One round of FNV-1a over a stretch of a text, without cutting it out: public domain, by Fowler, Noll and Vo. */
function lineKey(text: string, from: number, stop: number, setting: Setting): number {
  let key = 0x811c9dc5 ^ SETTINGS.indexOf(setting);
  for (let at = from; at < stop; at++) key = Math.imul(key ^ text.charCodeAt(at), 0x01000193);
  // Thirty bits: larger numbers are kept less compactly.
  return key & 0x3fffffff;
}

function standaloneFact(fact: LineFact | undefined): LineFact | undefined {
  if (fact === undefined) return undefined;
  const entries = Object.entries(fact).map(([key, value]) => [key, standalone(value)]);
  return Object.fromEntries(entries) as unknown as LineFact;
}
