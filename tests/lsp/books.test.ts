/** Gear books in the editor and on disk, and the folders they are looked for in. */
import { describe, expect, test } from "vitest";
import type { InlayHint } from "vscode-languageserver-types";
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { codes, DOCUMENT, openMorning, WHOLE } from "./open-morning.ts";
import type { TestClient } from "./test-client.ts";

describe("books", () => {
  const ALTERED = BOOK.replace("ball round-12 sphere 12 lb", "ball round-12 sphere 4 lb");
  const ballHint = async (client: TestClient) => {
    const params = { ...DOCUMENT, range: WHOLE };
    const hints = await client.request<InlayHint[]>("textDocument/inlayHint", params);
    return String(hints[1]?.label);
  };

  test("opened and edited, they change the trip at once; closed unsaved, they change it back", async () => {
    const capabilities = { workspace: { inlayHint: { refreshSupport: true } } };
    const { client } = await openMorning(MORNING, { capabilities });
    const before = await ballHint(client);
    await client.open(BOOK_URI, BOOK);
    await client.published(BOOK_URI);
    expect(await ballHint(client)).toBe(before);
    client.forget();
    await client.change(BOOK_URI, 2, [{ text: ALTERED }]);
    await client.published(URI);
    expect(await ballHint(client)).not.toBe(before);
    client.forget();
    await client.change(BOOK_URI, 3, [{ text: BOOK.replaceAll("rig P1 ", "rig P7 ") }]);
    expect(codes((await client.published(URI)).diagnostics)).toContain("unknown-rig");
    client.forget();
    await client.close(BOOK_URI);
    expect((await client.published(URI)).diagnostics).toEqual([]);
    expect(await ballHint(client)).toBe(before);
    expect(client.hintRefreshes).toBeGreaterThan(0);
  });

  test("changed on disk, they are read again", async () => {
    const { client, world } = await openMorning();
    const before = await ballHint(client);
    world.books.set(BOOK_URI, ALTERED);
    client.forget();
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: BOOK_URI, type: 2 }] });
    await client.published(URI);
    expect(await ballHint(client)).not.toBe(before);
  });

  test("a client that can watch files is asked to", async () => {
    const workspace = { didChangeWatchedFiles: { dynamicRegistration: true } };
    const { client } = await openMorning(MORNING, { capabilities: { workspace } });
    await client.until(
      "a registration",
      () => client.registered.includes("workspace/didChangeWatchedFiles") || undefined,
    );
  });

  test("a gear book alone is checked", async () => {
    const { client } = await openMorning();
    await client.open("file:///other/x.gear", "boat b\nrig X1 downrigger ball nothing\n");
    const { diagnostics } = await client.published("file:///other/x.gear");
    expect(codes(diagnostics)).toContain("unknown-ball");
  });
});

test("the roots are the client's folders, and follow them", async () => {
  const world = new BookWorld();
  const client = joinServer(world);
  const folders = [{ uri: "file:///season", name: "season" }];
  client.connection.onRequest("workspace/workspaceFolders", () => [
    ...folders,
    { uri: "file:///old", name: "old" },
  ]);
  await client.initialize({ capabilities: { workspace: { workspaceFolders: true } }, folders });
  expect(world.roots).toEqual(["file:///season"]);
  await client.open(URI, MORNING);
  await client.published(URI);
  client.forget();
  const event = { added: [{ uri: "file:///old", name: "old" }], removed: [] };
  await client.notify("workspace/didChangeWorkspaceFolders", { event });
  await client.published(URI);
  expect(world.roots).toEqual(["file:///season", "file:///old"]);
});

test("a client without folders has its root", async () => {
  const world = new BookWorld();
  const client = joinServer(world);
  await client.request("initialize", { processId: null, rootUri: "file:///season", capabilities: {} });
  expect(world.roots).toEqual(["file:///season"]);
});
