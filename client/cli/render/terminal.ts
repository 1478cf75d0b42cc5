/** How wide and how colorful the output may be. */
import type { Call } from "../verb.ts";
import type { Output, World } from "../world.ts";

/** Longer lines are hard to read, however wide the window. */
const WIDEST = 100;
/** A terminal that doesn't say has this many columns. */
const USUAL = 80;
const NARROWEST = 20;

/** Columns to fill; without end where the output is no terminal, so that a line stays a line. */
export function widthOf(out: Output): number {
  if (!out.isTerminal) return Number.POSITIVE_INFINITY;
  return Math.max(NARROWEST, Math.min(out.columns ?? USUAL, WIDEST));
}

/** Colors by their use. Each leaves a text as it is where colors are off. */
export interface Paint {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly note: (text: string) => string;
}

const plain = (text: string): string => text;
const PLAIN: Paint = { strong: plain, faint: plain, error: plain, warning: plain, note: plain };

/** Colors for a run: as asked, else as the environment says, else on terminals only. */
export async function paintFor(world: World, call: Call): Promise<Paint> {
  if (!wantsColor(world, call)) return PLAIN;
  const colors = (await import("picocolors")).default.createColors(true);
  return {
    strong: colors.bold,
    faint: colors.dim,
    error: colors.red,
    warning: colors.yellow,
    note: colors.cyan,
  };
}

function wantsColor({ out, env }: World, { switches }: Call): boolean {
  if (switches.has("no-color")) return false;
  if (switches.has("color")) return true;
  if ((env.NO_COLOR ?? "") !== "") return false;
  const forced = env.FORCE_COLOR;
  if (forced !== undefined) return forced !== "0" && forced !== "false";
  return out.isTerminal && env.TERM !== "dumb";
}
