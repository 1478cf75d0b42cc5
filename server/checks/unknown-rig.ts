import type { ReadLine } from "../../grammar/journal.ts";
import { matchName } from "../model/match-name.ts";
import { findItem, hasWord } from "../model/quantities.ts";
import { findSpecies } from "../model/species.ts";
import { ALL_RIGS, rigWord } from "../model/trip.ts";
import { UNKNOWN_RIG } from "./catalog/language.ts";
import type { CheckContext, Rule } from "./check.ts";
import { knownGear } from "./known-gear.ts";
import { doubtfulUses, type NameUse } from "./name-uses.ts";
import { type NamedGear, reportUnknownNames } from "./unknown-names.ts";

const RIG: NamedGear = {
  row: UNKNOWN_RIG,
  verb: "rig",
  held: (gear) => gear.rigs,
  stub: ({ line }, name) => ({ text: `rig ${name} ${likelyKind(line)}`, isSure: false }),
};

/** A rig or a cable: a calibration may be of either. */
const CALIBRATED: NamedGear = {
  ...RIG,
  held: (gear) => new Map<string, unknown>([...gear.rigs, ...gear.cables]),
};

const FISH_VERBS: ReadonlySet<string> = new Set(["strike", "miss", "catch", "lost"]);

/** Flags a rig that no book defines. */
export const unknownRig: Rule = (context) => {
  const uses = doubtfulUses(context.analysis, "rig").filter((use) => !isPlainlyMeant(use));
  reportUnknownNames(
    context,
    RIG,
    uses.filter((use) => !reportMistaken(context, use)),
  );
  const ofCable = (use: NameUse): boolean =>
    knownGear(context.analysis, use.owner?.boat).has("cable", use.name);
  const calibrated = doubtfulUses(context.analysis, "calibrated").filter((use) => !ofCable(use));
  reportUnknownNames(context, CALIBRATED, calibrated);
};

function isPlainlyMeant({ name, line, word }: NameUse): boolean {
  return word === undefined && rigWord(name, line.verb) !== undefined;
}

/** `check all`, and `catch chinook` without its rig, are told apart from a rig that isn't defined. */
function reportMistaken(context: CheckContext, { name, line, place, owner, isEvent }: NameUse): boolean {
  const isSpecies = FISH_VERBS.has(line.verb) && findSpecies(owner?.gear.nicknames.get(name) ?? name);
  const mistakenFor = name.toLowerCase() === ALL_RIGS ? "all" : isSpecies ? "species" : undefined;
  if (mistakenFor === undefined || !isEvent || isRigOf(owner, name)) return false;
  const data = { name, boat: owner?.boat, near: [], from: undefined, mistakenFor, verb: line.verb } as const;
  context.report(UNKNOWN_RIG, place, data);
  return true;
}

function isRigOf(owner: NameUse["owner"], name: string): boolean {
  return owner?.gear.rigs.has(matchName(owner.gear.rigs, name)) === true;
}

/** What a rig probably is, from what is said of it. */
function likelyKind(line: ReadLine): string {
  const out = findItem(line, "out")?.value;
  const unit = out?.kind === "quantity" ? out.parts.at(-1)?.unit : undefined;
  if (unit === "colors") return "leadcore";
  if (hasWord(line, "dial")) return "diver";
  if (hasWord(line, "board")) return "flat";
  return hasWord(line, "anglers") ? "jig" : "downrigger";
}
