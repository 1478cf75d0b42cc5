/**
 * Puts modules that are not needed at once into a bundle of their own, read from the disk when the first of them is
 * called. In the main bundle each of them is replaced by functions of the same names that fetch it. The sources know
 * nothing of it: a late module may export functions and types only.
 */
import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { BuildOptions, Plugin } from "esbuild";

/** A bundle read late: where it goes, beside the main one, and the modules in it. */
export interface LateBundle {
  readonly outfile: string;
  readonly modules: readonly string[];
  /** What it fetches later still. */
  readonly late?: readonly LateBundle[];
}

/** Distances on the earth: only where a day has two positions. */
export const geodesicBeside = (program: string): LateBundle => ({
  outfile: `dist/${program}-geodesic.cjs`,
  modules: ["server/analysis/geodesic.ts"],
});

/** Sun and moon: no check needs them. */
export const lightBeside = (program: string): LateBundle => ({
  outfile: `dist/${program}-light.cjs`,
  modules: ["server/analysis/light.ts"],
});

/** The plugin for the main bundle. */
export function fetchLate({ outfile, modules }: LateBundle, root: string): Plugin {
  const request = `./${basename(outfile)}`;
  const paths = new Map(modules.map((module) => [join(root, module), module]));
  return {
    name: "fetch-late",
    setup({ onLoad, onResolve }) {
      onResolve({ filter: /^\.\/[\w-]+\.cjs$/ }, ({ path }) =>
        path === request ? { path, external: true } : undefined,
      );
      onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const module = paths.get(path);
        return module === undefined
          ? undefined
          : { contents: standIn(join(root, module), request), loader: "js" };
      });
    },
  };
}

/** What the late bundle is made from: every late module's exports. */
export function lateEntry({ modules }: LateBundle, root: string): BuildOptions {
  const contents = modules.map((module) => `export * from "./${module}";`).join("\n");
  return { stdin: { contents, resolveDir: root, loader: "ts" } };
}

/** Functions of the same names. Throws for an export that is no function. */
function standIn(path: string, request: string): string {
  const source = readFileSync(path, "utf8");
  const other = /^export (?:default|const|let|class|enum|\*|\{).*/mu.exec(source);
  if (other !== null) throw new Error(`${path} can't be loaded late: ${other[0]}`);
  const names = [...source.matchAll(/^export function (\w+)/gmu)].map(([, name = ""]) => name);
  const functions = names.map((name) => `export function ${name}(...all) { return late().${name}(...all); }`);
  return [`let known; const late = () => (known ??= require("${request}"));`, ...functions].join("\n");
}
