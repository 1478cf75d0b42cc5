/** Texts of files that aren't open, also where reading takes time and a question can't wait in the middle. */
import type { Soon } from "../workspace/workspace-files.ts";

/** Reads files for questions. */
export class FileTexts {
  readonly #read: (uri: string) => Soon<string | undefined>;
  /** What came for the question that is being asked; null where a file can't be read. */
  readonly #come = new Map<string, string | null>();
  /** What it lacked. */
  readonly #lacking = new Map<string, Promise<string | undefined>>();
  #last: Promise<unknown> = Promise.resolve();

  constructor(read: (uri: string) => Soon<string | undefined>) {
    this.#read = read;
  }

  /** A file's text; undefined where it can't be read, or not at once. */
  read(uri: string): string | undefined {
    const come = this.#come.get(uri);
    if (come !== undefined) return come ?? undefined;
    const text = this.#lacking.get(uri) ?? this.#read(uri);
    if (typeof text !== "object") return text;
    this.#lacking.set(uri, text);
    return undefined;
  }

  /** Asks a question again as long as it lacks files that can be had; one such question after the other. */
  complete<Answer>(question: () => Answer | Promise<Answer>): Promise<Answer> {
    const answer = this.#last.then(() => this.#ask(question));
    this.#last = answer.catch(() => undefined);
    return answer;
  }

  async #ask<Answer>(question: () => Answer | Promise<Answer>): Promise<Answer> {
    this.#forget();
    try {
      for (;;) {
        const [asked] = await Promise.allSettled([(async () => question())()]);
        if (this.#lacking.size > 0) await this.#fetch();
        else if (asked.status === "fulfilled") return asked.value;
        else throw asked.reason;
      }
    } finally {
      this.#forget();
    }
  }

  async #fetch(): Promise<void> {
    const lacking = [...this.#lacking];
    this.#lacking.clear();
    for (const [uri, text] of lacking) this.#come.set(uri, (await text.catch(() => undefined)) ?? null);
  }

  #forget(): void {
    this.#come.clear();
    this.#lacking.clear();
  }
}
