/** A failing world, feature or client costs an answer, never the server. */
import { describe, expect, test } from "vitest";
import { BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { codes, DOCUMENT, SLIP, WHOLE } from "./open-morning.ts";

describe("nothing brings it down", () => {
  test("a world that fails is logged, and the trip is checked without it", async () => {
    const world = new BookWorld();
    world.failure = new Error("the disk is wet");
    const client = joinServer(world);
    await client.initialize();
    await client.open(URI, SLIP);
    expect(codes((await client.published(URI)).diagnostics)).toContain("number-format");
    expect(client.logged.join("\n")).toContain("finding gear books failed: Error: the disk is wet");
  });

  test("a feature that throws answers empty, is logged, and the next request is answered", async () => {
    const world = new BookWorld();
    // A book without a parse: whatever looks into it throws.
    world.booksNear = () => [{ uri: BOOK_URI, parse: undefined as never }];
    const client = joinServer(world);
    await client.initialize();
    await client.open(URI, MORNING);
    expect((await client.published(URI)).diagnostics).toEqual([]);
    const position = { line: 7, character: 8 };
    expect(await client.request("textDocument/hover", { ...DOCUMENT, position })).toBeNull();
    expect(await client.request("textDocument/inlayHint", { ...DOCUMENT, range: WHOLE })).toEqual([]);
    const log = client.logged.join("\n");
    for (const name of ["checks failed", "hover failed", "inlay hints failed"]) expect(log).toContain(name);
    expect(await client.request("textDocument/documentSymbol", DOCUMENT)).toHaveLength(1);
  });

  test("requests about documents that aren't open answer empty", async () => {
    const client = joinServer();
    await client.initialize();
    const position = { line: 0, character: 0 };
    expect(await client.request("textDocument/hover", { ...DOCUMENT, position })).toBeNull();
    expect(await client.request("textDocument/completion", { ...DOCUMENT, position })).toEqual([]);
    expect(await client.request("textDocument/semanticTokens/full", DOCUMENT)).toEqual({ data: [] });
  });

  test("a client that can't answer is not waited for", async () => {
    const workspace = { configuration: true, workspaceFolders: true, inlayHint: { refreshSupport: true } };
    const world = new BookWorld();
    const client = joinServer(world);
    client.connection.onRequest("workspace/configuration", () => {
      throw new Error("no settings here");
    });
    await client.initialize({ capabilities: { workspace } });
    await client.open(URI, SLIP);
    await client.until("a log line", () =>
      client.logged.find((line) => line.startsWith("reading settings failed")),
    );
    expect(codes((await client.published(URI)).diagnostics)).toContain("number-format");
  });
});
