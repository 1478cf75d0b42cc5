import type { Item } from "../../grammar/journal.ts";
import { speciesName } from "../analysis/bites.ts";
import { findItem, measureOf, slotName } from "../model/quantities.ts";
import { findSpecies, type Species } from "../model/species.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { FISH_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { CheckContext, Fix, LineRule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { meantFishMeasure } from "./fish-slips.ts";
import { type PlainMeasure, plainMeasure, writtenMeasure } from "./numbers.ts";
import { itemPlace } from "./places.ts";

/** Where the species stands on a line. */
const SPECIES_SLOT: Readonly<Record<string, number>> = { catch: 1, dock: 0 };

/** Flags a fish heavier or longer than its species grows, or of no weight or length at all. */
export const fishImplausible: LineRule = (context, trip, event) => {
  const slot = SPECIES_SLOT[event.line.verb];
  const written = slot === undefined ? undefined : slotName(event.line, slot);
  if (written === undefined) return;
  const species = findSpecies(speciesName(trip, written));
  for (const what of ["weight", "length"] as const) checkSize(context, trip, event, what, species);
};

function checkSize(
  { analysis, report }: CheckContext,
  trip: Trip,
  event: TripEvent,
  what: "weight" | "length",
  species: Species | undefined,
): void {
  const { line, lineIndex } = event;
  const { gear } = trip;
  const dimension = what === "weight" ? "mass" : "length";
  const si = measureOf(line, what, dimension, gear.defaults);
  if (si === undefined) return;
  const mostSi = species === undefined ? undefined : most(species, what);
  const place = itemPlace(lineIndex, line, what);
  const item = findItem(line, what);
  const typed = plainMeasure(item, dimension, line.verb, gear.defaults);
  const written = typed === undefined ? line.raw.slice(item?.valueStart, item?.stop) : writtenMeasure(typed);
  const named = { gear, what, written, species: species?.name ?? "", mostSi: mostSi ?? 0 } as const;
  if (si <= 0) {
    const data = { ...named, kind: "not-positive", slip: undefined } as const;
    report(FISH_IMPLAUSIBLE, place, data, { severity: "error" });
  } else if (mostSi !== undefined && si > mostSi) {
    const meant = typed === undefined ? undefined : meantFishMeasure(typed, mostSi);
    const slip = meant === undefined ? undefined : writtenMeasure(meant);
    const data = { ...named, kind: "beyond", slip } as const;
    const isUnitSlip = meant !== undefined && meant.unit !== typed?.unit;
    const fixes = fixesOf(analysis.uri, lineIndex, item, meant, isUnitSlip);
    report(FISH_IMPLAUSIBLE, place, data, { severity: isUnitSlip ? "error" : "warning", fixes });
  }
}

function most(species: Species, what: "weight" | "length"): number {
  return what === "weight" ? species.maxMassKg : species.maxLengthM;
}

function fixesOf(
  uri: string,
  lineIndex: number,
  item: Item | undefined,
  meant: PlainMeasure | undefined,
  isPreferred: boolean,
): Fix[] {
  if (item === undefined || meant === undefined) return [];
  const text = writtenMeasure(meant);
  // A bare measure starts at its number; one with its word keeps the word.
  const edits = [replace(uri, valuePlace(lineIndex, item), text)];
  return [{ title: DAY_FIXES.write(text), edits, isPreferred }];
}
