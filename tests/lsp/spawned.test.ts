/** The bundled server in a process of its own, over every transport an editor uses, on every Node at hand. */
import { type ChildProcess, fork, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  IPCMessageReader,
  IPCMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver-protocol/node";
import type { Hover } from "vscode-languageserver-types";
import { BOOK, MORNING } from "../service/open-service.ts";
import { TestClient } from "./test-client.ts";

const ROOT = join(import.meta.dirname, "..", "..");
const SERVER = join(ROOT, "dist", "server.cjs");
/** The goal of 450 KB held for the main job alone; every rig, calibration and the water cost more (docs/performance.md). */
const MOST_BYTES = 600 * 1024;

/** This Node, and the one that started npm where it is another. */
const STARTED_NPM = process.env.npm_node_execpath ?? process.execPath;
const NODES = [
  { name: "this Node", node: process.execPath },
  ...(STARTED_NPM === process.execPath ? [] : [{ name: "the Node that started npm", node: STARTED_NPM }]),
];

let folder = "";

beforeAll(() => {
  const bundling = ["esbuild.config.ts", "--only", "dist/server.cjs"];
  const { status, stderr } = spawnSync(process.execPath, bundling, { cwd: ROOT, encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  folder = mkdtempSync(join(tmpdir(), "deepwake-lsp-"));
  mkdirSync(join(folder, "trips"));
  writeFileSync(join(folder, "bright-penny.gear"), BOOK.replace("\n  zone", "\n  quiet future-date\n  zone"));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A day in the editor: a trip whose book is on disk, a hover, a book that changes, and goodbye. */
async function spendDay(client: TestClient, server: ChildProcess): Promise<void> {
  const uri = pathToFileURL(join(folder, "trips", "day.trip")).href;
  await client.initialize({ folders: [{ uri: pathToFileURL(folder).href, name: "season" }] });
  await client.open(uri, MORNING);
  expect((await client.published(uri)).diagnostics).toEqual([]);
  const at = { textDocument: { uri }, position: { line: 7, character: 8 } };
  const hover = await client.request<Hover>("textDocument/hover", at);
  expect(hover.contents).toMatchObject({ value: expect.stringMatching(/^Ball about \d+ ft down/u) });

  const book = join(folder, "bright-penny.gear");
  writeFileSync(book, BOOK.replaceAll("rig P1 ", "rig P77 "));
  client.forget();
  await client.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: pathToFileURL(book).href, type: 2 }],
  });
  const changed = await client.published(uri);
  expect(changed.diagnostics.map(({ code }) => code)).toContain("unknown-rig");
  writeFileSync(book, BOOK.replace("\n  zone", "\n  quiet future-date\n  zone"));

  await client.open("untitled:Untitled-1", MORNING);
  expect((await client.published("untitled:Untitled-1")).diagnostics).toEqual([]);

  const ended = once(server, "exit");
  await client.end();
  expect(await ended).toEqual([0, null]);
}

describe.each(NODES)("on $name", ({ node }) => {
  test("over its standard streams", async () => {
    const server = spawn(node, [SERVER, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
    const client = new TestClient(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    await spendDay(client, server);
  });

  test("over the channel between Node processes", async () => {
    const server = fork(SERVER, ["--node-ipc"], { execPath: node, execArgv: [] });
    await spendDay(new TestClient(new IPCMessageReader(server), new IPCMessageWriter(server)), server);
  });
});

test("the bundle is no heavier than it may be", () => {
  expect(statSync(SERVER).size).toBeLessThanOrEqual(MOST_BYTES);
});
