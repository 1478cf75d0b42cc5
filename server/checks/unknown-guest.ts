import { findItem, nameOf, slotName } from "../model/quantities.ts";
import { propertiesOf } from "../model/trip.ts";
import { UNKNOWN_GUEST } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { renameFixes, valuePlace } from "./edits.ts";
import { nearest } from "./nearest.ts";

/** Written for the crew on any boat. */
const CREW = ["captain", "mate"];

/** Flags a fish by somebody the trip doesn't name, where it names its guests. Capitals don't count. */
export const unknownGuest: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const guests = propertiesOf(trip, "guest").flatMap((line) => slotName(line) ?? []);
    if (guests.length === 0) continue;
    const crew = CREW.flatMap((verb) => [
      verb,
      ...propertiesOf(trip, verb).map((line) => slotName(line) ?? ""),
    ]);
    const known = new Set([...guests, ...crew].map((name) => name.toLowerCase()));
    for (const { line, lineIndex } of trip.events) {
      const [item, name] = [findItem(line, "by"), nameOf(line, "by")];
      if (item === undefined || name === undefined || known.has(name.toLowerCase())) continue;
      const near = nearest(name, [...guests, ...crew]);
      const place = valuePlace(lineIndex, item);
      const fixes = renameFixes(analysis.uri, place, near);
      report(UNKNOWN_GUEST, place, { name, near }, { fixes });
    }
  }
};
