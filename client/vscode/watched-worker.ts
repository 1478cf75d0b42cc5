/**
 * A worker with a server in it, watched. A browser says nothing when a worker is gone, as when it took too much memory;
 * but the server holds a lock as long as it lives, and whoever waits for that lock gets it then.
 */
/// <reference lib="webworker" />
import { BrowserMessageReader, BrowserMessageWriter } from "vscode-languageclient/browser";

/** The connection to a worker, which is closed when the worker is gone or an error in it was caught by nobody. */
export class WatchedWorker {
  readonly reader: WorkerReader;
  readonly writer: BrowserMessageWriter;
  readonly #worker: Worker;
  #isOver = false;

  constructor(bundle: string) {
    this.#worker = new Worker(bundle);
    // Before the reader and the writer hear of it, who would take it for trouble with one message.
    this.#worker.addEventListener("error", (event) => {
      event.stopImmediatePropagation();
      this.#lost();
    });
    this.reader = new WorkerReader(this.#worker);
    this.writer = new BrowserMessageWriter(this.#worker);
  }

  /** Closes the connection when the server no longer holds the lock of this name, which it has taken. */
  watch(lock: string): void {
    void navigator.locks.request(lock, () => this.#lost());
  }

  /** Ends the worker, which is not wanted any more: nobody is told. */
  end(): void {
    this.#isOver = true;
    this.#worker.terminate();
  }

  #lost(): void {
    if (this.#isOver) return;
    this.end();
    this.reader.close();
  }
}

class WorkerReader extends BrowserMessageReader {
  /** Nothing more will come. */
  close(): void {
    this.fireClose();
  }
}
