/** Client and server joined as in a browser: the server's bundle in a thread of its own, its files with the client. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { MessageChannel, Worker } from "node:worker_threads";
import { PortMessageReader, PortMessageWriter } from "vscode-languageserver-protocol/node";
import { TestClient } from "../test-client.ts";

const ROOT = join(import.meta.dirname, "..", "..", "..");
const BUNDLE = join(ROOT, "dist", "server-worker.js");

/** Bundles the server for browsers as it is shipped. */
export function bundleWorker(): void {
  const bundling = ["esbuild.config.ts", "--only", "dist/server-worker"];
  const { status, stderr } = spawnSync(process.execPath, bundling, { cwd: ROOT, encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
}

/** A client, and the end of its server. */
export interface JoinedWorker {
  readonly client: TestClient;
  end(): Promise<unknown>;
}

/** Starts a bundle in a thread; its client has these files, by address. */
export function joinWorker(files: ReadonlyMap<string, string>, bundle = BUNDLE): JoinedWorker {
  const { port1, port2 } = new MessageChannel();
  const thread = new Worker(new URL("./worker-scope.ts", import.meta.url), {
    workerData: { bundle, port: port2 },
    transferList: [port2],
  });
  const client = new TestClient(new PortMessageReader(port1), new PortMessageWriter(port1));
  const { connection } = client;
  connection.onRequest("deepwake/listFolder", ({ uri }: { uri: string }) => listFolder(files, uri));
  connection.onRequest("deepwake/readFile", ({ uri }: { uri: string }) => files.get(uri) ?? null);
  return {
    client,
    end: () => {
      connection.dispose();
      return thread.terminate();
    },
  };
}

/** What is in a folder; null where there is none. */
function listFolder(files: ReadonlyMap<string, string>, folder: string): object[] | null {
  const inside = [...files.keys()].filter((uri) => uri.startsWith(`${folder}/`));
  const names = new Set(inside.map((uri) => uri.slice(folder.length + 1).split("/")[0] ?? ""));
  const entries = [...names].map((name) => {
    const uri = `${folder}/${name}`;
    return { name, uri, isFile: files.has(uri) };
  });
  return entries.length === 0 ? null : entries;
}
