/** What a name on a line stands for, as the books define it. */

import type { FactLine, ReadLine } from "../../grammar/journal.ts";
import type { SlotRow } from "../../grammar/vocabulary.ts";
import { ownerNear } from "../checks/owners.ts";
import { fileGear, type GearLine, holdingLines, kindDefined, linesOfBoat } from "../model/gear-lines.ts";
import type { Gear } from "../model/gear-types.ts";
import { matchName } from "../model/match-name.ts";
import { CREW } from "../model/named-places.ts";
import { nameOf, slotName } from "../model/quantities.ts";
import { findSpecies } from "../model/species.ts";
import { propertiesOf } from "../model/trip.ts";
import type { Snapshot } from "./snapshot.ts";

/** The line that defines a name, and the file it stands in. */
export interface Definition {
  readonly uri: string;
  readonly lineIndex: number;
  readonly line: ReadLine;
}

/** The verbs whose lines define a kind of name. */
const VERBS: Partial<Record<SlotRow["of"], readonly string[]>> = {
  rig: ["rig"],
  lure: ["lure"],
  cable: ["cable"],
  ball: ["ball"],
  calibrated: ["rig", "cable"],
  species: ["nickname"],
  "species-group": ["nickname", "limit"],
  spot: ["spot"],
  upkeep: ["upkeep"],
};

/** After every date a journal can hold: a book's own lines see the latest gear. */
const LATEST = "9999-12-31";

/** Gear whose names are found with other capitals too. */
const CAPITALS_FORGIVEN: ReadonlySet<string> = new Set(["rig", "cable", "ball", "lure"]);

/** The gear that speaks for a line: its trip's on that day, or its boat's latest. */
export function gearAt(snapshot: Snapshot, lineIndex: number): Gear | undefined {
  return ownerNear(snapshot.analysis, lineIndex)?.gear;
}

/** Every line that defines a name on that day: a boat may be opened in several books. */
export function definitionsOf(
  snapshot: Snapshot,
  lineIndex: number,
  of: SlotRow["of"],
  written: string,
): Definition[] {
  if (of === "boat") return openersOf(snapshot, written.normalize("NFC"));
  const found = definitionOf(snapshot, lineIndex, of, written);
  return found === undefined ? [] : [found];
}

function openersOf({ analysis }: Snapshot, boat: string): Definition[] {
  return analysis.files.flatMap(({ uri, parse }) =>
    fileGear({ uri, parse })
      .boats.filter((opener) => opener.boat === boat)
      .map(({ lineIndex, line }) => ({ uri, lineIndex, line })),
  );
}

/** The line that defines a name on that day; undefined where no book has one. */
export function definitionOf(
  snapshot: Snapshot,
  lineIndex: number,
  of: SlotRow["of"],
  written: string,
): Definition | undefined {
  const name = written.normalize("NFC");
  if (of === "guest") return guestLine(snapshot, lineIndex, name);
  const holding = holdingAt(snapshot, lineIndex);
  for (const verb of VERBS[of] ?? []) {
    const found = holding.get(`${verb} ${name}`);
    if (found !== undefined) return found;
    const forgiven = CAPITALS_FORGIVEN.has(verb) ? matchName(holding, `${verb} ${name}`) : undefined;
    if (forgiven !== undefined && holding.has(forgiven)) return holding.get(forgiven);
  }
  return undefined;
}

/** Every gear line of one kind that speaks for a line, in the order of the books; fishing lines are cables by another word. */
export function gearLinesAt(snapshot: Snapshot, lineIndex: number, verb: string): FactLine[] {
  return [...holdingAt(snapshot, lineIndex).values()]
    .map(({ line }) => line)
    .filter((line) => kindDefined(line.verb) === verb);
}

/** What a species' name or nickname stands for; empty where it stands for itself. */
export function speciesMeant(snapshot: Snapshot, lineIndex: number, written: string): string {
  const meant = gearAt(snapshot, lineIndex)?.nicknames.get(written) ?? written;
  const species = findSpecies(meant);
  return species === undefined || species.name === written ? "" : species.name;
}

function holdingAt(snapshot: Snapshot, lineIndex: number): ReadonlyMap<string, GearLine> {
  const owner = ownerNear(snapshot.analysis, lineIndex);
  const lines = linesOfBoat(snapshot.analysis.files, owner?.boat ?? "");
  return holdingLines(lines, owner?.trip?.trip.date ?? LATEST);
}

/** Whoever is aboard is introduced by the trip itself: guests by their id, the crew by name or by what they do. */
function guestLine(snapshot: Snapshot, lineIndex: number, name: string): Definition | undefined {
  const trip = snapshot.tripAt(lineIndex)?.trip;
  const introduces = ({ line }: { line: ReadLine }): boolean =>
    line.verb === "guest" ? slotName(line) === name : isCrew(line, name);
  const guest = trip?.properties.find(introduces);
  return trip === undefined || guest === undefined ? undefined : { uri: trip.uri, ...guest };
}

function isCrew(line: ReadLine, name: string): boolean {
  return CREW.has(line.verb) && (line.verb === name || slotName(line) === name);
}

/** A guest's name by the short id on a line; empty where none is stated. */
export function guestName(snapshot: Snapshot, lineIndex: number, id: string): string {
  const trip = snapshot.tripAt(lineIndex)?.trip;
  const guest =
    trip === undefined ? undefined : propertiesOf(trip, "guest").find((line) => slotName(line) === id);
  return guest === undefined ? "" : (nameOf(guest, "named") ?? "");
}
