/** Everything that a server answers about a document: what is compared with a fresh start's. */
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { TestClient } from "../test-client.ts";

/** Asked of every document. */
const QUESTIONS = ["diagnostic", "documentSymbol", "foldingRange", "semanticTokens/full"];

/** The answers to everything about a document. */
export async function stateOf(client: TestClient, document: TextDocument): Promise<Record<string, unknown>> {
  const textDocument = { uri: document.uri };
  const end = document.positionAt(document.getText().length);
  const range = { start: { line: 0, character: 0 }, end };
  const ask = async (name: string, more = {}): Promise<unknown> => {
    const answer = await client.request<object | null>(`textDocument/${name}`, { textDocument, ...more });
    // Names of results are the server's own affair.
    return answer === null || Array.isArray(answer) ? answer : { ...answer, resultId: "" };
  };
  const state: Record<string, unknown> = {};
  for (const name of QUESTIONS) state[name] = await ask(name);
  state.inlayHint = await ask("inlayHint", { range });
  state.codeAction = await ask("codeAction", { range, context: { diagnostics: [] } });
  for (let line = 0; line < document.lineCount; line++) {
    state[`hover ${line}`] = await ask("hover", { position: { line, character: 8 } });
    state[`completion ${line}`] = await ask("completion", { position: { line, character: 6 } });
  }
  return state;
}

/** What is found in the whole workspace, open or not, by address; answered when nothing waits to be checked. */
export async function workspaceState(client: TestClient): Promise<unknown> {
  const { items } = await client.request<{ items: { uri: string; items: unknown[] }[] }>(
    "workspace/diagnostic",
    { previousResultIds: [] },
  );
  const found = items.map(({ uri, items: all }) => [uri, all] as const);
  const symbols = await client.request<{ name: string; location: { uri: string } }[]>("workspace/symbol", {
    query: "P1",
  });
  const named = symbols.map(({ name, location }) => `${name} ${JSON.stringify(location)}`);
  return { found: found.sort(([a], [b]) => (a < b ? -1 : 1)), symbols: named.sort() };
}
