/** The journals and gear books under the workspace's folders, listed and read through the client. */
import { GEAR_ENDING, TRIP_ENDING } from "../files/endings.ts";
import { isLeftOut } from "../files/left-out.ts";
import type { ListedFile, WorkspaceFiles } from "../workspace/workspace-files.ts";
import type { ClientFiles } from "./client-world.ts";

const ENDINGS: readonly string[] = [TRIP_ENDING, GEAR_ENDING];
/** More folders than anyone keeps journals in; links that lead round in a ring end here. */
const MOST_FOLDERS = 10_000;

/** Files as the client has them. It tells no times of change: each file counts as changed whenever it is looked at. */
export class ClientFolders implements WorkspaceFiles {
  readonly #files: ClientFiles;
  readonly #roots: () => readonly string[];
  #looks = 0;

  constructor(files: ClientFiles, roots: () => readonly string[]) {
    this.#files = files;
    this.#roots = roots;
  }

  async *list(): AsyncGenerator<readonly ListedFile[]> {
    const waiting = [...this.#roots()];
    for (let looked = 0; looked < MOST_FOLDERS; looked++) {
      const folder = waiting.shift();
      if (folder === undefined) return;
      const entries = (await this.#files.listFolder(folder)) ?? [];
      const kept = entries.filter(({ name }) => !isLeftOut(name));
      waiting.push(...kept.filter(({ isFile }) => !isFile).map(({ uri }) => uri));
      yield kept.filter(({ name, isFile }) => isFile && isJournal(name)).map(({ uri }) => this.#listed(uri));
    }
  }

  async find(uri: string): Promise<ListedFile | undefined> {
    const root = this.#roots().find((one) => uri.startsWith(`${one}/`));
    if (root === undefined || !isJournal(uri)) return undefined;
    if (
      uri
        .slice(root.length + 1)
        .split("/")
        .some(isLeftOut)
    )
      return undefined;
    return (await this.#files.readFile(uri)) === null ? undefined : this.#listed(uri);
  }

  async read(uri: string): Promise<string | undefined> {
    return (await this.#files.readFile(uri)) ?? undefined;
  }

  #listed(uri: string): ListedFile {
    this.#looks++;
    return { uri, stamp: String(this.#looks) };
  }
}

function isJournal(name: string): boolean {
  return ENDINGS.some((ending) => name.toLowerCase().endsWith(ending));
}
