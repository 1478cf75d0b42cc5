/** Starts the editor's server on a free local port. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { copyFileSync, existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { EditorHost } from "./install-host.ts";

/** A running editor server. */
export interface EditorServer {
  readonly port: number;
  /** Ends the server and the extension host it started, and waits until it has gone. */
  stop(): Promise<void>;
}

/** What the server is started with. */
export interface ServerOptions {
  /** The profile folder, laid out as a desktop editor's: settings are in `User/settings.json`. */
  readonly profileFolder: string;
  readonly extensionsFolder: string;
  /** Whether every folder counts as trusted; `false` shows the extension to a captain who hasn't decided yet. */
  readonly trustEverything: boolean;
  /** What the extension host finds in its environment beside this process's own. */
  readonly environment?: Readonly<Record<string, string>>;
}

const startBoundMs = 60_000;

/** Starts the server and answers once it listens; fails with its output when it doesn't within a minute. */
export async function startServer(host: EditorHost, options: ServerOptions): Promise<EditorServer> {
  copySettings(options.profileFolder);
  const server = spawn(process.execPath, [host.serverMain, ...serverArguments(options)], {
    stdio: ["ignore", "pipe", "pipe"],
    // A process group of its own, so that everything it starts can be ended with it.
    detached: true,
    env: { ...process.env, ...options.environment },
  });
  process.on("exit", () => signalGroup(server, "SIGKILL"));
  const port = await listeningPort(server);
  return { port, stop: () => stopProcess(server) };
}

function serverArguments(options: ServerOptions): string[] {
  return [
    ...["--host", "127.0.0.1", "--port", "0"],
    ...["--without-connection-token", "--accept-server-license-terms"],
    ...["--server-data-dir", options.profileFolder, "--extensions-dir", options.extensionsFolder],
    ...(options.trustEverything ? ["--disable-workspace-trust"] : []),
    // Without the last flag a built workbench ignores the extension under development and its tests.
    ...["--disable-telemetry", "--enable-smoke-test-driver"],
  ];
}

/** The server reads a user's settings one folder deeper than a desktop editor does. */
function copySettings(profileFolder: string): void {
  const settings = join(profileFolder, "User", "settings.json");
  const target = join(profileFolder, "data", "User");
  mkdirSync(target, { recursive: true });
  if (existsSync(settings)) {
    copyFileSync(settings, join(target, "settings.json"));
  }
}

function listeningPort(server: ChildProcess): Promise<number> {
  return new Promise((resolve, reject) => {
    const output: string[] = [];
    const fail = (reason: string): void => {
      clearTimeout(bound);
      signalGroup(server, "SIGKILL");
      reject(new Error(`The editor server ${reason}:\n${output.join("\n")}`));
    };
    const bound = setTimeout(() => fail("did not listen within a minute"), startBoundMs);
    server.on("error", (error) => fail(`could not be started (${error.message})`));
    server.on("exit", (code) => fail(`ended with exit code ${code}`));
    for (const stream of [server.stdout, server.stderr]) {
      if (stream === null) continue;
      createInterface({ input: stream }).on("line", (line) => {
        output.push(line);
        const port = /Web UI available at http:\/\/localhost:(\d+)/.exec(line)?.[1];
        if (port === undefined) return;
        clearTimeout(bound);
        server.removeAllListeners("exit");
        resolve(Number(port));
      });
    }
  });
}

/** Ends the server with its whole process group: an extension host left alone would wait for a page to come back. */
async function stopProcess(server: ChildProcess): Promise<void> {
  if (server.exitCode === null && server.signalCode === null) {
    const gone = once(server, "exit");
    signalGroup(server, "SIGTERM");
    const force = setTimeout(() => signalGroup(server, "SIGKILL"), 5_000);
    await gone;
    clearTimeout(force);
  }
  signalGroup(server, "SIGKILL");
}

function signalGroup(server: ChildProcess, signal: NodeJS.Signals): void {
  if (server.pid === undefined) return;
  try {
    process.kill(-server.pid, signal);
  } catch {
    // The whole group has gone already.
  }
}
