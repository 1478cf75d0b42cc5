/** Diagnostics for a client that asks for them: names for what was heard, trips that lean on a book, the workspace. */
import { describe, expect, test } from "vitest";
import type {
  DocumentDiagnosticReport,
  RelatedFullDocumentDiagnosticReport,
  WorkspaceDiagnosticReport,
} from "vscode-languageserver-protocol/node";
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { MemoryFiles } from "../workspace/memory-files.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { codes, SLIP } from "./open-morning.ts";
import { ABLE, type TestClient } from "./test-client.ts";

const CAPABILITIES = {
  textDocument: { ...ABLE, diagnostic: { relatedDocumentSupport: true, relatedInformation: true } },
  workspace: { diagnostics: { refreshSupport: true } },
};

/** A workspace with journals that aren't open. */
class KeptWorld extends BookWorld {
  readonly files = new MemoryFiles();
}

const KEPT = ["file:///season/a.trip", "file:///season/b.trip"] as const;

async function openPulling(text: string, capabilities: object = CAPABILITIES) {
  const world = new KeptWorld();
  world.books.set(BOOK_URI, BOOK);
  for (const uri of KEPT) world.files.put(uri, SLIP);
  const client = joinServer(world);
  const { capabilities: offered } = await client.initialize({ capabilities });
  await client.open(URI, text);
  return { client, world, offered };
}

const pull = (client: TestClient, uri: string, previousResultId?: string) =>
  client.request<DocumentDiagnosticReport>("textDocument/diagnostic", {
    textDocument: { uri },
    ...(previousResultId === undefined ? {} : { previousResultId }),
  });

const pullAll = (client: TestClient, previousResultIds: { uri: string; value: string }[] = []) =>
  client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", { previousResultIds });

/** The findings of a full report; anything else fails. */
function itemsOf(report: { kind: string }): unknown[] {
  expect(report.kind).toBe("full");
  return codes((report as RelatedFullDocumentDiagnosticReport).items);
}

describe("a document", () => {
  test("is checked when it is asked for, and nothing is sent unasked", async () => {
    const { client, offered } = await openPulling(SLIP);
    expect(offered.diagnosticProvider).toMatchObject({
      workspaceDiagnostics: true,
      interFileDependencies: true,
    });
    expect(itemsOf(await pull(client, URI))).toEqual(["number-format"]);
    await client.change(URI, 2, [{ text: MORNING }]);
    expect(itemsOf(await pull(client, URI))).toEqual([]);
    await client.close(URI);
    expect(itemsOf(await pull(client, URI))).toEqual([]);
    expect(client.publishedCount).toBe(0);
  });

  test("is told to be unchanged while its findings are the same, in another server too", async () => {
    const { client } = await openPulling(SLIP);
    const { resultId } = await pull(client, URI);
    expect(await pull(client, URI, resultId)).toEqual({ kind: "unchanged", resultId });
    await client.change(URI, 2, [{ text: `${SLIP}\n# more below\n` }]);
    expect(await pull(client, URI, resultId)).toEqual({ kind: "unchanged", resultId });
    const other = await openPulling(SLIP);
    expect(await pull(other.client, URI, resultId)).toEqual({ kind: "unchanged", resultId });
    await client.change(URI, 3, [{ text: `# above\n${SLIP}` }]);
    expect(itemsOf(await pull(client, URI, resultId))).toEqual(["number-format"]);
  });

  test("that isn't open is told as it is kept", async () => {
    const { client } = await openPulling(MORNING);
    await pullAll(client);
    const report = await pull(client, KEPT[0]);
    expect(itemsOf(report)).toEqual(["number-format"]);
    const { resultId } = report;
    expect(await pull(client, KEPT[0], resultId)).toEqual({ kind: "unchanged", resultId });
  });

  test("that is asked for by nobody who pulls is sent", async () => {
    const { client, offered } = await openPulling(SLIP, { textDocument: ABLE });
    expect(offered.diagnosticProvider).toBeUndefined();
    expect(codes((await client.published(URI)).diagnostics)).toEqual(["number-format"]);
  });

  test("that changes while it is worked on is to be asked for again", async () => {
    const { client } = await openPulling(MORNING);
    const days = Array.from({ length: 80 }, (_, n) =>
      MORNING.replaceAll("06-21", `0${1 + (n % 9)}-${10 + (n % 18)}`),
    );
    await client.change(URI, 2, [{ text: days.join("") }]);
    const report = pull(client, URI);
    setTimeout(() => void client.change(URI, 3, [{ text: MORNING }]), 0);
    await expect(report).rejects.toMatchObject({ code: -32802, data: { retriggerRequest: true } });
    expect(itemsOf(await pull(client, URI))).toEqual([]);
  });
});

describe("a book", () => {
  const ALTERED = BOOK.replaceAll("rig P1 ", "rig P7 ");

  test("brings the trips that it changes along", async () => {
    const { client } = await openPulling(MORNING);
    await client.open(BOOK_URI, BOOK);
    const { resultId } = await pull(client, URI);
    expect(await pull(client, BOOK_URI)).not.toHaveProperty("relatedDocuments");
    await client.change(BOOK_URI, 2, [{ text: ALTERED }]);
    const report = await pull(client, BOOK_URI);
    const related = (report as RelatedFullDocumentDiagnosticReport).relatedDocuments?.[URI];
    expect(itemsOf(related ?? { kind: "none" })).toContain("unknown-rig");
    expect(related?.resultId).not.toBe(resultId);
  });

  test("brings none to a client that takes none, which is told to ask again", async () => {
    const textDocument = { ...ABLE, diagnostic: {} };
    const { client } = await openPulling(MORNING, { ...CAPABILITIES, textDocument });
    await client.open(BOOK_URI, BOOK);
    await pull(client, URI);
    await client.change(BOOK_URI, 2, [{ text: ALTERED }]);
    expect(await pull(client, BOOK_URI)).not.toHaveProperty("relatedDocuments");
    await client.until("a refresh", () => client.diagnosticRefreshes > 0 || undefined);
    expect(itemsOf(await pull(client, URI))).toContain("unknown-rig");
  });

  test("whose change changes no finding has nobody ask again", async () => {
    const { client, world } = await openPulling(MORNING);
    await client.open(BOOK_URI, BOOK);
    await pull(client, URI);
    await client.change(BOOK_URI, 2, [{ text: `${BOOK}# more\n` }]);
    world.books.set(BOOK_URI, ALTERED);
    await pull(client, BOOK_URI);
    expect(client.diagnosticRefreshes).toBe(0);
  });

  test("that changes on disk, like settings that change, has the client ask again", async () => {
    const { client, world } = await openPulling(MORNING);
    await pull(client, URI);
    world.books.set(BOOK_URI, ALTERED);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: BOOK_URI, type: 2 }] });
    await client.until("a refresh", () => client.diagnosticRefreshes > 0 || undefined);
    expect(itemsOf(await pull(client, URI))).toContain("unknown-rig");
    const checks = { "unknown-rig": "off" };
    await client.notify("workspace/didChangeConfiguration", { settings: { deepwake: { checks } } });
    await client.until("another refresh", () => client.diagnosticRefreshes > 1 || undefined);
    expect(itemsOf(await pull(client, URI))).not.toContain("unknown-rig");
  });
});

describe("the workspace", () => {
  test("is told with what is open as it is typed and what is closed as it is kept", async () => {
    const { client, world } = await openPulling(SLIP);
    const { items } = await pullAll(client);
    expect(items.map(({ uri, kind, version }) => [uri, kind, version])).toEqual([
      [URI, "full", 1],
      [KEPT[0], "full", null],
      [KEPT[1], "full", null],
    ]);
    const heard = items.map(({ uri, resultId }) => ({ uri, value: resultId ?? "" }));
    const again = await pullAll(client, heard);
    expect(again.items.map(({ kind }) => kind)).toEqual(["unchanged", "unchanged", "unchanged"]);
    world.files.put(KEPT[0], MORNING);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: KEPT[0], type: 2 }] });
    await client.change(URI, 2, [{ text: MORNING }]);
    const later = await pullAll(client, heard);
    // Files come as they are known: one that is checked again comes late.
    const kinds = new Map(later.items.map(({ uri, kind }) => [uri, kind]));
    expect([URI, ...KEPT].map((uri) => kinds.get(uri))).toEqual(["full", "full", "unchanged"]);
  });

  test("a file that is gone is told to have nothing, once", async () => {
    const { client, world } = await openPulling(MORNING);
    const { items } = await pullAll(client);
    const heard = items.map(({ uri, resultId }) => ({ uri, value: resultId ?? "" }));
    world.files.remove(KEPT[0]);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: KEPT[0], type: 3 }] });
    const gone = (await pullAll(client, heard)).items.find(({ uri }) => uri === KEPT[0]);
    expect(itemsOf(gone ?? { kind: "none" })).toEqual([]);
    const { items: later } = await pullAll(client, [{ uri: KEPT[0], value: gone?.resultId ?? "" }]);
    expect(later.map(({ uri }) => uri)).toEqual([URI, KEPT[1]]);
  });

  test("a file that is open isn't told a second time as it is kept", async () => {
    const { client, world } = await openPulling(SLIP);
    for (const uri of KEPT) world.files.remove(uri);
    world.files.put(URI, MORNING);
    const changes = [URI, ...KEPT].map((uri) => ({ uri, type: 2 }));
    await client.notify("workspace/didChangeWatchedFiles", { changes });
    const { items } = await pullAll(client);
    expect(items.map(({ uri }) => uri)).toEqual([URI]);
  });
});
