/** What is found in the files that aren't open, found again only where what it hangs on has changed. */
import { parse } from "../../grammar/parse.ts";
import { createDepthMemo, type DepthMemo } from "../analysis/depth-memo.ts";
import { analyzeJournal } from "../analysis/journal-analysis.ts";
import type { Finding } from "../checks/check.ts";
import { prepareChecks, runChecks } from "../checks/run-checks.ts";
import type { BookFile } from "../model/gear-lines.ts";
import { contentHash } from "./content-hash.ts";
import type { FileRecord } from "./index-view.ts";
import { type CheckChoices, readingKey } from "./reading-key.ts";
import type { Soon, Turns } from "./workspace-files.ts";
import type { WorkspaceIndex } from "./workspace-index.ts";

/** An error or a warning without its fixes; what is less, and how to mend it, is for who has the file open. */
export type KeptFinding = Omit<Finding, "fixes">;

/** What was found in a file. */
export interface CheckedFile {
  /** What it hung on; see `readingKey`. */
  readonly key: string;
  readonly findings: readonly KeptFinding[];
}

/** What checking asks of around it. */
export interface CheckHost {
  /** Gear books within reach, nearest first, open ones as they stand in the editor. */
  booksNear(uri: string): readonly BookFile[];
  choices(): CheckChoices;
  read(uri: string): Soon<string | undefined>;
  /** Waits for the books near a file where they have to be fetched. */
  ready(uri: string): Soon<void>;
  /** Checking a file failed; the others are checked all the same. */
  failed(uri: string, error: unknown): void;
  /** Open documents are checked by whoever edits them. */
  isOpen(uri: string): boolean;
}

/** Depths solved for one file may serve the next; past so many they are forgotten, for memory's sake. */
const MOST_SOLVED = 100;

/** Checks files one after another, the latest trips first. */
export class WorkspaceChecks {
  readonly #index: WorkspaceIndex;
  readonly #host: CheckHost;
  readonly #checked = new Map<string, CheckedFile>();
  /** Files to look at, and how often each was asked for: a file asked for again meanwhile is done anew. */
  readonly #waiting = new Map<string, number>();
  #asked = 0;
  #runs = 0;
  #memo: DepthMemo = createDepthMemo();

  constructor(index: WorkspaceIndex, host: CheckHost) {
    this.#index = index;
    this.#host = host;
  }

  /** How many files were checked since the start, for tests that count work. */
  get runs(): number {
    return this.#runs;
  }

  get waiting(): number {
    return this.#waiting.size;
  }

  /** What is known of the file may not hold any more. */
  isWaiting(uri: string): boolean {
    return this.#waiting.has(uri);
  }

  /** What was found last, by address. */
  checked(): ReadonlyMap<string, CheckedFile> {
    return this.#checked;
  }

  /** Takes what an earlier run found. It is kept where it still holds when the file is next looked at. */
  restore(files: Iterable<readonly [uri: string, checked: CheckedFile]>): void {
    for (const [uri, checked] of files) this.#checked.set(uri, checked);
  }

  /** Has files looked at; without any named, all that are known. Those whose findings hang on nothing new cost little. */
  ask(uris: Iterable<string> = this.#index.kept().keys()): void {
    for (const uri of byUrgency(uris, this.#index)) this.#waiting.set(uri, ++this.#asked);
  }

  forget(uri: string): void {
    this.#waiting.delete(uri);
    this.#checked.delete(uri);
  }

  /** Stops after the step in work; what waits is dropped. */
  giveUp(): void {
    this.#waiting.clear();
  }

  /** Looks at what waits until nothing does. `looked` is called with each file that was looked at. */
  async run(turns: Turns, looked: (uri: string) => void): Promise<void> {
    for (let next = this.#next(); next !== undefined; next = this.#next()) {
      const [uri, asked] = next;
      try {
        await this.#check(uri, asked, turns);
      } catch (error) {
        this.#host.failed(uri, error);
      }
      if (this.#waiting.get(uri) === asked) {
        this.#waiting.delete(uri);
        looked(uri);
      }
      const pause = turns.pause();
      if (pause !== undefined) await pause;
    }
  }

  #next(): [uri: string, asked: number] | undefined {
    return this.#waiting.entries().next().value;
  }

  /** Results that something overtook are dropped; the file waits still. */
  async #check(uri: string, asked: number, turns: Turns): Promise<void> {
    await this.#host.ready(uri);
    const record = this.#index.kept().get(uri)?.record;
    if (record === undefined || this.#host.isOpen(uri)) return;
    const books = this.#host.booksNear(uri);
    const choices = this.#host.choices();
    const key = readingKey(record, books, choices);
    if (this.#checked.get(uri)?.key === key) return;
    const text = await this.#host.read(uri);
    // What changed on disk meanwhile is told by who watches it.
    if (text === undefined || contentHash(text) !== record.hash) return;
    const isOvertaken = (): boolean => this.#waiting.get(uri) !== asked;
    const findings = await this.#findings({ record, text, books, choices }, turns, isOvertaken);
    if (findings !== undefined) this.#checked.set(uri, { key, findings });
  }

  async #findings(
    { record, text, books, choices }: FileToCheck,
    turns: Turns,
    isOvertaken: () => boolean,
  ): Promise<readonly KeptFinding[] | undefined> {
    this.#runs++;
    if (this.#memo.solved > MOST_SOLVED) this.#memo = createDepthMemo();
    const { severities, thresholds, today } = choices;
    const file = { uri: record.uri, parse: parse(text) };
    const analysis = analyzeJournal(file, books, this.#memo, thresholds);
    for (const _ of prepareChecks(analysis, severities)) {
      const pause = turns.pause();
      if (pause !== undefined) await pause;
      if (isOvertaken()) return undefined;
    }
    return runChecks(analysis, { choices: severities, today })
      .filter(({ severity }) => severity === "error" || severity === "warning")
      .map(({ fixes: _, ...finding }) => finding);
  }
}

interface FileToCheck {
  readonly record: FileRecord;
  readonly text: string;
  readonly books: readonly BookFile[];
  readonly choices: CheckChoices;
}

/** Gear books first, for what is wrong there is wrong in many trips; then the latest trips. */
function byUrgency(uris: Iterable<string>, index: WorkspaceIndex): string[] {
  const ranked = [...uris].map((uri) => {
    const record = index.kept().get(uri)?.record;
    const date = record?.trips.at(-1)?.date ?? "";
    return { uri, rank: record?.kind === "gear" ? "9999-99" : date };
  });
  return ranked.sort((a, b) => (a.rank < b.rank ? 1 : a.rank > b.rank ? -1 : 0)).map(({ uri }) => uri);
}
