/** Long work in turns short enough that no other request has to wait for it, given up when nobody wants it any more. */
import type { Snapshot } from "../service/snapshot.ts";
import type { Guard } from "./guard.ts";

/** How long work may keep a request waiting, ms. */
const LONGEST_TURN_MS = 5;

/** How preparing ended: the document changed meanwhile, or nobody waits any more. */
export type Prepared = "ready" | "changed" | "given up";

/** Says that the one who waits doesn't want the answer any more. */
export type IsOver = () => boolean;

interface Running {
  readonly snapshot: Snapshot | undefined;
  readonly waiting: IsOver[];
  readonly ended: Promise<Prepared>;
}

/** Computes what the findings of documents need; those who wait for the same version wait for the same work. */
export class Preparer {
  readonly #current: (uri: string) => Snapshot | undefined;
  readonly #ready: (uri: string) => Promise<void> | undefined;
  readonly #guard: Guard;
  readonly #running = new Map<string, Running>();
  #stirs = 0;
  #typedAt = Number.NEGATIVE_INFINITY;

  /** `current` gives a document as it is now, `ready` waits for what it leans on. */
  constructor(
    current: (uri: string) => Snapshot | undefined,
    ready: (uri: string) => Promise<void> | undefined,
    guard: Guard,
  ) {
    this.#current = current;
    this.#ready = ready;
    this.#guard = guard;
  }

  /** The client said something: work waits until it has said all that it is about to. */
  stir(): void {
    this.#stirs++;
  }

  /** A document was opened or edited, which others may follow within moments. */
  typed(): void {
    this.stir();
    this.#typedAt = performance.now();
  }

  /** When that was last, on the clock of `performance.now`, ms. */
  get typedAt(): number {
    return this.#typedAt;
  }

  /** Answers when a turn has passed in which the client said nothing. */
  async quiet(): Promise<void> {
    let before: number;
    do {
      before = this.#stirs;
      await nextTurn();
    } while (this.#stirs !== before);
  }

  /** True while somebody waits for the findings of a document. */
  get isBusy(): boolean {
    return this.#running.size > 0;
  }

  /** Answers when a document's findings cost no more time. */
  async prepare(uri: string, isOver: IsOver = () => false): Promise<Prepared> {
    await this.#ready(uri);
    const snapshot = this.#current(uri);
    const known = this.#running.get(uri);
    if (known !== undefined && known.snapshot === snapshot) {
      known.waiting.push(isOver);
      return known.ended;
    }
    const waiting = [isOver];
    const ended = this.#run(uri, snapshot, () => waiting.every((over) => over()));
    const running = { snapshot, waiting, ended };
    this.#running.set(uri, running);
    const how = await ended;
    if (this.#running.get(uri) === running) this.#running.delete(uri);
    return how;
  }

  async #run(uri: string, snapshot: Snapshot | undefined, isOver: IsOver): Promise<Prepared> {
    const steps = this.#guard.ask("checks", undefined, () => snapshot?.prepare())(undefined);
    const takeStep = this.#guard.ask("checks", true, () => steps?.next().done !== false);
    let started = performance.now();
    while (!takeStep(undefined)) {
      if (performance.now() - started < LONGEST_TURN_MS) continue;
      await this.quiet();
      if (this.#current(uri) !== snapshot) return "changed";
      if (isOver()) return "given up";
      started = performance.now();
    }
    return "ready";
  }
}

/** How many messages are read before a turn goes on: more than an editor sends along with a change. */
const MESSAGES_FIRST = 8;

/** Lets messages that wait be read first. One is read in each round of Node's loop; a timer would idle for longer. */
async function nextTurn(): Promise<void> {
  if (typeof setImmediate !== "function") return new Promise((resolve) => setTimeout(resolve, 0));
  for (let round = 0; round < MESSAGES_FIRST; round++) await new Promise((resolve) => setImmediate(resolve));
}

/** Nobody types any more when nothing was typed for so long, ms (judgement: longer than between two keys). */
const REST_MS = 250;

/** Turns of work that nobody waits for: all that somebody waits for comes first, and it rests while somebody types. */
export class BackgroundTurns {
  readonly #preparer: Preparer;
  readonly #isBusy: () => boolean;
  #started = performance.now();

  /** `isBusy` tells of work that waits to be prepared. */
  constructor(preparer: Preparer, isBusy: () => boolean) {
    this.#preparer = preparer;
    this.#isBusy = isBusy;
  }

  /** Called between two steps: undefined to go on, else to be waited for. */
  pause(): Promise<void> | undefined {
    const isTyped = this.#preparer.typedAt > this.#started;
    return !isTyped && performance.now() - this.#started < LONGEST_TURN_MS ? undefined : this.#wait();
  }

  async #wait(): Promise<void> {
    do {
      const restMs = this.#preparer.typedAt + REST_MS - performance.now();
      if (restMs > 0) await new Promise((resolve) => setTimeout(resolve, restMs));
      await this.#preparer.quiet();
    } while (this.#preparer.isBusy || this.#isBusy() || this.#preparer.typedAt + REST_MS > performance.now());
    this.#started = performance.now();
  }
}
