/** The one thing that a name means where it stands, so that equal names of two things are told apart. */
import type { NamedKind, NamedPlace } from "../../model/named-places.ts";
import { findSpecies } from "../../model/species.ts";
import { CAPITALS_FORGIVEN, type KnownNames } from "./known-names.ts";
import { type NameOwner, nameOwner } from "./name-owner.ts";
import type { NamedFile } from "./named-file.ts";
import type { Sight } from "./sight.ts";

/** Something with a name. */
export interface Thing {
  readonly kind: NamedKind;
  readonly name: string;
  /** Whose it is where nothing defines it: a boat or a trip; things of one name and scope are the same. */
  readonly scope: string;
  /** The lines that define it, as `definitionId` gives them. */
  readonly definitions: ReadonlySet<string>;
}

/** A line of a file, as one text. */
export function definitionId({ uri, lineIndex }: { uri: string; lineIndex: number }): string {
  return `${lineIndex} ${uri}`;
}

/** The kinds of places that may mean a thing of a kind. */
const FAMILIES: Partial<Record<NamedKind, readonly NamedKind[]>> = {
  rig: ["rig", "calibrated"],
  cable: ["cable", "calibrated"],
  species: ["species", "group"],
  person: ["person", "guest"],
};

/** True where a place may mean the thing, by its kind and spelling alone. */
export function mayMean(thing: Thing, place: NamedPlace): boolean {
  if (!(FAMILIES[thing.kind] ?? [thing.kind]).includes(place.kind)) return false;
  if (place.name === thing.name) return true;
  if (CAPITALS_FORGIVEN.has(thing.kind)) return place.name.toLowerCase() === thing.name.toLowerCase();
  return isFish(thing) && findSpecies(place.name)?.name === thing.name;
}

/** A fish by the name it has everywhere. */
export function isFish({ kind, name, definitions }: Thing): boolean {
  return kind === "species" && definitions.size === 0 && findSpecies(name) !== undefined;
}

/** True where both are the same. */
export function isSameThing(one: Thing, other: Thing): boolean {
  if (one.definitions.size + other.definitions.size === 0) {
    return one.kind === other.kind && one.scope === other.scope && one.name === other.name;
  }
  return [...one.definitions].some((id) => other.definitions.has(id));
}

const NOTHING: ReadonlySet<string> = new Set();

/** What a place of a file means, as far as that file sees; undefined for a place that names nothing, like a picture. */
export function thingMeant(record: NamedFile, place: NamedPlace, sight: Sight): Thing | undefined {
  const owner = nameOwner(record, place.range.lineIndex);
  const boat = owner?.boat ?? "";
  const mention = (kind: NamedKind, scope = boat): Thing => ({
    kind,
    name: place.name,
    scope,
    definitions: NOTHING,
  });
  const defined = (kind: NamedKind): Thing | undefined => definedThing(place, kind, owner, sight);
  switch (place.kind) {
    case "picture":
      return undefined;
    case "boat":
      return boatThing(record, place, sight);
    case "calibrated":
      return defined("rig") ?? defined("cable") ?? mention("rig");
    case "species":
    case "group":
      return (
        (place.role === "definition" && place.kind === "species" ? ownThing(record, place) : undefined) ??
        fishThing(place, owner, sight) ??
        (place.kind === "group" ? defined("group") : undefined) ??
        mention(place.kind)
      );
    case "guest":
      return guestThing(record, place, owner);
    case "person":
    case "harbor":
    case "grid":
    case "mast":
    case "contest":
      return mention(place.kind);
    default:
      return place.role === "definition"
        ? ownThing(record, place)
        : (defined(place.kind) ?? mention(place.kind));
  }
}

/** What the line itself defines. */
function ownThing(record: NamedFile, { kind, name, range }: NamedPlace): Thing {
  const id = definitionId({ uri: record.uri, lineIndex: range.lineIndex });
  return { kind, name, scope: "", definitions: new Set([id]) };
}

function definedThing(
  { name: written }: NamedPlace,
  kind: NamedKind,
  owner: NameOwner | undefined,
  sight: Sight,
): Thing | undefined {
  const known = sight.known(owner?.boat ?? null);
  const name = known.meant(kind, written, owner?.date);
  return name === undefined ? undefined : thingDefined(known, kind, name);
}

function thingDefined(known: KnownNames, kind: NamedKind, name: string): Thing {
  const definitions = new Set(known.definitions(kind, name).map(definitionId));
  return { kind, name, scope: "", definitions };
}

function boatThing(record: NamedFile, place: NamedPlace, sight: Sight): Thing {
  if (place.role === "definition") return ownThing(record, place);
  const definitions = new Set(sight.openers(place.name).map(definitionId));
  return { kind: "boat", name: place.name, scope: "", definitions };
}

/** A nickname that holds on the day comes before the fish called so everywhere, and that before a later nickname. */
function fishThing(place: NamedPlace, owner: NameOwner | undefined, sight: Sight): Thing | undefined {
  const fish = findSpecies(place.name);
  const nickname = definedThing(place, "species", owner, sight);
  const isHeld = nickname !== undefined && (fish === undefined || holds(place, owner, sight));
  if (isHeld || fish === undefined) return nickname;
  return { kind: "species", name: fish.name, scope: owner?.boat ?? "", definitions: NOTHING };
}

function holds({ name }: NamedPlace, owner: NameOwner | undefined, sight: Sight): boolean {
  const lines = sight.known(owner?.boat ?? null).definitions("species", name);
  return owner?.date === undefined || lines.some(({ line }) => (line.date ?? "") <= (owner.date ?? ""));
}

/** A guest's id counts in one trip; `by` may also be followed by the name of somebody who was aboard. */
function guestThing(record: NamedFile, { name }: NamedPlace, owner: NameOwner | undefined): Thing {
  const aboard = record.places.filter(
    ({ range: { lineIndex }, role }) =>
      role === "definition" &&
      owner !== undefined &&
      lineIndex >= owner.openerIndex &&
      lineIndex < owner.stop,
  );
  const isAboard = (kind: NamedKind): boolean =>
    aboard.some((place) => place.kind === kind && place.name === name);
  if (!isAboard("guest") && isAboard("person")) {
    return { kind: "person", name, scope: owner?.boat ?? "", definitions: NOTHING };
  }
  return {
    kind: "guest",
    name,
    scope: `${owner?.openerIndex ?? -1} ${record.uri}`,
    definitions: NOTHING,
  };
}
