import { looksNumeric } from "../../grammar/number-text.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { findSpecies, SPECIES, UNSEEN_FISH } from "../model/species.ts";
import { UNKNOWN_SPECIES } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { insert, renameFixes } from "./edits.ts";
import { knownGear } from "./known-gear.ts";
import { doubtfulUses, type NameUse } from "./name-uses.ts";
import { nearest } from "./nearest.ts";

/** Gear lines in whose first slot a species stands: a captain who has a band for a fish means that fish. */
const SPECIES_LINES = ["nickname", "band", "limit"];

/** Flags a species that is neither known nor called so in the book, and one that isn't there at all. */
export const unknownSpecies: Rule = (context) => {
  const nearOf = new Map<string, readonly string[]>();
  for (const use of doubtfulUses(context.analysis, "species")) {
    if (isKnown(context, use)) continue;
    const isMissing = isMissingSpecies(use);
    const key = `${use.owner?.boat ?? ""} ${use.name}`;
    const near = isMissing ? [] : (nearOf.get(key) ?? nearest(use.name, candidates(context, use)));
    nearOf.set(key, near);
    const data = { name: use.name, verb: use.line.verb, near, isMissing };
    const fixes = isMissing ? missingFixes(context, use) : renameFixes(context.analysis.uri, use.place, near);
    context.report(UNKNOWN_SPECIES, use.place, data, { fixes });
  }
};

function isKnown({ analysis }: CheckContext, { name, line, owner, isEvent }: NameUse): boolean {
  if (findSpecies(name) !== undefined) return true;
  if (line.verb === "lost" && name.toLowerCase() === UNSEEN_FISH) return true;
  const known = knownGear(analysis, owner?.boat);
  if (isEvent || line.verb === "target") return SPECIES_LINES.some((verb) => known.has(verb, name));
  // A nickname stands for a species itself, not for another nickname.
  return line.verb !== "nickname" && known.has("nickname", name);
}

/** `lost S1 slider`: the slot has swallowed a flag, a remark or a number. */
function isMissingSpecies({ name, quoted, line, word }: NameUse): boolean {
  if (word !== undefined || !(line.verb === "catch" || line.verb === "lost")) return false;
  const row = VOCABULARY.find("margin", line.verb);
  return quoted ? /\s/u.test(name) : looksNumeric(name) || row?.words.has(name.toLowerCase()) === true;
}

function missingFixes({ analysis }: CheckContext, { line, place, owner }: NameUse): Fix[] {
  const targets = (owner?.trip?.trip.properties ?? []).flatMap((property) =>
    property.line.verb === "target" ? property.line.slots.map((slot) => slot.text) : [],
  );
  const words = line.verb === "lost" ? [UNSEEN_FISH, ...targets] : targets;
  return [...new Set(words)].map((word, index) => ({
    title: FIX_TITLES.write(word),
    edits: [insert(analysis.uri, place.lineIndex, place.start, `${word} `)],
    isPreferred: index === 0 && line.verb === "lost",
  }));
}

function candidates({ analysis }: CheckContext, { owner }: NameUse): string[] {
  const own = [...knownGear(analysis, owner?.boat).names("nickname")];
  return [...own, ...SPECIES.flatMap((species) => [species.name, ...species.aliases])];
}
