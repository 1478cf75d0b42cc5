/** Open documents are computed anew when what they lean on changed: the books near them, and the settings. */
import type { LanguageService } from "../service/language-service.ts";
import type { Guard } from "./guard.ts";
import type { ServerWorld } from "./server-world.ts";

/** What reading again needs from around it. */
export interface RereadingParts {
  readonly guard: Guard;
  readonly world: ServerWorld;
  readonly service: LanguageService;
  /** Takes edits that were only noted so far. */
  settle(): void;
  /** Has the client hear of documents that changed without being edited. */
  tell(uris: readonly string[]): void;
}

/** Reads again what leans on something new. */
export class Rereading {
  readonly #parts: RereadingParts;
  readonly #awaited = new WeakMap<Promise<void>, Promise<void>>();

  constructor(parts: RereadingParts) {
    this.#parts = parts;
  }

  /** Open documents that lean on a book. */
  readersOf(uri: string): string[] {
    const { service } = this.#parts;
    const leansOn = (other: string): boolean =>
      other !== uri && service.snapshot(other)?.books.some((book) => book.uri === uri) === true;
    return service.openUris().filter(leansOn);
  }

  /** Waits for the books near a document where they have to be fetched; those that came are then leaned on. */
  ready(uri: string): Promise<void> | undefined {
    const { world, service } = this.#parts;
    const fetched = world.ready?.(uri);
    if (fetched === undefined) return undefined;
    const known = this.#awaited.get(fetched);
    if (known !== undefined) return known;
    const leanedOn = fetched.then(() => this.again(service.openUris()));
    this.#awaited.set(fetched, leanedOn);
    return leanedOn;
  }

  /** Every open document, with the files read again. */
  all(): void {
    const { world, service, settle } = this.#parts;
    world.forgetFiles();
    settle();
    this.those(service.openUris());
  }

  /** Computes documents anew with the books and settings as they are now, and tells the client. */
  those(uris: readonly string[]): void {
    const { guard, tell } = this.#parts;
    const waiting = uris.flatMap((uri) => this.ready(uri) ?? []);
    this.again(uris);
    guard.background(
      "reading again",
      Promise.all(waiting).then(() => tell(uris)),
    );
  }

  /** The same without a word to the client. */
  again(uris: readonly string[]): void {
    const { guard, service, settle } = this.#parts;
    for (const uri of uris) {
      const refresh = (): void => {
        settle();
        service.refresh(uri);
      };
      guard.ask("reading again", undefined, refresh)(undefined);
    }
  }
}
