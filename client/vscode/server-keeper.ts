/** Keeps a server running: one that ends by itself is started again, and the captain hears when that is given up. */
import * as vscode from "vscode";
import {
  type BaseLanguageClient,
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type ErrorHandler,
} from "vscode-languageclient";
import { RestartLimit } from "./restart-limit.ts";

const NOT_STARTED =
  "Deepwake could not be started: journals show no depths and are not checked. The output tells why.";
const GIVEN_UP =
  "Deepwake has stopped: what computes depths and checks journals broke down again and again. " +
  "Your journals are as you left them.";
const START_AGAIN = "Start Again";
const SHOW_OUTPUT = "Show Output";

/** One client's server. */
export class ServerKeeper {
  readonly #output: vscode.LogOutputChannel;
  readonly #limit = new RestartLimit();
  #client: BaseLanguageClient | undefined;
  #ends = 0;
  /** For the client's options. The client opens its documents, as they are now, in each server that is started. */
  readonly errorHandler: ErrorHandler = {
    // A connection that is really gone is closed too.
    error: () => ({ action: ErrorAction.Continue, handled: true }),
    closed: () => this.#ended(),
  };

  constructor(output: vscode.LogOutputChannel) {
    this.#output = output;
  }

  /** Starts the client's server; fails where it can't be had. What the library says of failures goes to the output. */
  start(client: BaseLanguageClient): Promise<void> {
    const { error } = client;
    client.error = (message, data) => error.call(client, message, data, false);
    this.#client = client;
    return this.#start(client);
  }

  /** The server is not wanted any more. */
  leave(): void {
    this.#client = undefined;
  }

  async #start(client: BaseLanguageClient): Promise<void> {
    const ends = this.#ends;
    try {
      await client.start();
    } catch (error) {
      this.#output.error(`The language server could not be started: ${error}`);
      // One that ended meanwhile is started again, or given up, elsewhere.
      if (ends === this.#ends && this.#client !== undefined) this.#tell(NOT_STARTED);
      throw error;
    }
  }

  #ended(): CloseHandlerResult {
    this.#ends++;
    const mayRestart = this.#limit.mayRestart(Date.now());
    // The client first has to take in that the connection is closed.
    setTimeout(() => (mayRestart ? this.#restart() : this.#tell(GIVEN_UP)), 0);
    const then = mayRestart ? "is started again" : "is not started again by itself";
    return {
      action: CloseAction.DoNotRestart,
      handled: true,
      message: `The language server ended by itself and ${then}.`,
    };
  }

  #restart(): void {
    if (this.#client === undefined) return;
    // Told of where it failed.
    this.#start(this.#client).catch(() => undefined);
  }

  #tell(message: string): void {
    void vscode.window.showErrorMessage(message, START_AGAIN, SHOW_OUTPUT).then((chosen) => {
      if (chosen === START_AGAIN) void vscode.commands.executeCommand("deepwake.restartServer");
      if (chosen === SHOW_OUTPUT) this.#output.show(true);
    });
  }
}
