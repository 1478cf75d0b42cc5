import { isRead } from "../../grammar/is-read.ts";
import { quote } from "../../grammar/print.ts";
import { fileGear } from "../model/gear-lines.ts";
import { lineEnd } from "./add-to-book.ts";
import { CONTROL } from "./bidi-control.ts";
import { UNKNOWN_BOAT } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Rule } from "./check.ts";
import { insert, replace, writtenName } from "./edits.ts";
import { nearest } from "./nearest.ts";
import { type Owner, ownersOf } from "./owners.ts";
import { slotPlace } from "./places.ts";

/** Flags a trip whose boat no book describes: once for each trip, and its names and units are left alone. */
export const unknownBoat: Rule = (context) => {
  const boats = context.analysis.files.flatMap((file) => fileGear(file).boats.map((opener) => opener.boat));
  const known = new Set(boats);
  const nearOf = new Map<string, readonly string[]>();
  for (const owner of ownersOf(context.analysis)) {
    if (owner.isDescribed || owner.trip === undefined || owner.boat === "") continue;
    if (isCutShort(context, owner, known)) continue;
    const near = nearOf.get(owner.boat) ?? nearest(owner.boat, known);
    reportTrip(context, owner, near, !nearOf.has(owner.boat));
    nearOf.set(owner.boat, near);
  }
};

/**
 * True where the name goes on behind the word that was read, without quotes: what is told there is the whole mistake.
 * It does where a capital follows, or what makes it a boat of the books.
 */
function isCutShort(
  { analysis: { parse } }: CheckContext,
  { boat, openerIndex }: Owner,
  known: ReadonlySet<string>,
): boolean {
  const issue = parse.issues[openerIndex];
  const line = parse.journal.lines[openerIndex];
  if (issue?.code !== "unknown-word" || issue.role !== "item" || line === undefined || !isRead(line))
    return false;
  const slot = line.slots[1];
  if (slot === undefined || slot.quoted || line.raw.slice(slot.stop, issue.span[0]).trim() !== "")
    return false;
  if (/^\p{Lu}/u.test(issue.word)) return true;
  const soFar = `${boat} ${issue.word}`.toLowerCase();
  return [...known].some((name) => name.toLowerCase().startsWith(soFar));
}

function reportTrip(
  { analysis, report }: CheckContext,
  { boat, trip, openerIndex }: Owner,
  near: readonly string[],
  isFirst: boolean,
): void {
  const [own] = analysis.files;
  if (trip === undefined || own === undefined) return;
  const place = slotPlace(openerIndex, trip.trip.opener, 1);
  const renames = near.map((name) => ({
    title: FIX_TITLES.change(quote(name)),
    edits: [replace(analysis.uri, place, writtenName(name))],
    isPreferred: near.length === 1,
  }));
  const opener = `boat ${writtenName(boat)}`;
  const edit = insert(analysis.uri, openerIndex, 0, `${opener}${lineEnd(own, openerIndex).repeat(2)}`);
  const open = {
    title: FIX_TITLES.addBoat(opener),
    edits: [edit],
    isPreferred: isFirst && near.length === 0,
  };
  const opens = CONTROL.test(boat) ? [] : [open];
  report(UNKNOWN_BOAT, place, { boat, near }, { fixes: [...renames, ...opens] });
}
