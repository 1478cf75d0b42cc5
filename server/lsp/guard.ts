/** Keeps a bug in one feature from costing more than its answer. */
import { ResponseError } from "vscode-languageserver";

/** Runs things that may fail; failures are logged with the name of what failed. */
export interface Guard {
  /** The question asked safely: its answer, or `none` when it throws. */
  ask<Params, Answer>(
    name: string,
    none: Answer,
    question: (params: Params) => Answer,
  ): (params: Params) => Answer;
  /** Work nobody waits for. */
  background(name: string, work: Promise<unknown>): void;
  /** Work that is waited for; never fails. */
  safely(name: string, work: Promise<unknown>): Promise<void>;
}

/** A guard that logs to `log`. An error meant for the client is passed on to it. */
export function createGuard(log: (message: string) => void): Guard {
  const report = (name: string, error: unknown): void =>
    log(`${name} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return {
    ask: (name, none, question) => (params) => {
      try {
        return question(params);
      } catch (error) {
        if (error instanceof ResponseError) throw error;
        report(name, error);
        return none;
      }
    },
    background: (name, work) => void work.catch((error: unknown) => report(name, error)),
    safely: async (name, work) => {
      try {
        await work;
      } catch (error) {
        report(name, error);
      }
    },
  };
}
