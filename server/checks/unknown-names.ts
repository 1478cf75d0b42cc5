/** What the checks of rigs, cables, balls and lures have in common: the book, the nearest name, the fixes. */
import type { Gear } from "../model/gear-types.ts";
import { matchName } from "../model/match-name.ts";
import { addToBook, relatedBook } from "./add-to-book.ts";
import { CONTROL } from "./bidi-control.ts";
import type { UnknownName } from "./catalog/names.ts";
import { FIX_TITLES, RELATED } from "./catalog/titles.ts";
import type { CheckContext, CheckRow, Fix, RelatedPlace } from "./check.ts";
import { renameFixes } from "./edits.ts";
import { type KnownGear, knownGear } from "./known-gear.ts";
import type { NameUse } from "./name-uses.ts";
import { nearest } from "./nearest.ts";
import { slotPlace } from "./places.ts";

/** A kind of gear that lines refer to by name. */
export interface NamedGear {
  readonly row: CheckRow<UnknownName>;
  /** The verb that defines it. */
  readonly verb: string;
  /** What holds on a trip's day. */
  readonly held: (gear: Gear) => ReadonlyMap<string, unknown>;
  /** The line that would define a name; `isSure` when it says nothing that wasn't known. */
  readonly stub: (use: NameUse, written: string) => { readonly text: string; readonly isSure: boolean };
}

/** Reports the uses of names that nothing defines for their line. */
export function reportUnknownNames(context: CheckContext, named: NamedGear, uses: readonly NameUse[]): void {
  const seen = new Map<string, readonly string[]>();
  for (const use of uses) {
    const boat = use.owner?.boat;
    const known = knownGear(context.analysis, boat);
    if (isHeld(named, use, known)) continue;
    const key = `${boat ?? ""} ${use.name}`;
    const near = seen.get(key) ?? nearest(use.name, known.names(named.verb));
    reportUse(context, named, use, { near, isFirst: !seen.has(key), known });
    seen.set(key, near);
  }
}

function isHeld({ verb, held }: NamedGear, { name, isEvent, owner }: NameUse, known: KnownGear): boolean {
  return isEvent && owner?.trip !== undefined ? held(owner.gear).has(name) : known.has(verb, name);
}

/** The name that the model takes it for: the only one that differs in capitals alone. */
function meantName(named: NamedGear, use: NameUse, known: KnownGear): string | undefined {
  const { name, isEvent, owner } = use;
  const isOnDay = isEvent && owner?.trip !== undefined;
  const names = isOnDay
    ? named.held(owner.gear)
    : new Map([...known.names(named.verb)].map((one) => [one, one]));
  const meant = matchName(names, name);
  return meant === name ? undefined : meant;
}

interface Search {
  readonly near: readonly string[];
  readonly isFirst: boolean;
  readonly known: KnownGear;
}

function reportUse(context: CheckContext, named: NamedGear, use: NameUse, search: Search): void {
  const { analysis, report } = context;
  const boat = use.owner?.boat;
  const meant = meantName(named, use, search.known);
  if (meant !== undefined) {
    const fixes = renameFixes(analysis.uri, use.place, [meant]);
    const data = { name: use.name, boat, near: [], from: undefined, meant };
    report(named.row, use.place, data, { severity: "hint", fixes });
    return;
  }
  const later = search.known.definitions(named.verb, use.name)[0];
  if (later !== undefined) {
    const related = [placeOf(later, RELATED.heldFrom)];
    const data = { name: use.name, boat, near: [], from: later.line.date ?? undefined };
    report(named.row, use.place, data, {
      severity: named.row.severities[1] ?? named.row.severities[0],
      related,
    });
    return;
  }
  const fixes = [
    ...renameFixes(analysis.uri, use.place, search.near),
    ...addFixes(context, named, use, search),
  ];
  const [only] = search.near.length === 1 ? search.near : [];
  const like = only === undefined ? undefined : search.known.definitions(named.verb, only)[0];
  const related = like !== undefined ? [placeOf(like, RELATED.nearest)] : bookPlaces(context, boat);
  report(
    named.row,
    use.place,
    { name: use.name, boat, near: search.near, from: undefined },
    { fixes, related },
  );
}

/**
 * Added once, so that mending all of a kind doesn't define a name as often as it is used. A name with an invisible
 * character in it is not what it seems, and none for the book.
 */
function addFixes({ analysis }: CheckContext, named: NamedGear, use: NameUse, search: Search): Fix[] {
  const boat = use.owner?.boat;
  if (boat === undefined || CONTROL.test(use.name)) return [];
  const { text, isSure } = named.stub(use, writtenAs(use));
  const edit = addToBook(analysis, boat, named.verb, text);
  if (edit === undefined) return [];
  const title = isSure ? FIX_TITLES.add(text) : FIX_TITLES.addAndCheck(text);
  return [{ title, edits: [edit], isPreferred: isSure && search.isFirst && search.near.length === 0 }];
}

function bookPlaces({ analysis }: CheckContext, boat: string | undefined): RelatedPlace[] {
  return boat === undefined ? [] : relatedBook(analysis, boat);
}

/** As it is spelled on the line, quotes included. */
function writtenAs({ line, place }: NameUse): string {
  return line.raw.slice(place.start, place.stop);
}

function placeOf(
  { uri, lineIndex, line }: { uri: string; lineIndex: number; line: Parameters<typeof slotPlace>[1] },
  message: string,
): RelatedPlace {
  return { uri, message, ...slotPlace(lineIndex, line) };
}
