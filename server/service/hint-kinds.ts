/** What may be shown beside a line, one row a kind; each is a setting of its own, `deepwake.hints.NAME`. */

/** Every kind of hint, in the order it is shown in. The settings in package.json and docs/settings.md are made of it. */
export const HINT_KINDS = [
  {
    name: "depth",
    doc: "Show the true depth after each line that is set, moved or put back out.",
  },
  {
    name: "temperature",
    doc: "Show the temperature of the water at the lure beside it.",
  },
] as const;

export type HintName = (typeof HINT_KINDS)[number]["name"];

/** Which kinds are shown. */
export type HintParts = Readonly<Record<HintName, boolean>>;

/** Everything. */
export const ALL_HINTS: HintParts = { depth: true, temperature: true };
