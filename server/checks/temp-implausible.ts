import type { Item } from "../../grammar/journal.ts";
import { findUnit } from "../../grammar/units.ts";
import { oddTemperature } from "../analysis/odd-temperature.ts";
import type { Gear } from "../model/gear-types.ts";
import { defaultUnit } from "../model/quantities.ts";
import { TEMP_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, LineRule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { type PlainMeasure, plainPart, siOf, writtenMeasure } from "./numbers.ts";

const READINGS = new Set(["probe", "surface", "profile"]);

/** Flags water colder or warmer than the lakes get. */
export const tempImplausible: LineRule = ({ analysis, report }, { gear }, { line, lineIndex }) => {
  if (!READINGS.has(line.verb)) return;
  for (const item of line.items) {
    const typed = temperature(item, gear, line.verb);
    const odd = typed === undefined ? undefined : oddTemperature(gear, siOf(typed));
    if (typed === undefined || odd === undefined) continue;
    const place = { lineIndex, start: item.start, stop: item.stop };
    const fixes = otherScale(analysis.uri, gear, lineIndex, item, typed);
    const severity = odd.isImpossible ? "error" : "warning";
    report(
      TEMP_IMPLAUSIBLE,
      place,
      { kind: "beyond", gear, written: writtenMeasure(typed), tempC: siOf(typed), ...odd },
      { severity, fixes },
    );
  }
};

function temperature({ word, value }: Item, gear: Gear, verb: string): PlainMeasure | undefined {
  const meant = defaultUnit("temperature", verb, gear.defaults)?.unit;
  if (value.kind === "point") return plainPart(value.temp, meant);
  return word === "temp" && value.kind === "quantity" ? plainPart(value.parts, meant) : undefined;
}

/** The same number on the other scale, where that would be water: 18 C for 18 F. Preferred if the boat reads in it. */
function otherScale(uri: string, gear: Gear, lineIndex: number, item: Item, typed: PlainMeasure): Fix[] {
  const meant = { ...typed, unit: findUnit(typed.unit)?.unit === "F" ? "C" : "F" };
  if (item.value.kind !== "quantity" || oddTemperature(gear, siOf(meant)) !== undefined) return [];
  const text = writtenMeasure(meant);
  const edits = [replace(uri, valuePlace(lineIndex, item), text)];
  const isPreferred = gear.defaults.byDimension.get("temperature")?.unit === meant.unit;
  return [{ title: DAY_FIXES.write(text), edits, isPreferred }];
}
