/** What a clone bundles before a verb runs, and how it sees that this is needed. */

/** Bundles that are made together, and the files of them whose age counts. */
export interface CloneBundles {
  /** Names as `--only` of the bundling script takes them. */
  readonly names: readonly string[];
  /** Paths in the project. */
  readonly files: readonly string[];
}

const COMMAND_LINE = "dist/deepwake";
/** A small file that starts, and the large one beside it. */
const SERVER: readonly string[] = ["dist/server.cjs", "dist/server-program.cjs"];

/** The language server is bundled for the verb that starts it alone. */
export function cloneBundles(args: readonly string[]): CloneBundles {
  const server = args.includes("serve") ? SERVER : [];
  return { names: [COMMAND_LINE, ...server], files: ["dist/deepwake.cjs", "dist/deepwake.mjs", ...server] };
}
