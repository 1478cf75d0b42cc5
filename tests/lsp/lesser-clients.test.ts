/** Clients that lack what is optional: they get the same things in a shape that they know, and nothing they don't. */
import { describe, expect, test } from "vitest";
import {
  type Command,
  type CompletionItem,
  type Hover,
  InsertTextFormat,
  type SymbolInformation,
  type WorkspaceEdit,
} from "vscode-languageserver-types";
import { clientAbilities } from "../../server/lsp/capabilities.ts";
import { completionFor } from "../../server/lsp/for-client.ts";
import { plainText } from "../../server/lsp/plain-text.ts";
import { MORNING, URI } from "../service/open-service.ts";
import { codes, DOCUMENT, openMorning, SLIP, SLIP_LINE } from "./open-morning.ts";
import { ABLE } from "./test-client.ts";

/** A client that can do nothing that is optional. */
const NOTHING = { capabilities: { textDocument: {} } };

describe("a client that can do nothing", () => {
  test("is sent diagnostics and asked for nothing", async () => {
    const { client } = await openMorning(SLIP, NOTHING);
    expect(codes((await client.published(URI)).diagnostics)).toEqual(["number-format"]);
    const pushed = { deepwake: { checks: { "number-format": "off" } } };
    await client.notify("workspace/didChangeConfiguration", { settings: pushed });
    await client.published(URI, ({ diagnostics }) => diagnostics.length === 0);
    expect(client.registered).toEqual([]);
    expect(client.hintRefreshes).toBe(0);
    expect(client.asked).toEqual([]);
    expect(client.logged).toEqual([]);
  });

  test("reads hovers and help as plain text", async () => {
    const { client } = await openMorning(`${MORNING}06:15 mov`, NOTHING);
    const hover = await client.request<Hover>("textDocument/hover", {
      ...DOCUMENT,
      position: { line: 7, character: 22 },
    });
    expect(hover.contents).toMatchObject({ kind: "plaintext", value: expect.stringMatching(/^Ball about/u) });
    expect(JSON.stringify(hover.contents)).not.toMatch(/[*`]|---/u);
    const position = { line: SLIP_LINE, character: 9 };
    const items = await client.request<CompletionItem[]>("textDocument/completion", {
      ...DOCUMENT,
      position,
    });
    const move = items.find(({ label }) => label === "move");
    const resolved = await client.request<CompletionItem>("completionItem/resolve", move);
    expect(resolved.documentation).toMatchObject({
      kind: "plaintext",
      value: expect.stringContaining("\n\n05:55 move C1 out 105 ft\n\n"),
    });
  });

  test("has symbols one after another, each with the name of its trip", async () => {
    const { client } = await openMorning(MORNING, NOTHING);
    const symbols = await client.request<SymbolInformation[]>("textDocument/documentSymbol", DOCUMENT);
    expect(symbols.map(({ name, containerName }) => [name, containerName]).slice(0, 2)).toEqual([
      ["2031-06-21 Bright Penny", undefined],
      ["profile", "2031-06-21 Bright Penny"],
    ]);
    expect(symbols[1]?.location).toMatchObject({ uri: URI, range: { start: { line: 5, character: 0 } } });
  });

  test("that doesn't apply edits either is offered none", async () => {
    const { client } = await openMorning(SLIP, NOTHING);
    expect(await actionsOf(client)).toEqual([]);
  });
});

describe("a client that takes commands for code actions", () => {
  const setup = { capabilities: { textDocument: {}, workspace: { applyEdit: true } } };

  test("gets them, and the edit when it sends one back", async () => {
    const { client } = await openMorning(SLIP, setup);
    const [fix] = (await actionsOf(client)) as Command[];
    expect(fix).toMatchObject({ title: expect.stringContaining("72.5"), command: "deepwake.applyEdit" });
    await client.request("workspace/executeCommand", { command: fix?.command, arguments: fix?.arguments });
    const edit: WorkspaceEdit = await client.until("an edit", () => client.applied[0]);
    expect(edit.changes?.[URI]?.map(({ newText }) => newText)).toEqual(["72.5"]);
  });

  test("of which one that means nothing changes nothing", async () => {
    const { client } = await openMorning(SLIP, setup);
    await client.request("workspace/executeCommand", { command: "deepwake.applyEdit", arguments: [] });
    await client.request("workspace/executeCommand", { command: "deepwake.applyEdit", arguments: ["x"] });
    expect(client.applied).toEqual([]);
  });

  test("in its own way of counting", async () => {
    const general = { positionEncodings: ["utf-8"] };
    const text = `${MORNING}06:15 change C1 lure "🎣" out 72,5 ft\n`;
    const { client } = await openMorning(text, { capabilities: { ...setup.capabilities, general } });
    const [fix] = (await actionsOf(client)) as Command[];
    await client.request("workspace/executeCommand", { command: fix?.command, arguments: fix?.arguments });
    const edit: WorkspaceEdit = await client.until("an edit", () => client.applied[0]);
    expect(edit.changes?.[URI]?.[0]?.range.start.character).toBe(32);
  });
});

test("without related places a diagnostic says them in words", async () => {
  const text = `${MORNING}06:15 set C1 out 72 ft lure glow-spoon\n`;
  const able = await openMorning(text);
  const related = ({ code }: { code?: string | number }) => code === "already-set";
  const shown = (await able.client.published(URI)).diagnostics.find(related);
  expect(shown?.relatedInformation).toHaveLength(1);
  const { client } = await openMorning(text, NOTHING);
  const said = (await client.published(URI)).diagnostics.find(related);
  expect(said).not.toHaveProperty("relatedInformation");
  const [place] = shown?.relatedInformation ?? [];
  expect(said?.message).toBe(`${shown?.message}\n${place?.message} (line 7)`);
});

/** A place of a snippet. */
const place = (inside: string) => `$\{${inside}}`;

test.each([
  [`out ${place("1:90 ft")}$0`, "out 90 ft"],
  [`${place("1|port,starboard|")} \\$5`, "port $5"],
  [`$1x${place("2")}`, "x"],
])("a snippet %s is written as %s where there are none", (newText, plain) => {
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  const item = { label: "a", textEdit: { range, newText }, insertTextFormat: InsertTextFormat.Snippet };
  const of = (textDocument: object) =>
    clientAbilities({ processId: null, rootUri: null, capabilities: { textDocument } });
  expect(completionFor(of({}), [item])).toEqual([{ label: "a", textEdit: { range, newText: plain } }]);
  expect(completionFor(of(ABLE), [item])).toEqual([item]);
});

test.each([
  ["# Cable\n\n**out** `90 ft`", "Cable\n\nout 90 ft"],
  ["one  \ntwo\n\n---\n\nthree", "one\ntwo\n\nthree"],
  ["[0.9 mm](https://example.org)", "0.9 mm"],
  ["a \\* b", "a * b"],
  ["*An estimate*, 2 * 3 * 4", "An estimate, 2 * 3 * 4"],
  ["```\ncode\n```", "code"],
])("markdown %j as plain text is %j", (markdown, plain) => {
  expect(plainText(markdown)).toBe(plain);
});

async function actionsOf(client: Awaited<ReturnType<typeof openMorning>>["client"]): Promise<unknown[]> {
  const { diagnostics } = await client.published(URI);
  const range = diagnostics[0]?.range;
  return await client.request("textDocument/codeAction", { ...DOCUMENT, range, context: { diagnostics } });
}
