/** A folder of journals on disk, followed by the server: what isn't open is found in, told of and kept between runs. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import { diskWorld } from "../../server/lsp/disk-world.ts";
import { makeTrip } from "../bench/make-trip.ts";
import { tripText } from "../bench/write-journal.ts";
import { bookOf, dayOf } from "../workspace/season.ts";
import { joinServer } from "./join-server.ts";
import { codes } from "./open-morning.ts";
import { ABLE, type ClientSetup, type TestClient } from "./test-client.ts";

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const BOOK = bookOf("Bright Penny");
/** A day on a rig that the book has, and one on a rig that it hasn't. */
const GOOD = dayOf("2031-06-21", "Bright Penny");
const BAD = dayOf("2031-06-22", "Bright Penny", "P7");

/** The disk, at the end of the year that the days are of. */
const worldOfThatYear = () => ({ ...diskWorld(), today: () => "2031-12-31" });

/** A workspace in a folder of its own, and a place to keep things beside it. */
class Folder {
  readonly top = mkdtempSync(join(tmpdir(), "deepwake-workspace-"));
  readonly root = join(this.top, "journals");
  readonly storage = join(this.top, "storage");

  constructor(texts: Readonly<Record<string, string>>) {
    made.push(this.top);
    for (const [name, text] of Object.entries(texts)) this.write(name, text);
  }

  path(name: string): string {
    return join(this.root, name);
  }

  uri(name: string): string {
    return pathToFileURL(this.path(name)).href;
  }

  write(name: string, text: string): void {
    mkdirSync(dirname(this.path(name)), { recursive: true });
    writeFileSync(this.path(name), text);
  }

  /** A client that works in the folder. */
  async join({ capabilities = {}, options }: ClientSetup = {}): Promise<TestClient> {
    const client = joinServer(worldOfThatYear());
    await client.initialize({
      capabilities: { ...capabilities, textDocument: { ...ABLE, ...capabilities.textDocument } },
      options: { storage: this.storage, ...(options as object) },
      folders: [{ uri: pathToFileURL(this.root).href, name: "journals" }],
    });
    return client;
  }
}

const changed = (client: TestClient, ...uris: string[]): Promise<void> =>
  client.notify("workspace/didChangeWatchedFiles", { changes: uris.map((uri) => ({ uri, type: 2 })) });

const isEmpty = ({ diagnostics }: { diagnostics: readonly unknown[] }): boolean => diagnostics.length === 0;
const isFull = ({ diagnostics }: { diagnostics: readonly unknown[] }): boolean => diagnostics.length > 0;

describe("files that aren't open", () => {
  test("are checked, and what is found in them is sent", async () => {
    const folder = new Folder({
      "penny.gear": BOOK,
      "a.trip": GOOD,
      "deep/er/b.trip": BAD,
      ".old/c.trip": BAD,
    });
    const client = await folder.join();
    const { diagnostics } = await client.published(folder.uri("deep/er/b.trip"));
    expect(codes(diagnostics)).toEqual(["unknown-rig", "unknown-rig"]);
    await changed(client, folder.uri("a.trip"));
    expect(client.publishedCount).toBe(1);
  });

  test("follow the disk: changed, gone, new", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD, "b.trip": BAD });
    const client = await folder.join();
    await client.published(folder.uri("a.trip"), isFull);
    await client.published(folder.uri("b.trip"), isFull);
    folder.write("a.trip", GOOD);
    rmSync(folder.path("b.trip"));
    folder.write("c.trip", BAD);
    client.forget();
    await changed(client, ...["a.trip", "b.trip", "c.trip"].map((name) => folder.uri(name)));
    await client.published(folder.uri("a.trip"), isEmpty);
    await client.published(folder.uri("b.trip"), isEmpty);
    await client.published(folder.uri("c.trip"), isFull);
  });

  test("follow a book on disk, and one that is typed into", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": GOOD });
    const client = await folder.join();
    folder.write("penny.gear", bookOf("Bright Penny", "P9"));
    await changed(client, folder.uri("penny.gear"));
    await client.published(folder.uri("a.trip"), isFull);
    client.forget();
    await client.open(folder.uri("penny.gear"), BOOK);
    await client.published(folder.uri("a.trip"), isEmpty);
    client.forget();
    await client.close(folder.uri("penny.gear"));
    await client.published(folder.uri("a.trip"), isFull);
  });

  test("are told of as they are on disk once they are closed", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
    const client = await folder.join();
    await client.published(folder.uri("a.trip"), isFull);
    client.forget();
    await client.open(folder.uri("a.trip"), GOOD);
    await client.published(folder.uri("a.trip"), (one) => isEmpty(one) && one.version === 1);
    client.forget();
    await client.close(folder.uri("a.trip"));
    await client.published(folder.uri("a.trip"), isFull);
  });

  test("move with a folder that is renamed", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "old/a.trip": BAD });
    const client = await folder.join();
    await client.published(folder.uri("old/a.trip"), isFull);
    renameSync(folder.path("old"), folder.path("new"));
    client.forget();
    const files = [{ oldUri: folder.uri("old"), newUri: folder.uri("new") }];
    await client.notify("workspace/didRenameFiles", { files });
    await client.published(folder.uri("old/a.trip"), isEmpty);
    await client.published(folder.uri("new/a.trip"), isFull);
  });

  test("keep quiet when the captain wants it so", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
    const client = await folder.join();
    await client.published(folder.uri("a.trip"), isFull);
    client.forget();
    const settings = { deepwake: { check: { wholeWorkspace: false } } };
    await client.notify("workspace/didChangeConfiguration", { settings });
    await client.published(folder.uri("a.trip"), isEmpty);
  });

  test("are one file however a client spells their address", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a (1).trip": BAD });
    const client = await folder.join();
    await client.published(folder.uri("a (1).trip"), isFull);
    client.forget();
    const spelled = folder.uri("a (1).trip").replace("(", "%28").replace(")", "%29");
    await client.open(spelled, GOOD);
    await client.published(spelled, isEmpty);
    await changed(client, spelled);
    await client.request("textDocument/documentSymbol", { textDocument: { uri: spelled } });
    await expect(
      Promise.race([client.published(folder.uri("a (1).trip"), isFull), Promise.resolve("none")]),
    ).resolves.toBe("none");
  });
});

test("a client that never tells its settings has its workspace checked all the same", async () => {
  const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
  const client = joinServer(worldOfThatYear());
  client.connection.onRequest("workspace/configuration", () => new Promise(() => undefined));
  await client.initialize({
    capabilities: { workspace: { configuration: true } },
    folders: [{ uri: pathToFileURL(folder.root).href, name: "journals" }],
  });
  await client.published(folder.uri("a.trip"), isFull);
});

describe("asked for", () => {
  const capabilities = { textDocument: { diagnostic: {} } };
  const pullAll = (client: TestClient): Promise<{ items: { uri: string; items: { code: string }[] }[] }> =>
    client.request("workspace/diagnostic", { previousResultIds: [] });

  test("the whole workspace is answered once all of it is checked", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": GOOD, "b.trip": BAD });
    const client = await folder.join({ capabilities });
    const { items } = await pullAll(client);
    const found = items.map(({ uri, items: all }) => [uri, all.length]).sort();
    expect(found).toEqual([
      [folder.uri("a.trip"), 0],
      [folder.uri("b.trip"), 2],
      [folder.uri("penny.gear"), 0],
    ]);
    expect(client.publishedCount).toBe(0);
  });

  test("before the settings are told, it waits for them", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
    const workspace = { configuration: true };
    const client = await folder.join({ capabilities: { ...capabilities, workspace } });
    const { items } = await pullAll(client);
    expect(items.map(({ uri }) => uri).sort()).toEqual([folder.uri("a.trip"), folder.uri("penny.gear")]);
  });
});

describe("progress", () => {
  test("is shown while many files are checked", async () => {
    const days = Array.from({ length: 60 }, (_, n) => [`${n}.trip`, tripText(makeTrip(n))] as const);
    const folder = new Folder({ "penny.gear": BOOK, ...Object.fromEntries(days) });
    const client = await folder.join({ capabilities: { window: { workDoneProgress: true } } });
    await client.until("an end", () => client.progress.find(({ kind }) => kind === "end"));
    const checking = client.progress.slice(client.progress.findIndex((one) => "title" in one));
    expect(checking[0]).toMatchObject({ kind: "begin", cancellable: true });
    const shown = checking.flatMap((one) => (one.kind === "report" ? (one.percentage ?? -1) : []));
    expect(shown.length).toBeGreaterThan(0);
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
  });
});

describe("kept between runs", () => {
  const kept = (folder: Folder): string[] => {
    try {
      return readdirSync(folder.storage);
    } catch {
      return [];
    }
  };
  const untilKept = async (folder: Folder): Promise<void> => {
    while (kept(folder).length === 0) await new Promise((resolve) => setTimeout(resolve, 5));
  };

  test("what was found is there at the next start, and nothing is left lying about", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
    const first = await folder.join();
    const { diagnostics } = await first.published(folder.uri("a.trip"), isFull);
    await untilKept(folder);
    expect(kept(folder)).toEqual(["index.deepwake"]);
    const second = await folder.join();
    expect((await second.published(folder.uri("a.trip"), isFull)).diagnostics).toEqual(diagnostics);
  });

  test("what changed meanwhile is read again", async () => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD, "b.trip": GOOD });
    const first = await folder.join();
    await first.published(folder.uri("a.trip"), isFull);
    await untilKept(folder);
    folder.write("b.trip", dayOf("2031-06-30", "Bright Penny", "P8"));
    const second = await folder.join();
    await second.published(folder.uri("b.trip"), isFull);
  });

  test.each(["nothing at all", "", "\u0000\u0000\u0000\u0000"])(
    "a damaged index (%j) is made anew",
    async (damage) => {
      const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
      mkdirSync(folder.storage);
      const file = join(folder.storage, "index.deepwake");
      writeFileSync(file, damage);
      const client = await folder.join();
      await client.published(folder.uri("a.trip"), isFull);
      while (readFileSync(file, "utf8") === damage) await new Promise((resolve) => setTimeout(resolve, 5));
      expect(client.logged).toEqual([]);
    },
  );

  test.each([
    ["in a workspace that isn't trusted", { trusted: false }],
    ["without a place for it", { storage: undefined }],
    ["in a place that is no folder", { storage: "vscode-userdata:/storage" }],
  ])("nothing is, %s", async (_, options) => {
    const folder = new Folder({ "penny.gear": BOOK, "a.trip": BAD });
    const client = await folder.join({ capabilities: { textDocument: { diagnostic: {} } }, options });
    await client.request("workspace/diagnostic", { previousResultIds: [] });
    expect(kept(folder)).toEqual([]);
    expect(client.logged).toEqual([]);
  });
});

test("a search asked for at once waits until every file was looked at", async () => {
  const days = Array.from({ length: 300 }, (_, day) => [`${day}.trip`, GOOD]);
  const folder = new Folder({ "penny.gear": BOOK, ...Object.fromEntries(days) });
  const client = await folder.join();
  const found = await client.request<object[]>("workspace/symbol", { query: "2031-06-21" });
  // As many as a search answers with.
  expect(found.length).toBeGreaterThan(100);
});
