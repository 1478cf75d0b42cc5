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
  reportUnknown(context, "zone", UNKNOWN_ZONE, isKnownZone, () => Intl.supportedValuesOf("timeZone"));
};

function reportUnknown(
  context: CheckContext,
  kind: "check" | "threshold" | "zone",
  row: CheckRow<{ name: string; near: readonly string[] }>,
  isKnown: (name: string) => boolean,
  candidates: () => readonly string[],
): void {
  for (const { name, place } of doubtfulUses(context.analysis, kind)) {
    if (isKnown(name)) continue;
    const near = nearest(name, candidates());
    context.report(row, place, { name, near }, { fixes: renameFixes(context.analysis.uri, place, near) });
  }
}
