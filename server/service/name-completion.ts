/** Names that may stand in a slot or after an attribute, the likeliest first. */
import type { ReadLine } from "../../grammar/journal.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { UNITS } from "../../grammar/units.ts";
import type { SlotRow } from "../../grammar/vocabulary.ts";
import { CATALOG } from "../checks/catalog.ts";
import { fileGear } from "../model/gear-lines.ts";
import type { Gear, GearOrigin, Lure } from "../model/gear-types.ts";
import { nameOf, slotName } from "../model/quantities.ts";
import { SPECIES, UNSEEN_FISH } from "../model/species.ts";
import { THRESHOLDS } from "../model/thresholds.ts";
import { propertiesOf } from "../model/trip.ts";
import { gearAt, gearLinesAt } from "./definitions.ts";
import { nameOffer, type Offer } from "./offers.ts";
import { rigChoices } from "./rig-choices.ts";
import type { Snapshot } from "./snapshot.ts";
import { usualSpecies } from "./usual-species.ts";
import { usualWords } from "./usual-words.ts";

/** Verbs whose slot gives a new name rather than using one. */
const NAMING = new Set([
  "cable",
  "line",
  "ball",
  "lure",
  "rig",
  "guest",
  "captain",
  "mate",
  "spot",
  "upkeep",
]);

/** Names of one kind for a line, in the slot of a verb or after an attribute's word. */
export function namesOf(
  snapshot: Snapshot,
  lineIndex: number,
  of: SlotRow["of"],
  line: ReadLine,
  word: string,
): Offer[] {
  if (word === line.verb && NAMING.has(word)) return [];
  const gear = gearAt(snapshot, lineIndex);
  switch (of) {
    case "rig":
      return rigNames(snapshot, lineIndex, gear, line);
    case "lure":
      return lureNames(gear, word);
    case "cable":
      return defined(gear?.cables, of);
    case "ball":
      return defined(gear?.balls, of);
    case "calibrated":
      return [...defined(gear?.rigs, of), ...defined(gear?.cables, of)];
    case "species":
      return speciesNames(snapshot, lineIndex, gear, line.verb);
    case "guest":
      return guestNames(snapshot, lineIndex);
    case "spot":
    case "upkeep":
      return gearLinesAt(snapshot, lineIndex, of).map((one) =>
        nameOffer(slotName(one) ?? "", canonicalLine(one), of),
      );
    case "boat":
      return boatNames(snapshot);
    case "check":
      return CATALOG.map((row) => nameOffer(row.slug, row.summary, of));
    case "threshold":
      return Object.values(THRESHOLDS).map((row) =>
        nameOffer(row.name, `${row.doc} Usually ${row.written}.`, of),
      );
    case "value":
      return thresholdValue(line);
    case "unit":
      return UNITS.map((row) => nameOffer(row.unit, row.doc));
    default:
      return word === line.verb ? usualWords(word) : [];
  }
}

function defined(
  named: ReadonlyMap<string, { origin: GearOrigin }> | undefined,
  kind: SlotRow["of"],
): Offer[] {
  return [...(named ?? [])].map(([name, { origin }]) => nameOffer(name, canonicalLine(origin.line), kind));
}

function rigNames(snapshot: Snapshot, lineIndex: number, gear: Gear | undefined, line: ReadLine): Offer[] {
  const rigs = gear?.rigs ?? new Map<string, { origin: GearOrigin }>();
  const own = line.slots[0]?.text;
  const others = [...rigs.keys()].filter((name) => name !== own);
  const day = snapshot.tripAt(lineIndex);
  const stamp = { lineIndex, date: line.date, clock: line.clock, offset: line.offset };
  const names = day === undefined ? others : rigChoices(others, line.verb, day, stamp);
  const offers = names.flatMap((name) => {
    const rig = rigs.get(name);
    return rig === undefined ? [] : [nameOffer(name, canonicalLine(rig.origin.line), "rig")];
  });
  return line.verb === "pull" ? [...offers, nameOffer("all", "every rig in the water")] : offers;
}

/** Flashers where a flasher is asked for, and last where a lure is. */
function lureNames(gear: Gear | undefined, word: string): Offer[] {
  const isWanted = (lure: Lure): boolean => (lure.kind === "flasher") === (word === "flasher");
  const lures = [...(gear?.lures ?? [])];
  return [
    ...defined(new Map(lures.filter(([, lure]) => isWanted(lure))), "lure"),
    ...defined(new Map(lures.filter(([, lure]) => !isWanted(lure))), "lure"),
  ];
}

/** Targets of the trip first, then what the boat usually catches, the book's nicknames, and every species. */
function speciesNames(snapshot: Snapshot, lineIndex: number, gear: Gear | undefined, verb: string): Offer[] {
  const day = verb === "target" ? undefined : snapshot.tripAt(lineIndex);
  const targets = day === undefined ? [] : propertiesOf(day.trip, "target");
  const nicknames = gear?.nicknames ?? new Map<string, string>();
  const usual = usualSpecies(snapshot, gear?.boat ?? "", lineIndex).filter((word) => word !== UNSEEN_FISH);
  const offer = (word: string, detail: string): Offer => nameOffer(word, detail, "species");
  return [
    ...targets.map((target) => offer(slotName(target) ?? "", "target of the day")),
    ...(verb === "lost" ? [offer(UNSEEN_FISH, "not seen")] : []),
    ...usual.map((word) => offer(word, nicknames.get(word) ?? "species")),
    ...[...nicknames].map(([word, species]) => offer(word, species)),
    ...SPECIES.map((species) => offer(species.name, "species")),
  ];
}

function guestNames(snapshot: Snapshot, lineIndex: number): Offer[] {
  const day = snapshot.tripAt(lineIndex);
  if (day === undefined) return [];
  return propertiesOf(day.trip, "guest").map((guest) =>
    nameOffer(slotName(guest) ?? "", nameOf(guest, "named") ?? "guest"),
  );
}

function boatNames(snapshot: Snapshot): Offer[] {
  const boats = snapshot.analysis.files.flatMap((file) => fileGear(file).boats);
  return boats.map(({ boat }) => nameOffer(boat, "boat in the gear book"));
}

/** What a threshold is when it isn't set. */
function thresholdValue(line: ReadLine): Offer[] {
  const row = Object.values(THRESHOLDS).find(({ name }) => name === line.slots[0]?.text);
  if (row === undefined || line.slots.length > 1) return [];
  return [{ ...nameOffer("", row.doc), label: row.written }];
}
