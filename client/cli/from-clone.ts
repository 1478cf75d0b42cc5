/**
 * `npm run --silent deepwake -- …`: the built command line, bundled first when a source is newer. Says nothing of its
 * own unless bundling fails.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { cloneBundles } from "./clone-bundles.ts";

const PROJECT = join(import.meta.dirname, "..", "..");
const { names: BUNDLES, files } = cloneBundles(process.argv);
const BUILT = files.map((path) => join(PROJECT, path));
const SOURCES = [
  ...["grammar", "server", "client/cli", "package-lock.json"],
  ...["package.json", "esbuild.config.ts", "esbuild.command-line.ts", "esbuild.late.ts", "esbuild.shared.ts"],
];

/** When a file was last written, or the newest file in a folder; 0 where there is none. */
function newest(path: string): number {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function bundle(): boolean {
  return BUNDLES.every((name) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ["esbuild.config.ts", "--only", name], {
      cwd: PROJECT,
      encoding: "utf8",
    });
    if (status !== 0) console.error(`deepwake: it can't be bundled from its sources.\n${stdout}${stderr}`);
    return status === 0;
  });
}

const built = Math.min(...BUILT.map(newest));
const isStale = SOURCES.some((path) => newest(join(PROJECT, path)) > built);
if (!isStale || bundle()) await import(pathToFileURL(BUILT[1] ?? "").href);
else process.exitCode = 2;
