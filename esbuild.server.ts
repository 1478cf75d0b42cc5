/**
 * The language server as two files: a small one that starts, and everything else beside it, so that Node keeps what it
 * compiled of the large one.
 */
import type { BuildOptions, Plugin } from "esbuild";
import { leanLibraries } from "./esbuild.lean.ts";

const PROGRAM = "server-program.cjs";

/** The starting module asks for the rest beside it. */
const programBeside: Plugin = {
  name: "program-beside",
  setup({ onResolve }) {
    onResolve({ filter: /\/serve-node\.ts$/ }, () => ({ path: `./${PROGRAM}`, external: true }));
  },
};

const forNode: BuildOptions = { platform: "node", format: "cjs", target: "node20" };

/** The entries, outputs and options of both. */
export const SERVER: readonly { entry: string; outfile: string; options: BuildOptions }[] = [
  {
    entry: "server/lsp/main-node.ts",
    outfile: "dist/server.cjs",
    // What is imported late is asked for at once: a plain require keeps to the older format.
    options: { ...forNode, plugins: [programBeside], supported: { "dynamic-import": false } },
  },
  {
    entry: "server/lsp/serve-node.ts",
    outfile: `dist/${PROGRAM}`,
    options: { ...forNode, plugins: [leanLibraries({ isServer: true })] },
  },
];
