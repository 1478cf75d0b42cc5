/**
 * Late bundles use what the main bundle has anyway instead of bringing it a second time: the main bundle exports it as
 * a list, `shared`, and the late ones take it from there.
 */
import { readFileSync } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { type BuildOptions, build, type Metafile, type Plugin } from "esbuild";
import type { LateBundle } from "./esbuild.late.ts";

/** Names by the file that exports them, in the order of the list. */
export type Shared = ReadonlyMap<string, ReadonlySet<string>>;

/** A bundle in the making: which files are in it, and what each imports from where. */
type Graph = Metafile["inputs"];

/** What the late bundles can take from the main one. */
export async function findShared(
  main: BuildOptions,
  late: readonly { bundle: LateBundle; options: BuildOptions }[],
  root: string,
): Promise<Shared> {
  const dry = { absWorkingDir: root, bundle: true, metafile: true, write: false, outfile: "x.cjs" } as const;
  const { metafile } = await build({ ...main, ...dry });
  const inMain = new Set(
    Object.values(metafile.outputs).flatMap(({ inputs }) =>
      Object.entries(inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
    ),
  );
  const shared = new Map<string, Set<string>>();
  for (const { bundle, options } of late) {
    const { metafile: own } = await build({ ...options, ...dry });
    for (const path of ownFiles(bundle, own.inputs, inMain)) takenBy(path, own.inputs, inMain, root, shared);
  }
  return shared;
}

/** The files of a late bundle that the main one doesn't have. */
function ownFiles({ modules }: LateBundle, graph: Graph, inMain: ReadonlySet<string>): Set<string> {
  const own = new Set(modules);
  for (const path of own) {
    for (const target of graph[path]?.imports ?? []) {
      if (!target.external && !canTake(path, target.original, target.path, inMain)) own.add(target.path);
    }
  }
  return own;
}

/** Only from sources of ours, which say by name what they take. */
function canTake(
  importer: string,
  request: string | undefined,
  path: string,
  inMain: ReadonlySet<string>,
): boolean {
  if (!inMain.has(path) || importer.includes("node_modules") || request === undefined) return false;
  return namesTaken(importer, request) !== undefined;
}

function takenBy(
  importer: string,
  graph: Graph,
  inMain: ReadonlySet<string>,
  root: string,
  shared: Map<string, Set<string>>,
): void {
  for (const { original, path } of graph[importer]?.imports ?? []) {
    if (!canTake(importer, original, path, inMain)) continue;
    const file = resolve(root, path);
    const names = shared.get(file) ?? new Set();
    shared.set(file, names);
    for (const name of namesTaken(join(root, importer), original ?? "") ?? []) names.add(name);
  }
}

/** The names that a source imports from there; undefined where it imports all, or passes something on. */
function namesTaken(importer: string, request: string): string[] | undefined {
  const source = readFileSync(importer, "utf8");
  const statements = [...source.matchAll(/^(import|export)\s+([^"';]*?)\s+from\s+"([^"]+)"/gmu)].filter(
    ([, , , from]) => from === request,
  );
  const names: string[] = [];
  for (const [, keyword, clause = ""] of statements) {
    if (clause.startsWith("type ")) continue;
    const list = /^\{([\s\S]*)\}$/u.exec(clause)?.[1];
    if (keyword === "export" || list === undefined) return undefined;
    const taken = list.split(",").map((name) => name.trim());
    names.push(
      ...taken.flatMap((name) => (name === "" || name.startsWith("type ") ? [] : [name.split(" ")[0] ?? ""])),
    );
  }
  return names;
}

/** The entry of the main bundle: its own exports and the list. */
export function mainEntry(entry: string, shared: Shared, root: string): BuildOptions {
  const files = [...shared.entries()];
  const imports = files.map(([path, names], file) => {
    const list = [...names].map((name) => `${name} as ${nameOf(file, name)}`);
    return `import { ${list.join(", ")} } from ${requestFor(path, root)};`;
  });
  const list = files.flatMap(([, names], file) => [...names].map((name) => nameOf(file, name)));
  const contents = [`export * from "./${entry}";`, ...imports, `export const shared = [${list.join(", ")}];`];
  return { stdin: { contents: contents.join("\n"), resolveDir: root, loader: "ts" } };
}

function nameOf(file: number, name: string): string {
  return `${name}_${file}`;
}

function requestFor(path: string, root: string): string {
  return JSON.stringify(`./${relative(root, path).replaceAll("\\", "/")}`);
}

/** The plugin for a late bundle: what the main bundle, of that file, has is taken from its list. */
export function takeShared(shared: Shared, outfile: string): Plugin {
  const namespace = "shared";
  const request = `./${basename(outfile)}`;
  const firstOf = new Map<string, number>();
  let count = 0;
  for (const [path, names] of shared) {
    firstOf.set(path, count);
    count += names.size;
  }
  return {
    name: "take-shared",
    setup({ onLoad, onResolve, resolve: resolveNormally }) {
      onResolve({ filter: /\.cjs$/ }, ({ path }) =>
        path === request ? { path, external: true } : undefined,
      );
      onResolve({ filter: /./ }, async ({ path, importer, kind, pluginData, resolveDir }) => {
        const isTaken =
          pluginData !== namespace && importer.endsWith(".ts") && namesTaken(importer, path) !== undefined;
        if (!isTaken) return undefined;
        const found = await resolveNormally(path, { importer, kind, resolveDir, pluginData: namespace });
        return firstOf.has(found.path) && !found.external ? { path: found.path, namespace } : undefined;
      });
      onLoad({ filter: /./, namespace }, ({ path }) => {
        const first = firstOf.get(path) ?? 0;
        const names = [...(shared.get(path) ?? [])];
        const taken = names.map((name, at) => `export const ${name} = /* @__PURE__ */ take(${first + at});`);
        return {
          contents: [`const take = (at) => require("${request}").shared[at];`, ...taken].join("\n"),
          resolveDir: dirname(path),
        };
      });
    },
  };
}
