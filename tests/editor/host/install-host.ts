/**
 * Installs the browser-hosted editor once and keeps it.
 *
 * The nested package beside this file pins the editor's server build and the library that drives the browser.
 * Both are installed into `tests/editor/.host/`, which git ignores and which a stamp (the hash of the lockfile)
 * keeps: later rounds reuse it, and a changed lockfile installs anew.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { delimiter, dirname, join, resolve } from "node:path";

/** Where the installed host's parts are. */
export interface EditorHost {
  /** The folder that holds `node_modules`. */
  readonly folder: string;
  /** The editor server's start file. */
  readonly serverMain: string;
}

const packageFolder = import.meta.dirname;
const hostFolder = resolve(packageFolder, "..", ".host");
const editorFolder = join(hostFolder, "node_modules", "code-server", "lib", "vscode");
const stampFile = join(hostFolder, "installed.stamp");

/** Answers the installed host, installing it first when it is missing or when the lockfile has changed. */
export function installHost(log: (line: string) => void): EditorHost {
  const stamp = wantedStamp();
  if (!isInstalled(stamp)) {
    const started = performance.now();
    log("editor host: installing (once; kept in tests/editor/.host) ...");
    rmSync(hostFolder, { recursive: true, force: true });
    mkdirSync(hostFolder, { recursive: true });
    for (const name of ["package.json", "package-lock.json"]) {
      copyFileSync(join(packageFolder, name), join(hostFolder, name));
    }
    npmCleanInstall(hostFolder, []);
    // The inner package ships its own shrinkwrap; with peer dependencies counted in, npm finds that file incomplete.
    npmCleanInstall(editorFolder, ["--omit=dev", "--legacy-peer-deps"]);
    writeFileSync(stampFile, stamp);
    log(`editor host: installed in ${Math.round((performance.now() - started) / 1000)} s`);
  }
  return { folder: hostFolder, serverMain: join(editorFolder, "out", "server-main.js") };
}

function isInstalled(stamp: string): boolean {
  return existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp;
}

/** The stamp names the lockfile's content and the Node line, for which a few native parts are chosen. */
function wantedStamp(): string {
  const lockfile = readFileSync(join(packageFolder, "package-lock.json"));
  const digest = createHash("sha256").update(lockfile).digest("hex");
  return `${digest} node-${process.versions.modules} ${process.platform}-${process.arch}`;
}

/** Runs `npm ci` without install scripts: nothing has to be compiled, and nothing is downloaded beside packages. */
function npmCleanInstall(folder: string, extra: readonly string[]): void {
  const result = spawnSync(
    "npm",
    ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error", ...extra],
    {
      cwd: folder,
      env: { ...process.env, PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH ?? ""}` },
      stdio: ["ignore", "ignore", "pipe"],
      encoding: "utf8",
      shell: process.platform === "win32",
    },
  );
  if (result.status !== 0) {
    const reason = result.error?.message ?? result.stderr.trim();
    throw new Error(`The editor host could not be installed (npm ci in ${folder}):\n${reason}`);
  }
}

if (import.meta.main) {
  installHost(console.log);
}
