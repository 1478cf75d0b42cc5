/** What helps while typing, over the protocol. */
import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SignatureHelp,
  TextEdit,
} from "vscode-languageserver-types";
import { MORNING, URI } from "../service/open-service.ts";
import { joinServer } from "./join-server.ts";
import { DOCUMENT, openMorning, SLIP_LINE } from "./open-morning.ts";
import { ABLE } from "./test-client.ts";

/** The first line below the morning. */
const NEXT = SLIP_LINE;

test("the answer to initialize names what is offered", async () => {
  const { capabilities } = await joinServer().initialize();
  expect(capabilities).toMatchObject({
    completionProvider: { resolveProvider: true },
    signatureHelpProvider: { triggerCharacters: [" "] },
    selectionRangeProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
    semanticTokensProvider: {
      full: { delta: true },
      range: true,
      legend: { tokenModifiers: ["definition"] },
    },
  });
});

test("completion, and the documentation of one offer", async () => {
  const { client } = await openMorning(`${MORNING}06:15 `);
  const position = { line: NEXT, character: 6 };
  const items = await client.request<CompletionItem[]>("textDocument/completion", { ...DOCUMENT, position });
  const set = items.find(({ label }) => label === "set");
  expect(set?.documentation).toBeUndefined();
  const told = await client.request<CompletionItem>("completionItem/resolve", set);
  expect(told).toMatchObject({ ...set, documentation: { value: expect.stringMatching(/^A line goes in/u) } });
  const foreign = { label: "other", data: { of: "verb" } };
  expect(await client.request("completionItem/resolve", foreign)).toEqual(foreign);
});

test("signature help", async () => {
  const { client } = await openMorning(`${MORNING}06:15 move C1 out `);
  const position = { line: NEXT, character: 18 };
  const help = await client.request<SignatureHelp>("textDocument/signatureHelp", { ...DOCUMENT, position });
  expect(help.signatures[0]?.parameters?.[help.activeParameter ?? 0]?.label).toBe("[out length]");
});

test("selection ranges", async () => {
  const { client } = await openMorning();
  const positions = [{ line: 7, character: 18 }];
  const [range] = await client.request<SelectionRange[]>("textDocument/selectionRange", {
    ...DOCUMENT,
    positions,
  });
  expect(range?.parent?.range).toEqual({
    start: { line: 7, character: 13 },
    end: { line: 7, character: 22 },
  });
});

describe("formatting", () => {
  const OPTIONS = { tabSize: 2, insertSpaces: true };
  const UNTIDY = "5:14 pull C1\n5:15 pull C1\n5:16 pull C1\n";

  test("while typing", async () => {
    const { client } = await openMorning(UNTIDY);
    const params = { ...DOCUMENT, position: { line: 2, character: 0 }, ch: "\n", options: OPTIONS };
    const edits = await client.request<TextEdit[]>("textDocument/onTypeFormatting", params);
    expect(edits).toEqual([
      { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, newText: "0" },
    ]);
  });

  test("of several ranges", async () => {
    const { client } = await openMorning(UNTIDY);
    const line = (n: number) => ({ start: { line: n, character: 0 }, end: { line: n, character: 3 } });
    const params = { ...DOCUMENT, ranges: [line(0), line(2)], options: OPTIONS };
    const edits = await client.request<TextEdit[]>("textDocument/rangesFormatting", params);
    expect(edits.map(({ newText }) => newText)).toEqual(["05:14 pull C1", "05:16 pull C1"]);
  });
});

test("semantic tokens since a result", async () => {
  const { client } = await openMorning();
  const { resultId } = await client.request<SemanticTokens>("textDocument/semanticTokens/full", DOCUMENT);
  await client.change(URI, 2, [{ text: `${MORNING}06:15 drift\n` }]);
  const delta = await client.request<SemanticTokensDelta>("textDocument/semanticTokens/full/delta", {
    ...DOCUMENT,
    previousResultId: resultId,
  });
  expect(delta.edits).toHaveLength(1);
  expect(delta.edits[0]?.data).toHaveLength(10);
});

test("code actions with edits at once, or when chosen by a client that can ask", async () => {
  const codeAction = { ...ABLE.codeAction, dataSupport: true, resolveSupport: { properties: ["edit"] } };
  for (const [capabilities, isLazy] of [
    [{}, false],
    [{ textDocument: { codeAction } }, true],
  ] as const) {
    const { client } = await openMorning(`${MORNING}6:15 drift\n`, { capabilities });
    const at = { line: NEXT, character: 3 };
    const params = { ...DOCUMENT, range: { start: at, end: at }, context: { diagnostics: [] } };
    const actions = await client.request<CodeAction[]>("textDocument/codeAction", params);
    const tidy = actions.find(({ title }) => title === "Tidy this line");
    expect(tidy?.edit === undefined).toBe(isLazy);
    const chosen = isLazy ? await client.request<CodeAction>("codeAction/resolve", tidy) : tidy;
    expect(chosen?.edit?.changes?.[URI]?.[0]?.newText).toBe("06:15 drift");
  }
});
