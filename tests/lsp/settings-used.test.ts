/** Thresholds from the settings, live, and what the client is told of those that can't be used; lenses and tooltips. */
import { describe, expect, test } from "vitest";
import type { CodeLens, InlayHint } from "vscode-languageserver-types";
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { codes, DOCUMENT, openMorning, WHOLE } from "./open-morning.ts";
import type { ClientSetup, TestClient } from "./test-client.ts";

/** A reading 36 minutes old, which is stale by default. */
const STALE = `${MORNING}06:18 again P1\n06:21 move C1 out 95 ft\n`;

/** A client that keeps what it is shown. */
async function openShown(setup: ClientSetup = {}): Promise<{ client: TestClient; shown: string[] }> {
  const world = new BookWorld();
  world.books.set(BOOK_URI, BOOK);
  const client = joinServer(world);
  const shown: string[] = [];
  client.connection.onNotification("window/showMessage", ({ message }: { message: string }) => {
    shown.push(message);
  });
  await client.initialize(setup);
  await client.open(URI, STALE);
  await client.published(URI);
  return { client, shown };
}

const isStale = (client: TestClient, wanted: boolean) =>
  client.published(URI, ({ diagnostics }) => codes(diagnostics).includes("reading-stale") === wanted);
const set = (client: TestClient, value: unknown) =>
  client.notify("workspace/didChangeConfiguration", {
    settings: { deepwake: { thresholds: { "reading-stale": value } } },
  });

describe("thresholds", () => {
  test("changed while a journal is open, and changed back", async () => {
    const { client, shown } = await openShown();
    await isStale(client, true);
    for (const [value, wanted] of [
      ["60 min", false],
      ["10 min", true],
      ["40 min", false],
      ["30 min", true],
    ] as const) {
      client.forget();
      await set(client, value);
      await isStale(client, wanted);
    }
    expect(shown).toEqual([]);
  });

  test("one that can't be used is told once, and the default holds", async () => {
    const { client, shown } = await openShown({ options: { thresholds: { "reading-stale": "60 min" } } });
    await isStale(client, false);
    client.forget();
    await set(client, "soon");
    await isStale(client, true);
    await set(client, "soon");
    await set(client, "later");
    // What is asked after the messages is answered after them.
    await client.request("textDocument/documentSymbol", DOCUMENT);
    expect(shown).toHaveLength(2);
    expect(shown[0]).toMatch(
      /^The setting deepwake\.thresholds\.reading-stale is "soon", which can't be used/u,
    );
    expect(shown[1]).toMatch(/"later"/u);
  });

  test("one given at the start is told too", async () => {
    const { shown } = await openShown({ options: { thresholds: { "reading-stael": "60 min" } } });
    expect(shown[0]).toMatch(/Did you mean reading-stale\?$/u);
  });
});

test("a lens and its words; the table's only for a client that names its command", async () => {
  for (const [options, count] of [
    [undefined, 1],
    [{ commands: ["deepwake.letOutTable"] }, 2],
  ] as const) {
    const { client } = await openMorning(MORNING, { options });
    const lenses = await client.request<CodeLens[]>("textDocument/codeLens", DOCUMENT);
    expect(lenses).toHaveLength(count);
    const words = await client.request<CodeLens>("codeLens/resolve", lenses.at(-1));
    expect(words.command?.title).toMatch(count === 1 ? /1 fish/u : /Let-out table/u);
  }
});

test("tooltips come later only to a client that asks for them later", async () => {
  const inlayHint = { resolveSupport: { properties: ["tooltip"] } };
  for (const [capabilities, isLazy] of [
    [{}, false],
    [{ textDocument: { inlayHint } }, true],
  ] as const) {
    const { client } = await openMorning(MORNING, { capabilities });
    const [hint] = await client.request<InlayHint[]>("textDocument/inlayHint", { ...DOCUMENT, range: WHOLE });
    expect(hint?.tooltip === undefined).toBe(isLazy);
    const told = await client.request<InlayHint>("inlayHint/resolve", hint);
    if (isLazy) expect(String(told.tooltip)).toMatch(/^Ball about/u);
  }
});

test("lenses are refreshed with the settings where the client can", async () => {
  let refreshes = 0;
  const { client } = await openShown({ capabilities: { workspace: { codeLens: { refreshSupport: true } } } });
  client.connection.onRequest("workspace/codeLens/refresh", () => {
    refreshes++;
    return null;
  });
  await set(client, "60 min");
  await isStale(client, false);
  await set(client, "10 min");
  await isStale(client, true);
  expect(refreshes).toBeGreaterThan(0);
});
