/** Names that may stand in a slot or after an attribute, the likeliest first. */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import type { ReadLine } from "../../grammar/journal.ts";
import { canonicalLine, quote } from "../../grammar/print.ts";
import type { SlotRow } from "../../grammar/vocabulary.ts";
import { CATALOG } from "../checks/catalog.ts";
import type { Gear, GearOrigin } from "../model/gear-types.ts";
import { slotName } from "../model/quantities.ts";
import { SPECIES, UNSEEN_FISH } from "../model/species.ts";
import { THRESHOLDS } from "../model/thresholds.ts";
import { propertiesOf } from "../model/trip.ts";
import type { Snapshot } from "./snapshot.ts";

/** Names of one kind for a line. */
export function namesOf(
  snapshot: Snapshot,
  lineIndex: number,
  of: SlotRow["of"],
  line: ReadLine,
): CompletionItem[] {
  const day = snapshot.tripAt(lineIndex);
  const gear = day?.trip.gear;
  switch (of) {
    case "rig":
      return [
        ...rigNames(snapshot, lineIndex, gear),
        ...(line.verb === "pull" ? [plain("all", "every rig in the water")] : []),
      ];
    case "lure":
      return defined(gear?.lures);
    case "cable":
      return defined(gear?.cables);
    case "ball":
      return defined(gear?.balls);
    case "calibrated":
      return [...defined(gear?.rigs), ...defined(gear?.cables)];
    case "species":
      return speciesNames(snapshot, lineIndex, gear, line.verb);
    case "guest":
      return day === undefined
        ? []
        : propertiesOf(day.trip, "guest").flatMap((guest) => plainOf(slotName(guest), "guest"));
    case "check":
      return CATALOG.map((row) => plain(row.slug, row.summary));
    case "threshold":
      return Object.values(THRESHOLDS).map((row) => plain(row.name, `${row.doc} Now ${row.written}.`));
    case "boat":
      return snapshot.books.flatMap((book) =>
        book.parse.journal.lines.flatMap((one) =>
          one.kind === "fact" && one.verb === "boat" ? plainOf(slotName(one), "boat") : [],
        ),
      );
    default:
      return [];
  }
}

function plain(name: string, detail: string): CompletionItem {
  const label = /[\s"#]/u.test(name) ? quote(name) : name;
  return { label, kind: CompletionItemKind.Value, detail };
}

function plainOf(name: string | undefined, detail: string): CompletionItem[] {
  return name === undefined ? [] : [plain(name, detail)];
}

function defined(
  named: ReadonlyMap<string, { name?: string; of?: string; origin: GearOrigin }> | undefined,
): CompletionItem[] {
  return [...(named ?? [])].map(([name, { origin }]) => plain(name, canonicalLine(origin.line)));
}

/** Rigs in the water at that line first, then the others. */
function rigNames(snapshot: Snapshot, lineIndex: number, gear: Gear | undefined): CompletionItem[] {
  const wet = new Set<string>();
  for (const { lineIndex: at, line, rig } of snapshot.tripAt(lineIndex)?.trip.events ?? []) {
    if (at >= lineIndex || rig === undefined) continue;
    if (line.verb === "pull") rig === "all" ? wet.clear() : wet.delete(rig);
    else if (line.verb === "set" || line.verb === "again") wet.add(rig);
  }
  const all = defined(gear?.rigs);
  return [...all.filter((item) => wet.has(item.label)), ...all.filter((item) => !wet.has(item.label))];
}

/** Targets of the trip first, then the book's nicknames, then every species. */
function speciesNames(
  snapshot: Snapshot,
  lineIndex: number,
  gear: Gear | undefined,
  verb: string,
): CompletionItem[] {
  const day = snapshot.tripAt(lineIndex);
  const targets =
    day === undefined
      ? []
      : propertiesOf(day.trip, "target").flatMap((one) => plainOf(slotName(one), "target"));
  const nicknames = [...(gear?.nicknames ?? [])].map(([word, species]) => plain(word, species));
  const known = SPECIES.map((species) => plain(species.name, "species"));
  const unseen = verb === "lost" ? [plain(UNSEEN_FISH, "not seen")] : [];
  const seen = new Set<string>();
  return [...targets, ...unseen, ...nicknames, ...known].filter(
    ({ label }) => !seen.has(label) && seen.add(label),
  );
}
