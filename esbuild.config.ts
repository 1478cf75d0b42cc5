/**
 * Bundles everything that is shipped: the extension, the language server and the command line.
 *
 *     node esbuild.config.ts            bundle into dist/
 *     node esbuild.config.ts --only F   bundle only what is written to F or names that start so, like dist/server
 *     node esbuild.config.ts --sizes    and print what each bundle is made of
 *     node esbuild.config.ts --tests    and bundle the tests that run inside the editor
 *     node esbuild.config.ts --watch    and bundle again whenever a source file changes
 */
import { createHash } from "node:crypto";
import { mkdir, rename, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { parseArgs } from "node:util";
import { analyzeMetafile, type BuildOptions, build, context } from "esbuild";
import { COMMAND_LINE } from "./esbuild.command-line.ts";
import { fetchLate, type LateBundle, lateEntry } from "./esbuild.late.ts";
import { leanLibraries } from "./esbuild.lean.ts";
import { SERVER } from "./esbuild.server.ts";
import { findShared, mainEntry, takeShared } from "./esbuild.shared.ts";

/** One bundle: where it starts, where it goes, and what differs from the options that all share. */
interface Bundle {
  readonly entry: string;
  readonly outfile: string;
  readonly options: BuildOptions;
  /** What it fetches only when it is asked for. */
  readonly late?: readonly LateBundle[];
}

/** In a browser: the extension as a module of the editor's worker, the server as a worker of its own. */
const forBrowser: BuildOptions = { platform: "browser", target: "es2023", external: ["vscode"] };
const forWorker: BuildOptions = {
  ...forBrowser,
  plugins: [leanLibraries({ isServer: true })],
  format: "iife",
};
const forClient: BuildOptions = { plugins: [leanLibraries({ isServer: false })] };
const forEditor: BuildOptions = { platform: "node", format: "cjs", target: "node20", external: ["vscode"] };

const ROOT = import.meta.dirname;

const shipped: readonly Bundle[] = [
  {
    entry: "client/vscode/extension.ts",
    outfile: "dist/extension.cjs",
    options: { ...forEditor, ...forClient },
  },
  ...SERVER,
  {
    entry: "client/vscode/extension-web.ts",
    outfile: "dist/extension-web.cjs",
    options: { ...forBrowser, ...forClient, format: "cjs" },
  },
  { entry: "server/lsp/main-worker.ts", outfile: "dist/server-worker.js", options: forWorker },
  ...COMMAND_LINE,
];

const testBundles: readonly Bundle[] = [
  ...["index", "pose"].map((name) => ({
    entry: `tests/editor/suite/${name}.ts`,
    outfile: `dist/editor-tests/${name}.cjs`,
    options: { ...forEditor, minify: false },
  })),
  {
    entry: "tests/editor/suite/index-web.ts",
    outfile: "dist/editor-tests/index-web.cjs",
    options: { ...forBrowser, format: "cjs", minify: false },
  },
];

const { values: flags } = parseArgs({
  options: {
    only: { type: "string" },
    sizes: { type: "boolean", default: false },
    tests: { type: "boolean", default: false },
    watch: { type: "boolean", default: false },
  },
});

const bundles = [...shipped, ...(flags.tests ? testBundles : [])].filter(
  ({ outfile }) => flags.only === undefined || outfile.startsWith(flags.only),
);
await Promise.all(bundles.map(async (bundle) => Promise.all((await outputsOf(bundle)).map(bundleOne))));

/** One file to write. */
interface Output {
  readonly outfile: string;
  readonly options: BuildOptions;
  /** Stamped, so that what Node compiled of it can be kept from run to run. */
  readonly isKept?: boolean;
}

/** A bundle, and what it fetches late. Only a bundle that is shipped shares with those it fetches. */
async function outputsOf({ entry, outfile, options, late }: Bundle): Promise<Output[]> {
  if (late === undefined) return [{ outfile, options: { ...options, entryPoints: [entry] } }];
  const main = fetching({ ...options, entryPoints: [entry] }, late);
  const fetched = late.map((bundle) => {
    const others = late.filter((other) => other !== bundle);
    return { bundle, options: fetching({ ...options, ...lateEntry(bundle, ROOT) }, others) };
  });
  if (flags.watch) return [{ outfile, options: main }, ...fetched.map((one) => ({ ...one, ...one.bundle }))];
  const shared = await findShared(main, fetched, ROOT);
  const taking = takeShared(shared, outfile);
  const { entryPoints: _, ...plain } = main;
  return [
    { outfile, options: { ...plain, ...mainEntry(entry, shared, ROOT) }, isKept: true },
    ...fetched.map((one) => ({
      outfile: one.bundle.outfile,
      isKept: true,
      options: { ...one.options, plugins: [taking, ...(one.options.plugins ?? [])] },
    })),
  ];
}

function fetching(options: BuildOptions, late: readonly LateBundle[]): BuildOptions {
  return { ...options, plugins: [...(options.plugins ?? []), fetchLate(late, ROOT)] };
}

/** Bundles one file and prints the size of what came out. */
async function bundleOne({ outfile, options, isKept }: Output): Promise<void> {
  const all: BuildOptions = {
    minify: !flags.watch,
    // Text of plain letters takes half the memory when it is read.
    charset: isKept ? "ascii" : "utf8",
    ...options,
    absWorkingDir: ROOT,
    outfile,
    bundle: true,
    sourcemap: flags.watch ? "linked" : false,
    legalComments: "none",
    logLevel: "warning",
    mainFields: ["module", "main"],
  };
  if (flags.watch) {
    const watching = await context(all);
    await watching.watch();
    console.log(`${outfile}: watching`);
    return;
  }
  const { metafile, outputFiles } = await build({ ...all, metafile: true, write: false });
  for (const { path, contents } of outputFiles) await writeWhole(path, isKept ? stamped(contents) : contents);
  console.log(`${outfile}: ${sizeText(metafile.outputs[outfile]?.bytes ?? 0)}`);
  if (flags.sizes) console.log(await analyzeMetafile(metafile, { color: false }));
}

/** With the stamp that `server/files/kept-code.ts` looks for. */
function stamped(contents: Uint8Array): Uint8Array {
  const hash = createHash("sha256").update(contents).digest("hex");
  return Buffer.concat([Buffer.from(`/*${hash}*/`), contents]);
}

/** Written beside and renamed, so that a program that starts meanwhile finds the old bundle or the new one. */
async function writeWhole(path: string, contents: Uint8Array): Promise<void> {
  const isProgram = Buffer.from(contents.subarray(0, 2)).toString() === "#!";
  const beside = `${path}.${process.pid}`;
  await mkdir(dirname(path), { recursive: true });
  await writeFile(beside, contents, { mode: isProgram ? 0o755 : 0o644 });
  await rename(beside, path);
}

/** In bytes where it is less than a kilobyte. */
function sizeText(bytes: number): string {
  return bytes < 1024 ? `${bytes} bytes` : `${Math.round(bytes / 1024)} KB`;
}
