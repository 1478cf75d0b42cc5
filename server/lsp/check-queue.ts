/** Documents that wait to be checked: in turns short enough that no request has to wait for a long file. */
import type { Guard } from "./guard.ts";
import type { Preparer } from "./turns.ts";

/** Checks changed documents one after another; several changes of one are checked once. */
export class CheckQueue {
  readonly #preparer: Preparer;
  readonly #guard: Guard;
  readonly #checked: (uri: string) => void;
  readonly #waiting = new Set<string>();

  /** `checked` is called for each document when its checks cost no more time. */
  constructor(preparer: Preparer, guard: Guard, checked: (uri: string) => void) {
    this.#preparer = preparer;
    this.#guard = guard;
    this.#checked = checked;
  }

  /** True while a document waits for its checks. */
  get isBusy(): boolean {
    return this.#waiting.size > 0;
  }

  /** A document changed. What was sent along with the change, like a completion, is answered before it is checked. */
  add(uri: string): void {
    const isRunning = this.#waiting.size > 0;
    this.#waiting.add(uri);
    if (!isRunning) this.#guard.background("checking", this.#run());
  }

  async #run(): Promise<void> {
    await this.#preparer.quiet();
    for (const uri of this.#waiting) {
      const how = await this.#preparer.prepare(uri);
      this.#waiting.delete(uri);
      // A document that changed meanwhile is taken up again.
      if (how !== "ready") this.#waiting.add(uri);
      else this.#checked(uri);
    }
  }
}
