/** What is asked about names, over the protocol. */
import { describe, expect, test } from "vitest";
import type {
  DocumentHighlight,
  DocumentLink,
  Location,
  LocationLink,
  Range,
  WorkspaceEdit,
  WorkspaceSymbol,
} from "vscode-languageserver-types";
import { BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { DOCUMENT, openMorning } from "./open-morning.ts";

/** On the P1 of `05:18 set P1`. */
const ON_RIG = { ...DOCUMENT, position: { line: 7, character: 11 } };

test("a definition is a place, or for a client that follows links the whole jump", async () => {
  const { client } = await openMorning();
  const [place] = await client.request<Location[]>("textDocument/definition", ON_RIG);
  expect(place?.uri).toBe(BOOK_URI);
  const able = await openMorning(MORNING, {
    capabilities: { textDocument: { definition: { linkSupport: true } } },
  });
  const [link] = await able.client.request<LocationLink[]>("textDocument/definition", ON_RIG);
  expect(link?.targetUri).toBe(BOOK_URI);
  expect(link?.originSelectionRange).toEqual({
    start: { line: 7, character: 10 },
    end: { line: 7, character: 12 },
  });
});

test("references, with the lines that define it or without", async () => {
  const { client } = await openMorning();
  const ask = (includeDeclaration: boolean) =>
    client.request<Location[]>("textDocument/references", { ...ON_RIG, context: { includeDeclaration } });
  const uses = [`${URI} 7`, `${URI} 9`, `${URI} 10`, `${BOOK_URI} 12`];
  const drawn = (places: Location[]) => places.map(({ uri, range }) => `${uri} ${range.start.line}`);
  expect(drawn(await ask(false))).toEqual(uses);
  expect(drawn(await ask(true))).toEqual([
    ...uses.slice(0, 3),
    `${BOOK_URI} 11`,
    ...uses.slice(3),
    `${BOOK_URI} 18`,
  ]);
});

test("highlights, links and symbols", async () => {
  const { client } = await openMorning();
  const lit = await client.request<DocumentHighlight[]>("textDocument/documentHighlight", ON_RIG);
  expect(lit.map(({ range }) => range.start.line)).toEqual([7, 9, 10]);
  const links = await client.request<DocumentLink[]>("textDocument/documentLink", DOCUMENT);
  expect(links.map(({ target }) => target)).toEqual([BOOK_URI]);
  const symbols = await client.request<WorkspaceSymbol[]>("workspace/symbol", { query: "p1u" });
  expect(symbols.map(({ name, location }) => [name, location.uri])).toEqual([["P1U", BOOK_URI]]);
});

describe("renaming", () => {
  test("starts from the name", async () => {
    const { client } = await openMorning();
    const prepared = await client.request<{ range: Range; placeholder: string }>(
      "textDocument/prepareRename",
      ON_RIG,
    );
    expect(prepared.placeholder).toBe("P1");
    const nowhere = { ...DOCUMENT, position: { line: 7, character: 7 } };
    expect(await client.request("textDocument/prepareRename", nowhere)).toBeNull();
    expect(await client.request("textDocument/rename", { ...nowhere, newName: "X" })).toBeNull();
  });

  test("edits the trip and the book", async () => {
    const { client } = await openMorning();
    const { changes } = await client.request<WorkspaceEdit>("textDocument/rename", {
      ...ON_RIG,
      newName: "Port 1",
    });
    expect(Object.keys(changes ?? {})).toEqual([URI, BOOK_URI]);
    expect(changes?.[URI]?.map(({ newText }) => newText)).toEqual(['"Port 1"', '"Port 1"', '"Port 1"']);
  });

  test("says which version was edited to a client that can tell", async () => {
    const workspace = { workspaceEdit: { documentChanges: true } };
    const { client } = await openMorning(MORNING, { capabilities: { workspace } });
    const edit = await client.request<WorkspaceEdit>("textDocument/rename", { ...ON_RIG, newName: "X" });
    expect(edit.documentChanges?.map((one) => "textDocument" in one && one.textDocument)).toEqual([
      { uri: URI, version: 1 },
      { uri: BOOK_URI, version: null },
    ]);
  });

  test("is refused in the captain's words", async () => {
    const { client } = await openMorning();
    await expect(client.request("textDocument/rename", { ...ON_RIG, newName: "C1" })).rejects.toThrow(
      '"C1" is already the name of a rig: bright-penny.gear, line 11.',
    );
    const fish = { ...DOCUMENT, position: { line: 3, character: 12 } };
    await expect(client.request("textDocument/prepareRename", fish)).rejects.toThrow(
      "nickname WORD lake-trout",
    );
    expect(client.logged).toEqual([]);
  });
});

describe("files that move", () => {
  test("the names of pictures follow", async () => {
    const { client } = await openMorning(`${MORNING}06:20 catch C1 king picture king.jpg\n`);
    const files = [{ oldUri: "file:///season/king.jpg", newUri: "file:///season/big/king.jpg" }];
    const { changes } = await client.request<WorkspaceEdit>("workspace/willRenameFiles", { files });
    expect(changes?.[URI]?.map(({ newText }) => newText)).toEqual(["big/king.jpg"]);
  });

  test.each([
    ["workspace/didRenameFiles", [{ oldUri: BOOK_URI, newUri: "file:///season/other.gear" }]],
    ["workspace/didDeleteFiles", [{ uri: BOOK_URI }]],
  ])("%s: what leaned on a book is checked anew", async (method, files) => {
    const { client, world } = await openMorning();
    world.books.clear();
    client.forget();
    await client.notify(method, { files });
    const { diagnostics } = await client.published(URI);
    expect(diagnostics.map(({ code }) => code)).toContain("unknown-boat");
  });
});
