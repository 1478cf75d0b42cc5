/**
 * What the captain is about to ask for is asked once while nobody waits: code that never ran is read and made ready when
 * it first runs, which takes a first hover or completion ten times as long as the next.
 */

import type { Position } from "vscode-languageserver";
import { isRead } from "../../grammar/is-read.ts";
import type { LanguageService } from "../service/language-service.ts";
import type { Turns } from "../workspace/workspace-files.ts";
import type { Guard } from "./guard.ts";

/** What rehearsing needs from around it. */
export interface RehearsalParts {
  readonly guard: Guard;
  /** Turns of work that nobody waits for. */
  readonly turns: Turns;
  /** The service with every edit in it. */
  service(): LanguageService;
}

/** No more lines than this are looked through for something to ask about. */
const MOST_LINES = 300;

/** Rehearses once, on the first document that was checked. */
export class Rehearsal {
  readonly #parts: RehearsalParts;
  #isBegun = false;

  constructor(parts: RehearsalParts) {
    this.#parts = parts;
  }

  /** A document was checked; its answers are as good as any to rehearse on. */
  begin(uri: string): void {
    if (this.#isBegun) return;
    this.#isBegun = true;
    this.#parts.guard.background("rehearsing", this.#run(uri));
  }

  /** A question a turn. A line that isn't there any more has no answer, which is as well. */
  async #run(uri: string): Promise<void> {
    const { guard, turns, service } = this.#parts;
    await turns.pause();
    for (const at of placesToAsk(service(), uri)) {
      guard.ask("rehearsing", undefined, () => void service().hover(uri, at))(undefined);
      await turns.pause();
      guard.ask("rehearsing", undefined, () => void service().completion(uri, at))(undefined);
      await turns.pause();
    }
  }
}

/** A place within the verb of the first line of each kind. */
function placesToAsk(service: LanguageService, uri: string): Position[] {
  const places = new Map<string, Position>();
  const lines = service.snapshot(uri)?.parse.journal.lines.slice(0, MOST_LINES) ?? [];
  lines.forEach((line, index) => {
    if (!isRead(line) || places.has(line.verb)) return;
    places.set(line.verb, { line: index, character: line.verbStop - 1 });
  });
  return [...places.values()];
}
