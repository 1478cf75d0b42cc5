import { UNKNOWN_BALL } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { doubtfulUses } from "./name-uses.ts";
import { type NamedGear, reportUnknownNames } from "./unknown-names.ts";

/** A ball's weight is often in its name; where it isn't, twelve pounds are written for the captain to correct. */
const BALL: NamedGear = {
  row: UNKNOWN_BALL,
  verb: "ball",
  held: (gear) => gear.balls,
  stub: ({ name }, written) => {
    const weight = /(\d+)(?!.*\d)/u.exec(name)?.[1] ?? "12";
    return { text: `ball ${written} ${weight} lb`, isSure: false };
  },
};

/** Written to take a ball off. */
const NOTHING = "none";

/** Flags a ball that no book defines. */
export const unknownBall: Rule = (context) => {
  const uses = doubtfulUses(context.analysis, "ball").filter((use) => use.name !== NOTHING);
  reportUnknownNames(context, BALL, uses);
};
