/** What a name on a line stands for, as the books define it. */
import { canonicalLine } from "../../grammar/print.ts";
import type { SlotRow } from "../../grammar/vocabulary.ts";
import type { Gear, GearOrigin } from "../model/gear-types.ts";
import { findSpecies } from "../model/species.ts";
import type { Snapshot } from "./snapshot.ts";

/** The definition of a name for a line; undefined where no book has one. */
export function definitionOf(gear: Gear, of: SlotRow["of"], written: string): GearOrigin | undefined {
  const name = written.normalize("NFC");
  switch (of) {
    case "rig":
      return gear.rigs.get(name)?.origin;
    case "lure":
      return gear.lures.get(name)?.origin;
    case "cable":
      return gear.cables.get(name)?.origin;
    case "ball":
      return gear.balls.get(name)?.origin;
    case "calibrated":
      return (gear.rigs.get(name) ?? gear.cables.get(name))?.origin;
    default:
      return undefined;
  }
}

/** The gear that speaks for a line. */
export function gearAt(snapshot: Snapshot, lineIndex: number): Gear | undefined {
  return snapshot.tripAt(lineIndex)?.trip.gear;
}

/** One sentence on a name: the line that defines it, or the species it stands for. Empty where nothing is known. */
export function definitionSentence(
  snapshot: Snapshot,
  lineIndex: number,
  of: SlotRow["of"],
  written: string,
): string {
  const gear = gearAt(snapshot, lineIndex);
  if (gear === undefined) return "";
  if (of === "species") {
    const meant = gear.nicknames.get(written) ?? written;
    const species = findSpecies(meant);
    return species === undefined || species.name === written ? "" : `${written} is ${species.name}.`;
  }
  const origin = definitionOf(gear, of, written);
  return origin === undefined ? "" : canonicalLine(origin.line);
}
