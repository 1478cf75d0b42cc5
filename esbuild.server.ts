/**
 * The language server as two files: a small one that starts, and everything else beside it, so that Node keeps what it
 * compiled of the large one.
 */
import type { BuildOptions, Plugin } from "esbuild";
import { geodesicBeside, grammarBeside, type LateBundle, lightBeside } from "./esbuild.late.ts";
import { leanLibraries } from "./esbuild.lean.ts";

const PROGRAM = "server-program.cjs";

/** The starting module asks for the rest beside it, with the code that was kept. */
const programBeside: Plugin = {
  name: "program-beside",
  setup({ onLoad, onResolve }) {
    const namespace = "program-beside";
    onResolve({ filter: /\/serve-node\.ts$/ }, () => ({ path: PROGRAM, namespace }));
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: `import { loadKept } from "./server/files/kept-code.ts";
export const { serve } = loadKept(__dirname, "${PROGRAM}", "serve");`,
      resolveDir: import.meta.dirname,
    }));
  },
};

const forNode: BuildOptions = { platform: "node", format: "cjs", target: "node20" };

/** What the readings say of the water. */
const water: LateBundle = {
  outfile: "dist/server-water.cjs",
  modules: [
    "server/analysis/current-layer.ts",
    "server/analysis/summary.ts",
    "server/analysis/water-day.ts",
    "server/checks/water-rules.ts",
    "server/reports/light-sentences.ts",
    "server/reports/water-reading-sentences.ts",
    "server/reports/water-sentences.ts",
    "server/reports/water-summary-sentences.ts",
  ],
};

/** What is asked for when somebody works on a text, not when it is opened, pointed at or checked. */
const editing: LateBundle = {
  outfile: "dist/server-editing.cjs",
  modules: [
    ...["code-actions", "completion", "completion-docs", "definition", "file-renames", "formatting"],
    ...[
      "highlights",
      "let-out-command",
      "on-type-formatting",
      "references",
      "rename",
      "selection-ranges",
      "set-for-depth",
    ],
    ...["signature-help", "workspace-symbols"],
  ].map((name) => `server/service/${name}.ts`),
};

/** The entries, outputs and options of both, and what the larger fetches late. */
export const SERVER: readonly {
  entry: string;
  outfile: string;
  options: BuildOptions;
  late?: readonly LateBundle[];
}[] = [
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
    late: [water, editing, ...[grammarBeside, geodesicBeside, lightBeside].map((beside) => beside("server"))],
  },
];
