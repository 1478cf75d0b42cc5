/** Documents that wait to be checked: in turns short enough that no request has to wait for a long file. */
import type { LanguageService } from "../service/language-service.ts";
import type { Guard } from "./guard.ts";

/** How long checks may keep a request waiting, ms. */
const LONGEST_TURN_MS = 5;

/** Checks changed documents one after another; several changes of one are checked once. */
export class CheckQueue {
  readonly #service: LanguageService;
  readonly #guard: Guard;
  readonly #publish: (uri: string) => void;
  readonly #waiting = new Set<string>();

  /** `publish` is called for each document when its checks cost no more time. */
  constructor(service: LanguageService, guard: Guard, publish: (uri: string) => void) {
    this.#service = service;
    this.#guard = guard;
    this.#publish = publish;
  }

  /** A document changed. What was sent along with the change, like a completion, is answered before it is checked. */
  add(uri: string): void {
    const isRunning = this.#waiting.size > 0;
    this.#waiting.add(uri);
    if (!isRunning) this.#guard.background("checking", this.#run());
  }

  async #run(): Promise<void> {
    await nextTurn();
    for (const uri of this.#waiting) {
      const isDone = await this.#prepare(uri);
      this.#waiting.delete(uri);
      // A document that changed meanwhile is taken up again.
      if (!isDone) this.#waiting.add(uri);
      else if (this.#service.snapshot(uri) !== undefined) this.#publish(uri);
    }
  }

  /** Computes what the findings need; false when the document changed before that was done. */
  async #prepare(uri: string): Promise<boolean> {
    const snapshot = this.#service.snapshot(uri);
    const steps = this.#guard.ask("checks", undefined, () => snapshot?.prepare())(undefined);
    const takeStep = this.#guard.ask("checks", true, () => steps?.next().done !== false);
    let started = performance.now();
    while (!takeStep(undefined)) {
      if (performance.now() - started < LONGEST_TURN_MS) continue;
      await nextTurn();
      if (this.#service.snapshot(uri) !== snapshot) return false;
      started = performance.now();
    }
    return true;
  }
}

/** How many messages are read before a turn goes on: more than an editor sends along with a change. */
const MESSAGES_FIRST = 8;

/** Lets messages that wait be read first. One is read in each round of Node's loop; a timer would idle for longer. */
async function nextTurn(): Promise<void> {
  if (typeof setImmediate !== "function") return new Promise((resolve) => setTimeout(resolve, 0));
  for (let round = 0; round < MESSAGES_FIRST; round++) await new Promise((resolve) => setImmediate(resolve));
}
