/**
 * Packs the extension into one file that an editor can install: dist/deepwake-<version>.vsix. It needs no network.
 * The list of what goes in is in .vscodeignore; the exit code is 1 when the file is larger than it may be.
 *
 *     node client/vscode/package-extension.ts             bundle, then pack
 *     node client/vscode/package-extension.ts --bundled   pack what was bundled just before
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { createVSIX } from "@vscode/vsce";

/** The largest size of the packed extension, in bytes. */
const sizeGoal = 1024 * 1024;

const projectFolder = resolve(import.meta.dirname, "..", "..");

/** Bundles and packs, prints how large it is, and answers whether the size goal is met. */
async function packageExtension(): Promise<boolean> {
  if (!process.argv.includes("--bundled")) bundle();
  const { name, version } = JSON.parse(readFileSync(join(projectFolder, "package.json"), "utf8"));
  const packed = join(projectFolder, "dist", `${name}-${version}.vsix`);
  mkdirSync(join(projectFolder, "dist"), { recursive: true });
  await withoutChatter(() =>
    createVSIX({
      cwd: projectFolder,
      packagePath: packed,
      // Everything is bundled, so that no package folder travels along.
      dependencies: false,
      allowMissingRepository: true,
      rewriteRelativeLinks: false,
    }),
  );
  const { size } = statSync(packed);
  console.log(`dist/${name}-${version}.vsix: ${Math.round(size / 1024)} KB of at most ${sizeGoal / 1024} KB`);
  return size <= sizeGoal;
}

function bundle(): void {
  const script = join(projectFolder, "esbuild.config.ts");
  const { status } = spawnSync(process.execPath, [script], { stdio: "inherit" });
  if (status !== 0) throw new Error("Bundling failed.");
}

/** The packer lists every file on the console; its warnings and errors still come through. */
async function withoutChatter(pack: () => Promise<void>): Promise<void> {
  const { log } = console;
  console.log = () => {};
  try {
    await pack();
  } finally {
    console.log = log;
  }
}

try {
  process.exitCode = (await packageExtension()) ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
