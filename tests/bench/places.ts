import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's folder. */
export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));

/** Where the bench keeps what it generates; git ignores it. */
export const workFolder = fileURLToPath(new URL(".work", import.meta.url));

/** The peers' sources, versions and installed packages. */
export const peersFolder = fileURLToPath(new URL("peers", import.meta.url));

/** What of this project the bench measures, by the file it needs. */
export const built = {
  parser: join(projectFolder, "grammar/parse.ts"),
  solver: join(projectFolder, "server/physics/towed-line.ts"),
  band: join(projectFolder, "server/physics/downrigger-band.ts"),
  server: join(projectFolder, "dist/server.cjs"),
  serverProgram: join(projectFolder, "dist/server-program.cjs"),
  serverWater: join(projectFolder, "dist/server-water.cjs"),
  serverEditing: join(projectFolder, "dist/server-editing.cjs"),
  serverGrammar: join(projectFolder, "dist/server-grammar.cjs"),
  serverGeodesic: join(projectFolder, "dist/server-geodesic.cjs"),
  serverLight: join(projectFolder, "dist/server-light.cjs"),
  commandLine: join(projectFolder, "dist/deepwake.mjs"),
  commandLineProgram: join(projectFolder, "dist/deepwake.cjs"),
} as const;

/** The peers' servers, bundled by the same bundler as ours. */
export const peerBundles = {
  yaml: join(workFolder, "yaml-server.cjs"),
  workbench: join(workFolder, "workbench-server.cjs"),
} as const;

/** A line that says why our row is empty, or nothing when the file is there. */
export function missing(file: string): string | undefined {
  if (existsSync(file)) return undefined;
  return `not built yet: ${file.slice(projectFolder.length)}`;
}
