/**
 * Packs the extension into one file that an editor can install: dist/deepwake-<version>.vsix. It needs no network.
 * The list of what goes in is in .vscodeignore; the exit code is 1 when the file is larger than it may be.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { createVSIX } from "@vscode/vsce";

/** The largest size of the packed extension, in bytes. */
const sizeGoal = 1024 * 1024;

const projectFolder = resolve(import.meta.dirname, "..", "..");

/** Bundles and packs, prints what went in, and answers whether the size goal is met. */
async function packageExtension(): Promise<boolean> {
  const bundled = spawnSync(process.execPath, [join(projectFolder, "esbuild.config.ts")], {
    stdio: "inherit",
  });
  if (bundled.status !== 0) throw new Error("Bundling failed.");
  const { name, version } = JSON.parse(readFileSync(join(projectFolder, "package.json"), "utf8"));
  const packed = join(projectFolder, "dist", `${name}-${version}.vsix`);
  mkdirSync(join(projectFolder, "dist"), { recursive: true });
  await createVSIX({
    cwd: projectFolder,
    packagePath: packed,
    // Everything is bundled, so that no package folder travels along.
    dependencies: false,
    allowMissingRepository: true,
    // A pattern may stand for a part that isn't built on this day.
    allowUnusedFilesPattern: true,
    rewriteRelativeLinks: false,
  });
  const { size } = statSync(packed);
  console.log(`dist/${name}-${version}.vsix: ${Math.round(size / 1024)} KB of at most ${sizeGoal / 1024} KB`);
  return size <= sizeGoal;
}

try {
  process.exitCode = (await packageExtension()) ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
