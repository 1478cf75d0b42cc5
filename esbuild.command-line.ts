/**
 * The command line: a small module that starts, everything else in the older format, which Node loads faster, and
 * beside them what few verbs need.
 */
import { readFileSync } from "node:fs";
import type { BuildOptions, Plugin } from "esbuild";
import { geodesicBeside, grammarBeside, type LateBundle, lightBeside } from "./esbuild.late.ts";

const PROGRAM = "deepwake.cjs";

/** The starting module asks for the rest beside it, in the older format, and with the code that was kept for the verb. */
const programBeside: Plugin = {
  name: "program-beside",
  setup({ onResolve, onLoad }) {
    const namespace = "program-beside";
    onResolve({ filter: /\/program\.ts$/ }, () => ({ path: PROGRAM, namespace }));
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: `import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { loadKept } from "./server/files/kept-code.ts";
const verb = /^[a-z]+$/u.exec(process.argv[2] ?? "")?.[0] ?? "other";
export const { start } = loadKept(dirname(fileURLToPath(import.meta.url)), "${PROGRAM}", verb);`,
      resolveDir: import.meta.dirname,
    }));
  },
};

/** Of the package's description the program needs the version. */
const versionOnly: Plugin = {
  name: "version-only",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]package\.json$/ }, ({ path }) => {
      const { version } = JSON.parse(readFileSync(path, "utf8"));
      return { contents: JSON.stringify({ version }), loader: "json" };
    });
  },
};

/** The language server is a bundle of its own, loaded from beside only where it is asked for. */
const serverBeside: Plugin = {
  name: "server-beside",
  setup({ onResolve }) {
    onResolve({ filter: /\/lsp\/main-node\.ts$/ }, () => ({ path: "./server.cjs", external: true }));
  },
};

/** What `check` of plain journals does without, each read by the verb or option that needs it. */
const LATE: readonly LateBundle[] = [
  ...["format", "summary", "calibrate", "letout", "serve"].map((verb) => ({
    outfile: `dist/deepwake-${verb}.cjs`,
    modules: [`client/cli/verbs/${verb}.ts`],
  })),
  {
    outfile: "dist/deepwake-depth.cjs",
    modules: ["depth", "depth-of-trips", "depth-what-if"].map((name) => `client/cli/verbs/${name}.ts`),
  },
  { outfile: "dist/deepwake-cases.cjs", modules: ["client/cli/verbs/depth-of-cases.ts"] },
  {
    outfile: "dist/deepwake-check.cjs",
    modules: ["check-json", "check-sarif", "explain-check"].map((name) => `client/cli/verbs/${name}.ts`),
  },
  ...[grammarBeside, geodesicBeside, lightBeside].map((beside) => beside("deepwake")),
];

/** The entries, outputs and options of both. */
export const COMMAND_LINE: readonly {
  entry: string;
  outfile: string;
  options: BuildOptions;
  late?: readonly LateBundle[];
}[] = [
  {
    entry: "client/cli/main.ts",
    outfile: "dist/deepwake.mjs",
    options: {
      platform: "node",
      format: "esm",
      target: "node20",
      plugins: [programBeside],
      banner: { js: "#!/usr/bin/env node" },
    },
  },
  {
    entry: "client/cli/program.ts",
    outfile: `dist/${PROGRAM}`,
    options: {
      platform: "node",
      format: "cjs",
      target: "node20",
      plugins: [serverBeside, versionOnly],
      // What is imported late is a file beside: a plain require keeps to the older format.
      supported: { "dynamic-import": false },
    },
    late: LATE,
  },
];
