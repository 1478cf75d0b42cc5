import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { peerBundles, peersFolder, workFolder } from "./places.ts";

/**
 * Installs the peers at the versions of their own lockfile and bundles their servers, when that has not been
 * done for this lockfile and these sources. The only part of the bench that needs a network, and only once.
 */
export async function installPeers(): Promise<void> {
  mkdirSync(workFolder, { recursive: true });
  const stamp = join(workFolder, "peers-stamp");
  const sources = ["package-lock.json", "langium/journal.langium", "langium/server.ts"];
  const hash = createHash("sha256");
  for (const source of sources) hash.update(readFileSync(join(peersFolder, source)));
  const wanted = hash.digest("hex");
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) return;
  console.error("Installing the peers (once)…");
  runNpm(["ci", "--ignore-scripts", "--no-audit", "--no-fund"]);
  generateWorkbenchParser();
  await bundleServer("langium/server.ts", peerBundles.workbench);
  await bundleServer("node_modules/yaml-language-server/out/server/src/server.js", peerBundles.yaml);
  writeFileSync(stamp, wanted);
}

/** Loads one of the peers' libraries. The caller states the part of its shape that it uses. */
export async function loadPeer<Shape>(name: string): Promise<Shape> {
  const file = createRequire(join(peersFolder, "package.json")).resolve(name);
  return (await import(pathToFileURL(file).href)) as Shape;
}

/** The installed version of a peer, or of one of this project's own packages. */
export function versionOf(name: string, folder: string): string {
  const manifest = JSON.parse(readFileSync(join(folder, "node_modules", name, "package.json"), "utf8"));
  return String(manifest.version);
}

function generateWorkbenchParser(): void {
  const generator = join(peersFolder, "node_modules/langium-cli/bin/langium.js");
  execFileSync(process.execPath, [generator, "generate"], {
    cwd: join(peersFolder, "langium"),
    stdio: ["ignore", "ignore", "inherit"],
  });
}

async function bundleServer(entry: string, outfile: string): Promise<void> {
  await build({
    absWorkingDir: peersFolder,
    entryPoints: [entry],
    outfile,
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    mainFields: ["module", "main"],
    logLevel: "error",
  });
}

/** Runs the npm that runs this bench, or the one on the path. */
function runNpm(args: readonly string[]): void {
  const script = process.env.npm_execpath;
  const [command, first] = script?.endsWith(".js") ? [process.execPath, [script]] : ["npm", []];
  execFileSync(command, [...first, ...args], {
    cwd: peersFolder,
    stdio: ["ignore", "ignore", "inherit"],
    shell: command === "npm" && process.platform === "win32",
  });
}
