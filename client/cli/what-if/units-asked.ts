/** A what-if is answered in the units it is asked in: 45 m gives meters, whatever the gear book reads in. */
import { parse } from "../../../grammar/parse.ts";
import { type Dimension, findUnit, type UnitRow } from "../../../grammar/units.ts";
import type { TripAnalysis } from "../../../server/analysis/journal-analysis.ts";

/** Options by the line and word they stand on; the first that states a unit of its dimension decides. */
const ASKED: readonly (readonly [option: string, verb: string, dimension: Dimension])[] = [
  ["out", "set", "length"],
  ["speed", "probe", "speed"],
  ["temp", "probe", "temperature"],
];

/** The day as it is shown: the same figures, on a boat that reads in the units of the options. */
export function inUnitsAsked(day: TripAnalysis, options: ReadonlyMap<string, string>): TripAnalysis {
  const { gear } = day.trip;
  const byDimension = new Map(gear.defaults.byDimension);
  for (const [option, verb, dimension] of ASKED) {
    const unit = unitIn(options.get(option), `12:00 ${verb} X ${option}`);
    // Colors are counted on leadcore; a depth is no color.
    if (unit?.dimension === dimension && unit.unit !== "colors") byDimension.set(dimension, unit);
  }
  const defaults = { ...gear.defaults, byDimension };
  return { ...day, trip: { ...day.trip, gear: { ...gear, defaults } } };
}

function unitIn(text: string | undefined, before: string): UnitRow | undefined {
  const [line] = text === undefined ? [] : parse(`${before} ${text}`).journal.lines;
  const value = line?.kind === "fact" ? line.items[0]?.value : undefined;
  const unit = value?.kind === "quantity" ? value.parts[0]?.unit : undefined;
  return unit === undefined || unit === null ? undefined : findUnit(unit);
}
