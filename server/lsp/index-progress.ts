/** Shows the client how far long work on the workspace is, where it can show such things. */
import type { Connection, WorkDoneProgressServerReporter } from "vscode-languageserver";

/** Words shown while the files are read, and while they are checked. */
export const READING = "Reading journals";
export const CHECKING = "Checking journals";

/** Fewer files than this are done before anybody could read a word. */
const FEWEST_FILES = 20;

/** One stretch of work. */
export class IndexProgress {
  readonly #connection: Connection;
  readonly #title: string;
  readonly #cancelled: () => void;
  #reporter: WorkDoneProgressServerReporter | undefined;
  #isAsked = false;
  #isEnded = false;
  #percent = -1;

  /** `cancelled` is called when the captain wants no more of it. */
  constructor(connection: Connection, title: string, cancelled: () => void = () => undefined) {
    this.#connection = connection;
    this.#title = title;
    this.#cancelled = cancelled;
  }

  /** So many files of so many are done. */
  readonly report = (done: number, all: number): void => {
    if (all < FEWEST_FILES) return;
    if (!this.#isAsked) this.#begin();
    const percent = Math.floor((100 * done) / all);
    if (percent === this.#percent) return;
    this.#percent = percent;
    this.#reporter?.report(percent, `${done} of ${all}`);
  };

  end(): void {
    this.#isEnded = true;
    this.#reporter?.done();
  }

  /** The work doesn't wait for the client to be ready to show it. A client that refuses is shown nothing. */
  #begin(): void {
    this.#isAsked = true;
    this.#connection.window.createWorkDoneProgress().then(
      (reporter) => {
        if (this.#isEnded) return;
        this.#reporter = reporter;
        reporter.begin(this.#title, 0, undefined, true);
        reporter.token.onCancellationRequested(this.#cancelled);
      },
      () => undefined,
    );
  }
}
