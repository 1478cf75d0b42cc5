import { benchIndex } from "./bench-index.ts";
import { benchLsp } from "./bench-lsp.ts";
import { benchParse } from "./bench-parse.ts";
import { benchSize } from "./bench-size.ts";
import { benchSolver } from "./bench-solver.ts";
import { benchStartup } from "./bench-startup.ts";
import type { Area, Effort } from "./figures.ts";

/** Every area of the bench, in the order of the report. */
export const areas = {
  lsp: benchLsp,
  index: benchIndex,
  startup: benchStartup,
  parse: benchParse,
  solver: benchSolver,
  size: benchSize,
} as const satisfies Record<string, (effort: Effort) => Promise<Area>>;

/** The name of an area, as the command line takes it. */
export type AreaName = keyof typeof areas;

/** Whether a word names an area. */
export function isAreaName(word: string): word is AreaName {
  return Object.hasOwn(areas, word);
}
