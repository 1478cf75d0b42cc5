/**
 * Where every question of the client is answered: of what is open as it is now, with columns as the client counts them,
 * and not at all where it was cancelled or the text changed meanwhile.
 */
import { type CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import type { Guard } from "./guard.ts";
import { fileOf, type Translator } from "./translate-positions.ts";
import type { Preparer } from "./turns.ts";

/** What the desk needs from around it. */
export interface DeskParts {
  readonly guard: Guard;
  readonly preparer: Preparer;
  readonly translator: () => Translator;
  /** Takes edits that were only noted so far. */
  settle(): void;
  /** Waits for what a file leans on; undefined when it is there. */
  ready(uri: string): Promise<void> | undefined;
}

type Answering<Params, Answer> = (params: Params, token?: CancellationToken) => Answer | Promise<Answer>;

/** Answers questions; one that throws is logged by its name and answered with `none`. */
export class Desk {
  readonly #parts: DeskParts;

  constructor(parts: DeskParts) {
    this.#parts = parts;
  }

  /** A question whose answer is quick. */
  ask<Params, Answer>(
    name: string,
    none: Answer,
    question: (params: Params) => Answer,
  ): Answering<Params, Answer> {
    return (params, token) => {
      this.#parts.preparer.stir();
      refuseCancelled(token);
      const waiting = this.#wait(params);
      if (waiting === undefined) return this.#answer(name, none, question, params);
      return waiting.then(() => {
        refuseCancelled(token);
        return this.#answer(name, none, question, params);
      });
    };
  }

  /** A question that needs everything computed: worked on in turns, and given up when it is cancelled. */
  askLong<Params, Answer>(
    name: string,
    none: Answer,
    question: (params: Params) => Answer,
  ): Answering<Params, Answer> {
    return async (params, token) => {
      this.#parts.preparer.stir();
      await this.prepare(fileOf(params) ?? "", token);
      return this.#answer(name, none, question, params);
    };
  }

  /** Computes what a document's findings need. Throws what the client is told when it is cancelled or stale. */
  async prepare(uri: string, token: CancellationToken | undefined): Promise<void> {
    refuseCancelled(token);
    const how = await this.#parts.preparer.prepare(uri, () => token?.isCancellationRequested === true);
    refuseCancelled(token);
    if (how !== "ready") throw new ResponseError(LSPErrorCodes.ContentModified, "the text changed meanwhile");
  }

  #wait(params: unknown): Promise<void> | undefined {
    const uri = fileOf(params);
    return uri === undefined ? undefined : this.#parts.ready(uri);
  }

  #answer<Params, Answer>(
    name: string,
    none: Answer,
    question: (params: Params) => Answer,
    params: Params,
  ): Answer {
    const { guard, translator } = this.#parts;
    return guard.ask(name, none, (sent: Params) => {
      this.#parts.settle();
      const { incoming, outgoing } = translator();
      return outgoing(question(incoming(sent)), fileOf(sent));
    })(params);
  }
}

/** Throws what the client is told about a request that it doesn't want any more. */
export function refuseCancelled(token: CancellationToken | undefined): void {
  if (token?.isCancellationRequested === true)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, "cancelled");
}
