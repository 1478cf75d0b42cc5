/** Whether a name can be given to a thing, as far as the name alone says. */
import { CONTROL } from "../../checks/bidi-control.ts";
import { RENAME_REFUSALS } from "../../checks/catalog/rename-sentences.ts";
import { RESERVED_NAMES } from "../../checks/catalog/titles.ts";
import type { GearLine } from "../../model/gear-lines.ts";
import { CREW } from "../../model/named-places.ts";
import { slotName } from "../../model/quantities.ts";
import { findSpecies, UNSEEN_FISH } from "../../model/species.ts";
import type { Thing } from "./thing.ts";

const QUOTED = /^"(?:[^"]|"")+"$/u;
/** Line ends, tabs and other characters that are no letters; a line could not hold them, or nobody could see them. */
const UNWRITABLE = /[\p{Cc}\u2028\u2029]/u;

/** A name as it is typed for a new one: blanks around it don't count, nor quotes. */
export function typedName(typed: string): string {
  const name = typed.trim();
  return QUOTED.test(name) ? name.slice(1, -1).replaceAll('""', '"').trim() : name;
}

/** Why no thing of that kind can have the name; undefined when one can. */
export function whyNotName(thing: Thing, name: string, nicknames: readonly GearLine[]): string | undefined {
  if (name === "") return RENAME_REFUSALS.empty;
  if (UNWRITABLE.test(name)) return RENAME_REFUSALS.manyLines;
  if (CONTROL.test(name)) return RENAME_REFUSALS.controls;
  const meaning = RESERVED_NAMES.get(`${thing.kind} ${name}`);
  if (meaning !== undefined) return RENAME_REFUSALS.reserved(name, thing.kind, meaning);
  if ((thing.kind === "guest" || thing.kind === "person") && CREW.has(name))
    return RENAME_REFUSALS.crew(name);
  return thing.kind === "species" ? whyNotNickname(name, nicknames) : undefined;
}

/** A nickname may be spelled like the fish that it stands for, and like no other. */
function whyNotNickname(name: string, nicknames: readonly GearLine[]): string | undefined {
  if (name.toLowerCase() === UNSEEN_FISH)
    return RENAME_REFUSALS.reserved(name, "species", "that nobody saw what it was");
  const fish = findSpecies(name);
  const isOwn = (line: GearLine): boolean => findSpecies(slotName(line.line, 1) ?? "") === fish;
  if (fish === undefined || nicknames.every(isOwn)) return undefined;
  return RENAME_REFUSALS.otherFish(name, fish.name);
}
