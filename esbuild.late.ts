/**
 * Puts modules that are not needed at once into bundles of their own, each read from the disk when the first of its
 * modules is asked for. The sources know nothing of it. Where such a module is imported, it is replaced by functions of
 * the same names that fetch it, so it may export functions, types, texts and numbers only; where it is imported with `import()`, the
 * whole bundle is asked for, and it may export anything.
 */
import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { BuildOptions, Plugin } from "esbuild";

/** A bundle read late: where it goes, beside the main one, and the modules in it. */
export interface LateBundle {
  readonly outfile: string;
  readonly modules: readonly string[];
}

/** Lines that are not plain need the parser's library; few journals have one. */
export const grammarBeside = (program: string): LateBundle => ({
  outfile: `dist/${program}-grammar.cjs`,
  modules: ["grammar/parser.ts"],
});

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

/** The plugin for a bundle that fetches others: what it needs of them is asked for when it is needed. */
export function fetchLate(bundles: readonly LateBundle[], root: string): Plugin {
  const requests = new Map(
    bundles.flatMap(({ outfile, modules }) =>
      modules.map((module): [string, string] => [join(root, module), `./${basename(outfile)}`]),
    ),
  );
  const known = new Set(requests.values());
  return {
    name: "fetch-late",
    setup({ onLoad, onResolve }) {
      onResolve({ filter: /^\.\/[\w-]+\.cjs$/ }, ({ path }) =>
        known.has(path) ? { path, external: true } : undefined,
      );
      onResolve({ filter: /\.ts$/ }, ({ kind, path, resolveDir }) => {
        const request = kind === "dynamic-import" ? requests.get(join(resolveDir, path)) : undefined;
        return request === undefined ? undefined : { path: request, external: true };
      });
      onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const request = requests.get(path);
        return request === undefined ? undefined : { contents: standIn(path, request), loader: "js" };
      });
    },
  };
}

/** What the late bundle is made from: every late module's exports. */
export function lateEntry({ modules }: LateBundle, root: string): BuildOptions {
  const contents = modules.map((module) => `export * from "./${module}";`).join("\n");
  return { stdin: { contents, resolveDir: root, loader: "ts" } };
}

/** `export const NAME = "a text";` or a number: it stays where it is used, and costs nothing. */
const LITERAL = /^export const \w+ = (?:"[^"\\]*(?:\\.[^"\\]*)*"|[\d_.]+);$/gmu;

/** Functions of the same names, and plain texts and numbers themselves. Throws for any other export. */
function standIn(path: string, request: string): string {
  const source = readFileSync(path, "utf8");
  const literals = source.match(LITERAL) ?? [];
  const other = /^export (?:default|const|let|class|enum|\*|\{).*/mu.exec(source.replaceAll(LITERAL, ""));
  if (other !== null) throw new Error(`${path} can't be loaded late: ${other[0]}`);
  const names = [...source.matchAll(/^export function (\w+)/gmu)].map(([, name = ""]) => name);
  const functions = names.map((name) => `export function ${name}(...all) { return late().${name}(...all); }`);
  return [`let known; const late = () => (known ??= require("${request}"));`, ...literals, ...functions].join(
    "\n",
  );
}
