/** Lines of any file, as the client has them: of what is open, of books that lean in, of files that are kept. */
import { type Parse, parse } from "../../grammar/parse.ts";
import type { LanguageService } from "../service/language-service.ts";
import type { Documents } from "./documents.ts";
import type { FileTexts } from "./file-texts.ts";
import type { ServerWorld } from "./server-world.ts";

/** Where lines come from. */
interface LineSources {
  readonly service: LanguageService;
  readonly documents: Documents;
  readonly texts: FileTexts;
  readonly world: ServerWorld;
}

/** Looks lines up; a file that isn't open is kept while the places of one answer are. */
export class FileLines {
  readonly #service: LanguageService;
  readonly #documents: Documents;
  readonly #texts: FileTexts;
  readonly #world: ServerWorld;
  #looked: { readonly uri: string; readonly parse: Parse } | undefined;

  constructor({ service, documents, texts, world }: LineSources) {
    this.#service = service;
    this.#documents = documents;
    this.#texts = texts;
    this.#world = world;
  }

  /** A line without its end; undefined where the file or the line isn't known. */
  lineText(uri: string, line: number): string | undefined {
    if (this.#service.snapshot(uri) !== undefined) return this.#documents.lineText(uri, line);
    const books = this.#service.openUris().flatMap((open) => this.#service.snapshot(open)?.books ?? []);
    const read = books.find((book) => book.uri === uri)?.parse ?? this.parseOf(uri);
    const raw = read?.journal.lines[line]?.raw;
    return line === 0 && read?.journal.bom === true && raw !== undefined ? `\ufeff${raw}` : raw;
  }

  /** A file that isn't open, read. */
  parseOf(uri: string): Parse | undefined {
    if (this.#looked?.uri === uri) return this.#looked.parse;
    const text = this.textOf(uri);
    const read = text === undefined ? this.#world.parseOf?.(uri) : parse(text);
    this.#looked = read === undefined ? undefined : { uri, parse: read };
    return read;
  }

  /** The text of a file that isn't open, where it can be had at once. */
  textOf(uri: string): string | undefined {
    return this.#texts.read(uri);
  }

  /** Files may read otherwise from now on. */
  forget(): void {
    this.#looked = undefined;
  }
}
