/** What a server is given by whoever starts it: where files come from, and what day it is. */
import type { Parse } from "../../grammar/parse.ts";
import type { ServiceHost } from "../service/language-service.ts";
import type { WorkspaceFiles } from "../workspace/workspace-files.ts";
import type { Keeping } from "./indexing.ts";

/** What the transport brings: books from wherever the files are. */
export interface ServerWorld {
  booksNear: ServiceHost["booksNear"];
  /** The day it is where the captain sits, `2031-06-21`. */
  readonly today?: () => string;
  /** Called with the workspace's folders before anything else is asked, and when they change. */
  setRoots(uris: readonly string[]): void;
  /** Files on disk changed. */
  forgetFiles(): void;
  /** Fetches the books near a document where that takes time; undefined when they are there. */
  ready?(uri: string): Promise<void> | undefined;
  /** The files of the workspace, where they can be listed. */
  readonly files?: WorkspaceFiles;
  /** Where an index is kept; `storage` is what the client gave for it. */
  keeping?(storage: string): Keeping | undefined;
  /** The one spelling of an address under which `files` lists it; clients may write others. */
  canonical?(uri: string): string;
  /** A file that isn't open, read. */
  parseOf?(uri: string): Parse | undefined;
}
