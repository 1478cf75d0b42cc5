import { isKnownZone } from "../model/local-time.ts";
import { findThreshold, THRESHOLDS } from "../model/thresholds.ts";
import { UNKNOWN_CHECK, UNKNOWN_THRESHOLD, UNKNOWN_ZONE } from "./catalog/language.ts";
import { CATALOG, findCheck } from "./catalog.ts";
import type { CheckContext, CheckRow, Rule } from "./check.ts";
import { renameFixes } from "./edits.ts";
import { doubtfulUses } from "./name-uses.ts";
import { nearest } from "./nearest.ts";

/** Flags a `quiet` line that silences nothing. */
export const unknownCheck: Rule = (context) => {
  const slugs = (): string[] => CATALOG.map((row) => row.slug);
  reportUnknown(context, "check", UNKNOWN_CHECK, (name) => findCheck(name) !== undefined, slugs);
};

/** Flags a `threshold` line that sets nothing. */
export const unknownThreshold: Rule = (context) => {
  const names = (): string[] => Object.values(THRESHOLDS).map((row) => row.name);
  reportUnknown(context, "threshold", UNKNOWN_THRESHOLD, (name) => findThreshold(name) !== undefined, names);
};

/** Flags a time zone that isn't one: every clock time of the trip would be off. */
export const unknownZone: Rule = (context) => {
  reportUnknown(context, "zone", UNKNOWN_ZONE, isKnownZone, zoneNames, zonesNear);
};

const zoneNames = (): readonly string[] => Intl.supportedValuesOf("timeZone");

/** More cities of one name, or region, would be a list to read. */
const MOST_CITIES = 3;

/** `Chicago` and `US/Chicago` for America/Chicago, `new york` for America/New_York; else the nearest whole name, or the nearest city. */
function zonesNear(name: string): readonly string[] {
  const typed = name.trim().replaceAll(/\s+/gu, "_").toLowerCase();
  const zones = zoneNames();
  const cityOf = (zone: string): string => zone.slice(zone.lastIndexOf("/") + 1).toLowerCase();
  const same = zones.filter((zone) => cityOf(zone) === cityOf(typed));
  if (same.length > 0) return same.slice(0, MOST_CITIES);
  const whole = nearest(name, zones);
  if (whole.length > 0) return whole;
  const cities = new Set(nearest(cityOf(typed), new Set(zones.map(cityOf))));
  return zones.filter((zone) => cities.has(cityOf(zone))).slice(0, MOST_CITIES);
}

function reportUnknown(
  context: CheckContext,
  kind: "check" | "threshold" | "zone",
  row: CheckRow<{ name: string; near: readonly string[] }>,
  isKnown: (name: string) => boolean,
  candidates: () => readonly string[],
  nearOf = (name: string): readonly string[] => nearest(name, candidates()),
): void {
  for (const { name, place } of doubtfulUses(context.analysis, kind)) {
    if (isKnown(name)) continue;
    const near = nearOf(name);
    context.report(row, place, { name, near }, { fixes: renameFixes(context.analysis.uri, place, near) });
  }
}
