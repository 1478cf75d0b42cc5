/** Semantic tokens by result: what was sent last is kept, so that the next time only what changed is sent. */
import type { SemanticTokens, SemanticTokensDelta, SemanticTokensEdit } from "vscode-languageserver-types";

/** The tokens last sent of each document. */
export class TokenResults {
  readonly #sent = new Map<string, { resultId: string; data: readonly number[] }>();
  #count = 0;

  /** All tokens, with the name of this result. */
  full(uri: string, data: number[]): SemanticTokens & { resultId: string } {
    const resultId = String(++this.#count);
    this.#sent.set(uri, { resultId, data });
    return { resultId, data };
  }

  /** What changed since a result; all tokens where that was not the last one. */
  delta(uri: string, previousId: string, data: number[]): SemanticTokens | SemanticTokensDelta {
    const before = this.#sent.get(uri);
    const { resultId } = this.full(uri, data);
    if (before?.resultId !== previousId) return { resultId, data };
    return { resultId, edits: tokenEdits(before.data, data) };
  }

  /** The document was closed. */
  forget(uri: string): void {
    this.#sent.delete(uri);
  }
}

/** One edit that makes the later numbers of the earlier ones, none where they are the same. */
export function tokenEdits(before: readonly number[], after: readonly number[]): SemanticTokensEdit[] {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let tail = 0;
  while (tail < most - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return [
    { start, deleteCount: before.length - tail - start, data: after.slice(start, after.length - tail) },
  ];
}
