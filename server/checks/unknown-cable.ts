import { UNKNOWN_CABLE } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { doubtfulUses } from "./name-uses.ts";
import { type NamedGear, reportUnknownNames } from "./unknown-names.ts";

const CABLE: NamedGear = {
  row: UNKNOWN_CABLE,
  verb: "cable",
  held: (gear) => gear.cables,
  stub: (_, name) => ({ text: `cable ${name}`, isSure: true }),
};

/** Flags a cable or line that no book defines. */
export const unknownCable: Rule = (context) => {
  reportUnknownNames(context, CABLE, doubtfulUses(context.analysis, "cable"));
};
