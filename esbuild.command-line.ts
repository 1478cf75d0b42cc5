/**
 * The command line: a small module that starts, everything else in the older format, which Node loads faster, and
 * beside them what few verbs need.
 */
import type { BuildOptions, Plugin } from "esbuild";
import { geodesicBeside, type LateBundle, lightBeside } from "./esbuild.late.ts";

const PROGRAM = "deepwake.cjs";

/** The starting module asks for the rest beside it, in the way of the older format. */
const programBeside: Plugin = {
  name: "program-beside",
  setup({ onResolve, onLoad }) {
    const namespace = "program-beside";
    onResolve({ filter: /\/program\.ts$/ }, () => ({ path: PROGRAM, namespace }));
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: `import { createRequire } from "node:module";
export const { start } = createRequire(import.meta.url)("./${PROGRAM}");`,
    }));
  },
};

/** The language server is a bundle of its own, loaded from beside only where it is asked for. */
const serverBeside: Plugin = {
  name: "server-beside",
  setup({ onResolve }) {
    onResolve({ filter: /\/lsp\/main-node\.ts$/ }, () => ({ path: "./server.cjs", external: true }));
  },
};

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
    options: { platform: "node", format: "cjs", target: "node20", plugins: [serverBeside] },
    late: [geodesicBeside("deepwake"), lightBeside("deepwake")],
  },
];
