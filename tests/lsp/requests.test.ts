/** Every request of the protocol that the server answers. */
import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  SemanticTokens,
  TextEdit,
} from "vscode-languageserver-types";
import { BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { joinServer } from "./join-server.ts";
import { DOCUMENT, openMorning, SLIP, SLIP_LINE, WHOLE } from "./open-morning.ts";

describe("requests", () => {
  test("the answer to initialize names what is offered", async () => {
    const { capabilities, serverInfo } = await joinServer().initialize();
    expect(serverInfo?.name).toBe("deepwake");
    expect(capabilities).toMatchObject({
      textDocumentSync: 2,
      hoverProvider: true,
      inlayHintProvider: { resolveProvider: true },
      documentSymbolProvider: true,
      foldingRangeProvider: true,
      completionProvider: { triggerCharacters: [" ", '"'] },
      documentFormattingProvider: true,
      documentRangeFormattingProvider: { rangesSupport: true },
      definitionProvider: true,
      referencesProvider: true,
      documentHighlightProvider: true,
      documentLinkProvider: {},
      renameProvider: { prepareProvider: true },
      workspaceSymbolProvider: true,
      codeActionProvider: { codeActionKinds: ["quickfix", "refactor.rewrite", "source.fixAll.deepwake"] },
      executeCommandProvider: { commands: ["deepwake.letOutMarkdown"] },
    });
  });

  test("hover", async () => {
    const { client } = await openMorning();
    const position = { line: 7, character: 8 };
    const hover = await client.request<Hover>("textDocument/hover", { ...DOCUMENT, position });
    expect(hover.contents).toMatchObject({
      kind: "markdown",
      value: expect.stringMatching(/^Ball about \d+ ft down/u),
    });
  });

  test("inlay hints", async () => {
    const { client } = await openMorning();
    const hints = await client.request<InlayHint[]>("textDocument/inlayHint", { ...DOCUMENT, range: WHOLE });
    expect(hints.map(({ position }) => position.line)).toEqual([6, 7]);
  });

  test("a hint's reasons, when a client that can ask for them does", async () => {
    const textDocument = { inlayHint: { resolveSupport: { properties: ["tooltip"] } } };
    const { client } = await openMorning(MORNING, { capabilities: { textDocument } });
    const [hint] = await client.request<InlayHint[]>("textDocument/inlayHint", { ...DOCUMENT, range: WHOLE });
    expect(hint?.tooltip).toBeUndefined();
    const resolved = await client.request<InlayHint>("inlayHint/resolve", hint);
    expect(resolved).toEqual({ ...hint, tooltip: expect.stringMatching(/^Ball about[\s\S]*\nDepths are/u) });
  });

  test("symbols and folding", async () => {
    const { client } = await openMorning();
    const symbols = await client.request<DocumentSymbol[]>("textDocument/documentSymbol", DOCUMENT);
    expect(symbols.map(({ name }) => name)).toEqual(["2031-06-21 Bright Penny"]);
    const folds = await client.request<FoldingRange[]>("textDocument/foldingRange", DOCUMENT);
    expect(folds).toEqual([{ startLine: 0, endLine: 10 }]);
  });

  test("completion", async () => {
    const { client } = await openMorning(`${MORNING}06:15 move `);
    const position = { line: SLIP_LINE, character: 11 };
    const items = await client.request<CompletionItem[]>("textDocument/completion", {
      ...DOCUMENT,
      position,
    });
    expect(items.map(({ label }) => label)).toEqual(["C1", "P1"]);
  });

  test("formatting, whole and of a range", async () => {
    const { client } = await openMorning("5:14 pull C1\n5:15 pull C1\n");
    const whole = { ...DOCUMENT, options: { tabSize: 2, insertSpaces: true } };
    const edits = await client.request<TextEdit[]>("textDocument/formatting", whole);
    expect(edits.map(({ newText }) => newText)).toEqual(["05:14 pull C1", "05:15 pull C1"]);
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 4 } };
    const some = await client.request<TextEdit[]>("textDocument/rangeFormatting", { ...whole, range });
    expect(some.map(({ newText }) => newText)).toEqual(["05:15 pull C1"]);
  });

  test("definition", async () => {
    const { client } = await openMorning();
    const position = { line: 7, character: 10 };
    const places = await client.request<Location[]>("textDocument/definition", { ...DOCUMENT, position });
    expect(places.map(({ uri }) => uri)).toEqual([BOOK_URI]);
  });

  test("the let-out table, by a command that any client can send", async () => {
    const { client } = await openMorning();
    const run = (...words: unknown[]) =>
      client.request<string | null>("workspace/executeCommand", {
        command: "deepwake.letOutMarkdown",
        arguments: words,
      });
    expect(await run(URI, 8)).toMatch(/^# Cable to set\n/u);
    expect(await run(URI)).toMatch(/^# Cable to set\n/u);
    expect(await run()).toBeNull();
    expect(await run("file:///elsewhere.trip", 1)).toBeNull();
  });

  test("code actions, all and of one kind", async () => {
    const { client } = await openMorning(SLIP);
    const { diagnostics } = await client.published(URI);
    const ask = (only?: string[]) =>
      client.request<CodeAction[]>("textDocument/codeAction", {
        ...DOCUMENT,
        range: diagnostics[0]?.range,
        context: { diagnostics, ...(only === undefined ? {} : { only }) },
      });
    const [fix] = await ask();
    expect(fix?.edit?.changes?.[URI]?.map(({ newText }) => newText)).toEqual(["72.5"]);
    expect((await ask(["source.fixAll"])).map(({ kind }) => kind)).toEqual(["source.fixAll.deepwake"]);
  });

  test("semantic tokens, whole and of a range", async () => {
    const { client } = await openMorning();
    const { data } = await client.request<SemanticTokens>("textDocument/semanticTokens/full", DOCUMENT);
    expect(data.slice(0, 5)).toEqual([0, 0, 4, 0, 0]);
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } };
    const some = await client.request<SemanticTokens>("textDocument/semanticTokens/range", {
      ...DOCUMENT,
      range,
    });
    expect(some.data.slice(0, 5)).toEqual([1, 2, 7, 0, 0]);
  });
});
