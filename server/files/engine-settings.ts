/**
 * How the engine manages the server's memory. Code that was kept counts only under the settings it was compiled under,
 * and a program starts under the usual ones: both is done under those.
 */
import { setFlagsFromString } from "node:v8";

interface EngineSetting {
  readonly name: string;
  /** What the engine has when nobody says anything. */
  readonly usual: number;
  readonly ours: number;
}

const SETTINGS: readonly EngineSetting[] = [
  // Loading has grown the space for young objects to 4 MB, about what one key makes; it stays so. The first check of a
  // long file would have it grow to many times that, and it is never given back.
  { name: "semi-space-growth-factor", usual: 2, ours: 1 },
  // Collecting earlier: what checking a thousand trips leaves behind would else be kept as room to grow.
  { name: "heap-growing-percent", usual: 0, ours: 30 },
];

let isOurs = false;

/** Has the engine manage memory as suits the server, from here on. Meant for when the program is loaded. */
export function useOurSettings(): void {
  set("ours");
  isOurs = true;
}

/** Does something at once under the settings that the program started with. */
export function underUsualSettings<Result>(work: () => Result): Result {
  if (!isOurs) return work();
  set("usual");
  try {
    return work();
  } finally {
    set("ours");
  }
}

function set(which: "ours" | "usual"): void {
  for (const setting of SETTINGS) setFlagsFromString(`--${setting.name}=${setting[which]}`);
}
