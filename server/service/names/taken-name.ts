/** Looks for whatever already has a name, where one thing with it could be taken for the other. */
import { type NamedSpot, RENAME_REFUSALS } from "../../checks/catalog/rename-sentences.ts";
import type { NamedKind, NamedPlace } from "../../model/named-places.ts";
import { slotName } from "../../model/quantities.ts";
import type { NameFinder } from "./find-names.ts";
import { CAPITALS_FORGIVEN } from "./known-names.ts";
import type { NamedFile } from "./named-file.ts";
import { spotOf } from "./spots.ts";
import type { Thing } from "./thing.ts";

/** Kinds that a line could confuse: a calibration is of a rig or a cable, `by` takes a guest or somebody aboard. */
const CONFUSABLE: readonly ReadonlySet<NamedKind>[] = [
  new Set<NamedKind>(["rig", "cable", "calibrated"]),
  new Set<NamedKind>(["species", "group"]),
  new Set<NamedKind>(["guest", "person"]),
];

/** Why a thing can't have a name that another has; undefined when nothing in its sight has it. */
export function takenBy(finder: NameFinder, thing: Thing, name: string): string | undefined {
  const kinds = CONFUSABLE.find((set) => set.has(thing.kind)) ?? new Set([thing.kind]);
  const wanted = name.normalize("NFC");
  const [defined] = finder.definedBeside(thing, kinds, wanted);
  if (defined !== undefined) {
    const { uri, lineIndex, line } = defined;
    return sentence(wanted, slotName(line) ?? "", line.verb, spotOf(uri, lineIndex));
  }
  const isOther = (file: NamedFile, place: NamedPlace): boolean =>
    kinds.has(place.kind) &&
    isAlike(thing, place.name, wanted) &&
    finder.isInSight(file, place, thing) &&
    !finder.means(file, place, thing);
  for (const file of finder.files) {
    const found = file.places.find((place) => isOther(file, place));
    if (found === undefined) continue;
    const { name: other, kind, range } = found;
    return sentence(wanted, other, kind, spotOf(file.uri, range.lineIndex));
  }
  return undefined;
}

function isAlike({ kind }: Thing, other: string, wanted: string): boolean {
  if (other === wanted) return true;
  return CAPITALS_FORGIVEN.has(kind) && other.toLowerCase() === wanted.toLowerCase();
}

function sentence(name: string, other: string, kind: string, spot: NamedSpot): string {
  if (other === name) return RENAME_REFUSALS.taken(name, kind, spot);
  return RENAME_REFUSALS.alike(name, other, kind, spot);
}
