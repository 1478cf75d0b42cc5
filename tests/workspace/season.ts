/** A small season in memory with an index and checks over it, for the tests of the workspace. */
import { type Parse, parse } from "../../grammar/parse.ts";
import type { SeverityChoices } from "../../server/checks/run-checks.ts";
import type { BookFile } from "../../server/model/gear-lines.ts";
import { NO_THRESHOLDS } from "../../server/model/thresholds.ts";
import { WorkspaceChecks } from "../../server/workspace/workspace-checks.ts";
import type { Turns } from "../../server/workspace/workspace-files.ts";
import { WorkspaceIndex } from "../../server/workspace/workspace-index.ts";
import { MemoryFiles } from "./memory-files.ts";

/** Where the files of the season stand. */
export const at = (name: string): string => `file:///season/${name}`;

/** A book of one boat with one rig. */
export const bookOf = (boat: string, rig = "P1"): string =>
  `boat "${boat}"\n  units ft mph F lb in\nball round-12 sphere 12 lb\nrig ${rig} downrigger port ball round-12 cable wire\ncable wire steel diameter 0.9 mm\n`;

/** A short day on which one rig is set and pulled. */
export const dayOf = (date: string, boat: string, rig = "P1"): string =>
  `trip ${date} "${boat}"\n05:00 surface speed 2.5 mph\n05:14 set ${rig} out 40 ft\n06:00 pull ${rig}\n`;

/** Never lets anybody in between. */
export const NO_PAUSE: Turns = { pause: () => undefined };

/** An index over files in memory; every file reaches the books of its own folder and those above. */
export class Season {
  readonly files = new MemoryFiles();
  readonly open = new Map<string, Parse>();
  severities: SeverityChoices = new Map();
  readonly failures: unknown[] = [];
  readonly index = new WorkspaceIndex(this.files, {
    uris: () => this.open.keys(),
    parseOf: (uri) => this.open.get(uri),
  });
  readonly checks = new WorkspaceChecks(this.index, {
    booksNear: (uri) => this.#booksNear(uri),
    choices: () => ({ severities: this.severities, thresholds: NO_THRESHOLDS }),
    read: (uri) => this.files.read(uri),
    ready: () => undefined,
    failed: (_, error) => void this.failures.push(error),
    isOpen: (uri) => this.open.has(uri),
  });
  readonly #books = new Map<string, { text: string; parse: Parse }>();

  constructor(texts: Readonly<Record<string, string>> = {}) {
    for (const [name, text] of Object.entries(texts)) this.files.put(at(name), text);
  }

  /** Looks at all files and checks what needs it; gives the names of those that were checked. */
  async settle(turns: Turns = NO_PAUSE): Promise<string[]> {
    const before = new Map(this.checks.checked());
    await this.index.scan(turns);
    this.checks.ask();
    await this.checks.run(turns, () => undefined);
    return [...this.checks.checked()]
      .filter(([uri, checked]) => before.get(uri) !== checked)
      .map(([uri]) => uri.slice(at("").length))
      .sort();
  }

  /** The codes of what was found in a file. */
  found(name: string): string[] | undefined {
    return this.checks
      .checked()
      .get(at(name))
      ?.findings.map(({ slug }) => slug);
  }

  #booksNear(uri: string): BookFile[] {
    const all = [...this.files.list()].flat().map((file) => file.uri);
    return all
      .filter((book) => book.endsWith(".gear") && book !== uri && uri.startsWith(folderOf(book)))
      .sort((a, b) => b.length - a.length)
      .map((book) => ({ uri: book, parse: this.open.get(book) ?? this.#bookAt(book) }));
  }

  #bookAt(uri: string): Parse {
    const text = this.files.read(uri) ?? "";
    const known = this.#books.get(uri);
    if (known?.text === text) return known.parse;
    const read = { text, parse: parse(text) };
    this.#books.set(uri, read);
    return read.parse;
  }
}

function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf("/") + 1);
}
