/** Gear books that come through the client: fetched before they are used, and again when files changed. */
import { describe, expect, test } from "vitest";
import type { WorkspaceEdit } from "vscode-languageserver-types";
import { type ClientFiles, clientWorld, filesOf } from "../../server/lsp/client-world.ts";
import { mixedWorld } from "../../server/lsp/mixed-world.ts";
import { BOOK, MORNING } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { codes } from "./open-morning.ts";

const FOLDER = "vfs://host/season";
const TRIP = `${FOLDER}/trips/day.trip`;
const BOOK_AT = `${FOLDER}/bright-penny.gear`;

/** Files in memory, by address, that count what is asked of them. */
class MemoryFiles implements ClientFiles {
  readonly texts: Map<string, string>;
  listed: string[] = [];
  read: string[] = [];

  constructor(texts: Readonly<Record<string, string>>) {
    this.texts = new Map(Object.entries(texts));
  }

  async listFolder(uri: string) {
    this.listed.push(uri);
    const inside = [...this.texts.keys()].filter((file) => file.startsWith(`${uri}/`));
    const names = new Set(inside.map((file) => file.slice(uri.length + 1).split("/")[0] ?? ""));
    const entries = [...names].map((name) => ({
      name,
      uri: `${uri}/${name}`,
      isFile: this.texts.has(`${uri}/${name}`),
    }));
    return entries.length === 0 ? null : entries;
  }

  async readFile(uri: string) {
    this.read.push(uri);
    return this.texts.get(uri) ?? null;
  }
}

async function booksFor(uri: string, texts: Readonly<Record<string, string>>, roots: string[] = []) {
  const files = new MemoryFiles(texts);
  const world = clientWorld(files);
  world.setRoots(roots);
  await world.ready?.(uri);
  return { world, files, uris: world.booksNear(uri).map((book) => book.uri) };
}

describe("books near a document", () => {
  const texts = {
    "vfs://host/top.gear": BOOK,
    [`${FOLDER}/b.gear`]: BOOK,
    [`${FOLDER}/A.GEAR`]: BOOK,
    [`${FOLDER}/trips/near.gear`]: BOOK,
    [TRIP]: MORNING,
  };
  const [near, upper, lower] = [`${FOLDER}/trips/near.gear`, `${FOLDER}/A.GEAR`, `${FOLDER}/b.gear`];

  test("come nearest folder first, by name, up to the top", async () => {
    const { uris } = await booksFor(TRIP, texts);
    expect(uris).toEqual([near, upper, lower, "vfs://host/top.gear"]);
  });

  test.each([FOLDER, `${FOLDER}/`])("and not from above the root %s", async (root) => {
    expect((await booksFor(TRIP, texts, [root])).uris).toEqual([near, upper, lower]);
  });

  test("nor from above a repository", async () => {
    const { uris } = await booksFor(TRIP, { ...texts, [`${FOLDER}/.git/config`]: "" });
    expect(uris).toEqual([near, upper, lower]);
  });

  test("are never the document itself", async () => {
    expect((await booksFor(lower, texts, [FOLDER])).uris).toEqual([upper]);
  });

  test("of a document that was never saved are those of the first folder", async () => {
    expect((await booksFor("untitled:Untitled-1", texts, [FOLDER])).uris).toEqual([upper, lower]);
    expect((await booksFor("untitled:Untitled-1", texts)).uris).toEqual([]);
  });

  test("are none where nothing can be listed or read", async () => {
    expect((await booksFor(TRIP, {})).uris).toEqual([]);
    const files = new MemoryFiles(texts);
    const world = clientWorld({ listFolder: (uri) => files.listFolder(uri), readFile: async () => null });
    await world.ready?.(TRIP);
    expect(world.booksNear(TRIP)).toEqual([]);
  });
});

test("what was fetched is asked for once, and again after files changed; a book that is the same stays the same", async () => {
  const { world, files } = await booksFor(TRIP, { [BOOK_AT]: BOOK, [TRIP]: MORNING }, [FOLDER]);
  expect(world.ready?.(TRIP)).toBeUndefined();
  await world.ready?.(`${FOLDER}/trips/other.trip`);
  await world.ready?.(`${FOLDER}/third.trip`);
  expect(files.listed).toEqual([`${FOLDER}/trips`, FOLDER]);
  const [before] = world.booksNear(TRIP);
  world.forgetFiles();
  expect(world.booksNear(TRIP)).toEqual([before]);
  await world.ready?.(TRIP);
  expect(world.booksNear(TRIP)[0]?.parse).toBe(before?.parse);
  files.texts.set(BOOK_AT, `${BOOK}# more\n`);
  world.forgetFiles();
  await world.ready?.(TRIP);
  expect(world.booksNear(TRIP)[0]?.parse).not.toBe(before?.parse);
});

/** A server without a disk, at the end of the year that the days are of, and its client with these files. */
function joinBrowser(files: MemoryFiles) {
  const client = joinServer((connection) => ({
    ...clientWorld(filesOf(connection)),
    today: () => "2031-12-31",
  }));
  client.connection.onRequest("deepwake/listFolder", ({ uri }: { uri: string }) => files.listFolder(uri));
  client.connection.onRequest("deepwake/readFile", ({ uri }: { uri: string }) => files.readFile(uri));
  return client;
}

describe("a server that has no disk", () => {
  const FOLDERS = [{ uri: FOLDER, name: "season" }];

  test("first fetches the books, then checks: nothing false is ever said", async () => {
    const client = joinBrowser(new MemoryFiles({ [BOOK_AT]: BOOK }));
    await client.initialize({ folders: FOLDERS });
    await client.open(TRIP, MORNING);
    const position = { line: 7, character: 8 };
    const hover = client.request("textDocument/hover", { textDocument: { uri: TRIP }, position });
    expect(await hover).toMatchObject({
      contents: { value: expect.stringMatching(/^Ball about \d+ ft down/u) },
    });
    expect((await client.published(TRIP)).diagnostics).toEqual([]);
    expect(client.publishedCount).toBe(1);
  });

  test("a second document of a folder leans on the books too", async () => {
    const client = joinBrowser(new MemoryFiles({ [BOOK_AT]: BOOK }));
    await client.initialize({ folders: FOLDERS });
    const other = `${FOLDER}/trips/other.trip`;
    await Promise.all([client.open(TRIP, MORNING), client.open(other, MORNING)]);
    for (const uri of [TRIP, other]) expect((await client.published(uri)).diagnostics).toEqual([]);
  });

  test("files that aren't open are searched, checked, and told of anew when they change; hidden ones are not", async () => {
    const bad = MORNING.replaceAll("P1", "P7");
    const files = new MemoryFiles({ [BOOK_AT]: BOOK, [TRIP]: bad, [`${FOLDER}/.old/day.trip`]: bad });
    const client = joinBrowser(files);
    await client.initialize({ folders: FOLDERS });
    const found = await client.request<object[]>("workspace/symbol", { query: "2031-06-21" });
    expect(found).toHaveLength(1);
    await client.published(TRIP, ({ diagnostics }) => codes(diagnostics).includes("unknown-rig"));
    files.texts.set(TRIP, MORNING);
    client.forget();
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: TRIP, type: 2 }] });
    await client.published(TRIP, ({ diagnostics }) => diagnostics.length === 0);
  });

  test("a rename reaches files that aren't open, and is refused where one can't be read", async () => {
    const other = `${FOLDER}/trips/other.trip`;
    const files = new MemoryFiles({ [BOOK_AT]: BOOK, [other]: MORNING });
    const client = joinBrowser(files);
    await client.initialize({ folders: FOLDERS });
    await client.open(TRIP, MORNING);
    const params = { textDocument: { uri: TRIP }, position: { line: 7, character: 11 }, newName: "P9" };
    const rename = () => client.request<WorkspaceEdit>("textDocument/rename", params);
    const { changes } = await rename();
    expect(Object.keys(changes ?? {}).sort()).toEqual([BOOK_AT, TRIP, other].sort());
    expect(changes?.[other]).toEqual(changes?.[TRIP]);
    files.texts.delete(other);
    await expect(rename()).rejects.toThrow("other.trip can't be read just now");
    files.texts.set(other, MORNING);
    expect(await rename()).toEqual({ changes });
  });

  test("a book that changed is fetched again, and the trip told anew", async () => {
    const files = new MemoryFiles({ [BOOK_AT]: BOOK });
    const client = joinBrowser(files);
    await client.initialize({ folders: FOLDERS });
    await client.open(TRIP, MORNING);
    await client.published(TRIP);
    files.texts.set(BOOK_AT, BOOK.replaceAll("rig P1 ", "rig P7 "));
    client.forget();
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: BOOK_AT, type: 2 }] });
    await client.published(TRIP, ({ diagnostics }) => codes(diagnostics).includes("unknown-rig"));
  });

  test("a client that doesn't know the requests is one without books", async () => {
    const client = joinServer((connection) => clientWorld(filesOf(connection)));
    await client.initialize({ folders: FOLDERS });
    await client.open(TRIP, MORNING);
    expect(codes((await client.published(TRIP)).diagnostics)).toContain("unknown-boat");
    expect(client.logged).toEqual([]);
  });
});

test("files on disk and others stand side by side", async () => {
  const disk = new BookWorld();
  disk.books.set("file:///season/disk.gear", BOOK);
  const files = new MemoryFiles({ [BOOK_AT]: BOOK });
  const world = mixedWorld(disk, clientWorld(files));
  const near = async (uri: string) => {
    await world.ready?.(uri);
    return world.booksNear(uri).map((book) => book.uri);
  };
  world.setRoots(["file:///season"]);
  expect(await near("file:///season/day.trip")).toEqual(["file:///season/disk.gear"]);
  expect(await near("untitled:1")).toEqual(["file:///season/disk.gear"]);
  expect(await near(TRIP)).toEqual([BOOK_AT]);
  world.setRoots([FOLDER]);
  expect(await near("untitled:1")).toEqual([BOOK_AT]);
});
