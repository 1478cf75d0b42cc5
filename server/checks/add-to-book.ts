/** Adds a line to the gear book of a boat: the nearest file that opens it, or the trip's own file. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { type BookFile, fileGear, kindDefined } from "../model/gear-lines.ts";
import { RELATED } from "./catalog/titles.ts";
import type { FixEdit, RelatedPlace } from "./check.ts";
import { insert } from "./edits.ts";
import { ownersOf } from "./owners.ts";
import { slotPlace } from "./places.ts";

/** A point of a file that a whole line can be put behind. */
interface BookPlace {
  readonly file: BookFile;
  readonly boat: string | null;
  readonly openerIndex: number | undefined;
}

interface Places {
  readonly books: Map<string, BookPlace | undefined>;
  /** The line to write behind, by boat and verb. */
  readonly ends: Map<string, number | undefined>;
}

const placesOfAnalysis = new WeakMap<JournalAnalysis, Places>();

function placesOf(analysis: JournalAnalysis): Places {
  const known = placesOfAnalysis.get(analysis) ?? { books: new Map(), ends: new Map() };
  placesOfAnalysis.set(analysis, known);
  return known;
}

/** The edit that adds a gear line for a boat; undefined where no file can take it. */
export function addToBook(
  analysis: JournalAnalysis,
  boat: string,
  verb: string,
  text: string,
): FixEdit | undefined {
  const book = bookOf(analysis, boat);
  if (book === undefined) return undefined;
  const { ends } = placesOf(analysis);
  const key = `${verb} ${boat}`;
  const end = ends.has(key) ? ends.get(key) : endOf(book, verb);
  ends.set(key, end);
  return end === undefined ? aboveTrips(analysis, text) : behind(book.file, end, text);
}

/** The opener of the book that a boat's lines are added to. */
export function relatedBook(analysis: JournalAnalysis, boat: string): RelatedPlace[] {
  const book = bookOf(analysis, boat);
  const line = book?.openerIndex === undefined ? undefined : book.file.parse.journal.lines[book.openerIndex];
  if (book?.openerIndex === undefined || line?.kind !== "fact") return [];
  return [{ uri: book.file.uri, message: RELATED.book(boat), ...slotPlace(book.openerIndex, line) }];
}

function bookOf(analysis: JournalAnalysis, boat: string): BookPlace | undefined {
  const { books } = placesOf(analysis);
  if (!books.has(boat)) books.set(boat, findBook(analysis, boat));
  return books.get(boat);
}

function findBook({ files }: JournalAnalysis, boat: string): BookPlace | undefined {
  for (const file of files) {
    const opener = fileGear(file).boats.find((one) => one.boat === boat);
    if (opener !== undefined) return { file, boat, openerIndex: opener.lineIndex };
  }
  const loose = files.find((file) => fileGear(file).lines.some((one) => one.boat === null));
  const file = loose ?? files[0];
  return file === undefined ? undefined : { file, boat: null, openerIndex: undefined };
}

/** Behind the boat's last line of that verb; else behind its last gear line, else behind its properties. */
function endOf({ file, boat, openerIndex }: BookPlace, verb: string): number | undefined {
  const lines = fileGear(file).lines.filter((one) => one.boat === boat && one.line.date === null);
  const alike = lines.findLast((one) => kindDefined(one.line.verb) === verb) ?? lines.at(-1);
  return alike?.lineIndex ?? (openerIndex === undefined ? undefined : endOfProperties(file, openerIndex));
}

function endOfProperties(file: BookFile, openerIndex: number): number {
  const { journal, blocks } = file.parse;
  let end = openerIndex;
  for (let index = openerIndex + 1; blocks[index] === "boat"; index++) {
    const raw = journal.lines[index]?.raw ?? "";
    if (/^\s+\S/u.test(raw)) end = index;
    else if (/^[^\s#]/u.test(raw)) break;
  }
  return end;
}

function behind(file: BookFile, lineIndex: number, text: string): FixEdit {
  const line = file.parse.journal.lines[lineIndex];
  return insert(file.uri, lineIndex, line?.raw.length ?? 0, lineEnd(file, lineIndex) + text);
}

function aboveTrips(analysis: JournalAnalysis, text: string): FixEdit | undefined {
  const [own] = analysis.files;
  const opener = ownersOf(analysis)[0]?.openerIndex ?? 0;
  return own === undefined ? undefined : insert(own.uri, opener, 0, text + lineEnd(own, opener));
}

/** The line end that the file uses there. */
export function lineEnd(file: BookFile, lineIndex: number): string {
  const { lines } = file.parse.journal;
  return lines[lineIndex]?.end || lines[0]?.end || "\n";
}
