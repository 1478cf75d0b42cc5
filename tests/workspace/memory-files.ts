/** The files of a workspace, in memory. */
import type { ListedFile, WorkspaceFiles } from "../../server/workspace/workspace-files.ts";

/** Files by address; every text put there has a stamp of its own. */
export class MemoryFiles implements WorkspaceFiles {
  readonly #held = new Map<string, { readonly text: string; readonly stamp: string }>();
  #puts = 0;

  put(uri: string, text: string): void {
    this.#held.set(uri, { text, stamp: String(++this.#puts) });
  }

  remove(uri: string): void {
    this.#held.delete(uri);
  }

  *list(): Generator<readonly ListedFile[]> {
    yield [...this.#held].map(([uri, { stamp }]) => ({ uri, stamp }));
  }

  find(uri: string): ListedFile | undefined {
    const held = this.#held.get(uri);
    return held === undefined ? undefined : { uri, stamp: held.stamp };
  }

  read(uri: string): string | undefined {
    return this.#held.get(uri)?.text;
  }
}
