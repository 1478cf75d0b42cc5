import { UNKNOWN_LURE } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { knownGear } from "./known-gear.ts";
import { doubtfulUses, type NameUse } from "./name-uses.ts";
import { type NamedGear, reportUnknownNames } from "./unknown-names.ts";

const LURE: NamedGear = {
  row: UNKNOWN_LURE,
  verb: "lure",
  held: (gear) => gear.lures,
  stub: ({ word }, name) => ({
    text: word === "flasher" ? `lure ${name} flasher` : `lure ${name}`,
    isSure: true,
  }),
};

/** Written to take a flasher or slider off. */
const NOTHING = "none";

/** Points out lures that no book defines; keeps quiet on a boat whose books list none at all. */
export const unknownLure: Rule = (context) => {
  const listsLures = (use: NameUse): boolean =>
    !knownGear(context.analysis, use.owner?.boat).names("lure").next().done;
  const uses = doubtfulUses(context.analysis, "lure").filter(
    (use) => use.name !== NOTHING && listsLures(use),
  );
  reportUnknownNames(context, LURE, uses);
};
