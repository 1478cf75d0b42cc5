/** The bundled server in a process of its own, over every transport an editor uses, on every Node at hand. */
import { type ChildProcess, type ChildProcessByStdio, fork, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Readable, Writable } from "node:stream";
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
/** Everything of it but its start. */
const SERVER_PROGRAM = join(ROOT, "dist", "server-program.cjs");
const PROGRAM = join(ROOT, "dist", "deepwake.mjs");
/** The goal of 450 KB held for the main job alone; every rig, calibration and the water cost more (docs/performance.md). */
const MOST_BYTES = 580 * 1024;

/** This Node, and the one that started npm where it is another. */
const STARTED_NPM = process.env.npm_node_execpath ?? process.execPath;
const NODES = [
  { name: "this Node", node: process.execPath },
  ...(STARTED_NPM === process.execPath ? [] : [{ name: "the Node that started npm", node: STARTED_NPM }]),
];

let folder = "";

beforeAll(() => {
  for (const name of ["dist/server", "dist/deepwake"]) {
    const bundling = ["esbuild.config.ts", "--only", name];
    const { status, stderr } = spawnSync(process.execPath, bundling, { cwd: ROOT, encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
  }
  folder = mkdtempSync(join(tmpdir(), "deepwake-lsp-"));
  mkdirSync(join(folder, "trips"));
  writeFileSync(join(folder, "trips", "next.trip"), MORNING.replace("2031-06-21", "2031-06-22"));
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

  // A trip that nobody opened is known too.
  const found = await client.request<object[]>("workspace/symbol", { query: "2031-06-22" });
  expect(found).toHaveLength(1);

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

/** A client joined to a server by its standard streams. */
function clientOf({ stdout, stdin }: ChildProcessByStdio<Writable, Readable, null>): TestClient {
  return new TestClient(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
}

describe.each(NODES)("on $name", ({ node }) => {
  test.each([
    ["the server itself", [SERVER, "--stdio"]],
    ["deepwake serve --stdio", [PROGRAM, "serve", "--stdio"]],
    ["deepwake serve", [PROGRAM, "serve"]],
  ])("over its standard streams: %s", async (_, words) => {
    const server = spawn(node, words, { stdio: ["pipe", "pipe", "inherit"] });
    await spendDay(clientOf(server), server);
  });

  test("over a connection to a port, as deepwake serve --socket", async () => {
    const listener = createServer().listen(0, "127.0.0.1");
    await once(listener, "listening");
    const { port } = listener.address() as AddressInfo;
    const joined = once(listener, "connection");
    const server = spawn(node, [PROGRAM, "serve", "--socket", String(port)], { stdio: "inherit" });
    const [socket]: Socket[] = await joined;
    if (socket === undefined) throw new Error("no connection");
    await spendDay(new TestClient(new StreamMessageReader(socket), new StreamMessageWriter(socket)), server);
    listener.close();
  });

  test("a client that goes without a word takes the server along", async () => {
    const server = spawn(node, [PROGRAM, "serve"], { stdio: ["pipe", "pipe", "inherit"] });
    const client = clientOf(server);
    await client.initialize();
    const ended = once(server, "exit");
    server.stdin.end();
    expect(await ended).toEqual([1, null]);
  });

  test("over the channel between Node processes", async () => {
    const server = fork(SERVER, ["--node-ipc"], { execPath: node, execArgv: [] });
    await spendDay(new TestClient(new IPCMessageReader(server), new IPCMessageWriter(server)), server);
  });
});

test.each(NODES)("what a start compiled is of use to the next one, on $name", async ({ node }) => {
  const kept = mkdtempSync(join(tmpdir(), "deepwake-code-"));
  const env = { ...process.env, TMPDIR: kept, TEMP: kept, TMP: kept };
  const start = async (): Promise<Map<string, number>> => {
    const server = spawn(node, [SERVER, "--stdio"], { stdio: ["pipe", "pipe", "inherit"], env });
    await spendDay(clientOf(server), server);
    const files = readdirSync(kept, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
    return new Map(files.map(({ name, parentPath }) => [name, statSync(join(parentPath, name)).mtimeMs]));
  };
  const first = await start();
  // Code that the engine takes is left as it is; what it refuses is made anew.
  expect(await start()).toEqual(first);
  expect(first.size).toBeGreaterThan(1);
  rmSync(kept, { recursive: true });
});

describe("where the workspace isn't trusted", () => {
  const FENCED = ["--permission", `--allow-fs-read=*`];

  test("it works as ever in a process that may read and nothing else: it runs nothing and writes nothing", async () => {
    const server = spawn(process.execPath, [...FENCED, SERVER, "--stdio"], {
      stdio: ["pipe", "pipe", "inherit"],
    });
    const client = clientOf(server);
    await spendDay(client, server);
    expect(client.logged).toEqual([]);
  });

  test("and that process could not have written or run anything", () => {
    const tries = ["require('fs').writeFileSync('x','x')", "require('child_process').execSync('true')"];
    for (const code of tries) {
      const { status, stderr } = spawnSync(process.execPath, [...FENCED, "-e", code], { encoding: "utf8" });
      expect(status).not.toBe(0);
      expect(stderr).toContain("ERR_ACCESS_DENIED");
    }
  });

  test("the extension says so, and no setting of the workspace could change it", () => {
    const { capabilities, contributes } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect(capabilities.untrustedWorkspaces.supported).toBe(true);
    const settings: string[] = Object.keys(contributes.configuration.properties);
    expect(settings.filter((name) => /path|command|executable|args/iu.test(name))).toEqual([]);
  });
});

test("a server that is killed leaves nothing behind that the next would need", async () => {
  const uri = pathToFileURL(join(folder, "trips", "day.trip")).href;
  const slip = `${MORNING}06:15 move P1 out 72,5 ft\n`;
  const first = spawn(process.execPath, [PROGRAM, "serve"], { stdio: ["pipe", "pipe", "inherit"] });
  const client = clientOf(first);
  await client.initialize();
  await client.open(uri, MORNING);
  await client.published(uri);
  await client.change(uri, 2, [{ text: slip }]);
  const before = await client.published(uri, ({ version }) => version === 2);
  const ended = once(first, "exit");
  first.kill("SIGKILL");
  await ended;
  // What an editor does then: it starts another and opens its documents as they are in it.
  const second = spawn(process.execPath, [PROGRAM, "serve"], { stdio: ["pipe", "pipe", "inherit"] });
  const again = clientOf(second);
  await again.initialize();
  await again.open(uri, slip, 2);
  expect(await again.published(uri)).toEqual(before);
  expect(before.diagnostics).toHaveLength(1);
  await again.end();
});

test("the bundle is no heavier than it may be", () => {
  expect(statSync(SERVER_PROGRAM).size).toBeLessThanOrEqual(MOST_BYTES);
});
