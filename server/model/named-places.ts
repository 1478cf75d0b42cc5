/** The names a file is made of: where each stands, what kind of thing it names, and whether the line defines it. */
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { type IndexedRow, type NameKind, VOCABULARY } from "../../grammar/vocabulary.ts";
import { UNSEEN_FISH } from "./species.ts";
import { rigWord } from "./trip.ts";

/**
 * What a name names. A `calibrated` is a rig or a cable, a `guest` the short id of a trip's guest or somebody of the
 * crew, a `group` what a limit is for; a `species` is a fish by its name or by what it is called on the boat.
 */
export type NamedKind =
  | "ball"
  | "boat"
  | "cable"
  | "calibrated"
  | "contest"
  | "grid"
  | "group"
  | "guest"
  | "harbor"
  | "lure"
  | "mast"
  | "person"
  | "picture"
  | "rig"
  | "species"
  | "spot"
  | "upkeep";

/** A stretch of one line, half-open, in UTF-16 code units. */
export interface LineRange {
  readonly lineIndex: number;
  readonly start: number;
  readonly stop: number;
}

/** A name where it stands, quotes included in its range. */
export interface NamedPlace {
  readonly kind: NamedKind;
  /** In Unicode NFC, without quotes. */
  readonly name: string;
  readonly range: LineRange;
  readonly role: "definition" | "use";
}

/** A name on a line whose number is known to whoever asks. */
export type PlaceOnLine = Omit<NamedPlace, "range"> & { readonly start: number; readonly stop: number };

const placesOfParse = new WeakMap<Parse, readonly NamedPlace[]>();
const placesOfLine = new WeakMap<ReadLine, readonly PlaceOnLine[]>();

/** Every name of a file, in order; names that mean something everywhere (`pull all`, `lure none`) are none. */
export function namedPlaces(parse: Parse): readonly NamedPlace[] {
  const known = placesOfParse.get(parse);
  if (known !== undefined) return known;
  const places = parse.journal.lines.flatMap((line, lineIndex) =>
    isRead(line)
      ? placesOn(line).map(({ start, stop, ...place }) => ({ ...place, range: { lineIndex, start, stop } }))
      : [],
  );
  placesOfParse.set(parse, places);
  return places;
}

/** The names on one line; kept for as long as the line's value is, edits elsewhere included. */
export function placesOn(line: ReadLine): readonly PlaceOnLine[] {
  const known = placesOfLine.get(line);
  if (known !== undefined) return known;
  const places = readPlaces(line);
  placesOfLine.set(line, places);
  return places;
}

/** The same, not kept: for lines that are looked at once. */
export function readPlaces(line: ReadLine): readonly PlaceOnLine[] {
  const row = VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
  return row === undefined ? [] : [...slotPlaces(line, row), ...itemPlaces(line, row)];
}

/** What the vocabulary's kinds of names are here; kinds that only the language itself names are left out. */
const KINDS: Partial<Record<NameKind, NamedKind>> = {
  rig: "rig",
  cable: "cable",
  ball: "ball",
  lure: "lure",
  species: "species",
  "species-group": "group",
  boat: "boat",
  guest: "guest",
  spot: "spot",
  upkeep: "upkeep",
  calibrated: "calibrated",
};

/** Slots and attributes of the vocabulary that name something else than their kind says, by verb and word. */
const SPECIAL: ReadonlyMap<string, NamedKind> = new Map([
  ["harbor", "harbor"],
  ["grid", "grid"],
  ["captain", "person"],
  ["mate", "person"],
  ["nickname", "species"],
  ["event", "contest"],
  ["guest named", "person"],
  ["rig mast", "mast"],
]);

/** Gear lines whose first slot is the very name they define. */
export const NAMES_GEAR: ReadonlySet<string> = new Set([
  "boat",
  "cable",
  "line",
  "ball",
  "lure",
  "rig",
  "nickname",
  "limit",
  "upkeep",
  "spot",
]);

/** All lines whose first slot says what a thing is called. */
const DEFINING: ReadonlySet<string> = new Set([...NAMES_GEAR, "guest", "captain", "mate"]);

function slotPlaces(line: ReadLine, row: IndexedRow): PlaceOnLine[] {
  return line.slots.flatMap(({ text, start, stop }, index) => {
    const of = row.slots[Math.min(index, row.slots.length - 1)]?.of;
    const kind = (index === 0 ? SPECIAL.get(line.verb) : undefined) ?? KINDS[of as NameKind];
    const name = text.normalize("NFC");
    if (kind === undefined || isPlain(kind, name, line.verb)) return [];
    return [{ kind, name, role: index === 0 && DEFINING.has(line.verb) ? "definition" : "use", start, stop }];
  });
}

function itemPlaces(line: ReadLine, row: IndexedRow): PlaceOnLine[] {
  return line.items.flatMap(({ word, value, valueStart: start, stop }) => {
    const type = row.words.get(word)?.type;
    if (value.kind !== "name" || type?.kind !== "name") return [];
    const kind = SPECIAL.get(`${line.verb} ${word}`) ?? (word === "picture" ? word : KINDS[type.of]);
    const name = value.text.normalize("NFC");
    if (kind === undefined || isPlain(kind, name, line.verb)) return [];
    return [{ kind, name, role: kind === "person" ? "definition" : "use", start, stop }];
  });
}

/** Written to take something off, or for there being none. */
const NOTHING = "none";
/** The crew, as `by` speaks of them. */
export const CREW: ReadonlySet<string> = new Set(["captain", "mate"]);

/** A word that means the same in every log is nobody's name. */
function isPlain(kind: NamedKind, name: string, verb: string): boolean {
  if (name.trim() === "") return true;
  if (kind === "rig") return rigWord(name, verb) !== undefined;
  if (kind === "lure" || kind === "ball") return name === NOTHING && verb !== kind;
  if (kind === "species") return verb === "lost" && name.toLowerCase() === UNSEEN_FISH;
  return kind === "guest" && verb !== "guest" && CREW.has(name);
}
