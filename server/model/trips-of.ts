/** Reads the trips of a file; a trip whose lines did not change is the very same as before. */
import { isRead } from "../../grammar/is-read.ts";
import type { FactLine, Line } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { kindDefined } from "./gear-lines.ts";
import type { Gear } from "./gear-types.ts";
import { type Instant, resolveInstant } from "./local-time.ts";
import { matchMaybe } from "./match-name.ts";
import { slotName } from "./quantities.ts";
import { type GearResolver, RIG_VERBS, type Trip } from "./trip.ts";

/** Boats and gear may stand in a trip's file; they are no events of the trip. */
const isGear = (verb: string): boolean => verb === "boat" || kindDefined(verb) !== undefined;

/** A trip as it was made last, and from which lines. */
interface KnownTrip {
  readonly lines: readonly Line[];
  readonly trip: Trip;
}

/** By the opener's line, which lasts for as long as nothing is typed into it. */
const knownTrips = new WeakMap<FactLine, KnownTrip>();

/**
 * Every trip of a file, in order. Lines before the first opener belong to none. The very same trip comes back while
 * its lines, their numbers and its gear are the very same, so that what was computed from it can be kept.
 */
export function tripsOf(uri: string, parse: Parse, gearOf: GearResolver): Trip[] {
  const { lines } = parse.journal;
  const openers = lines.flatMap((line, index) =>
    line.kind === "fact" && line.verb === "trip" ? [index] : [],
  );
  return openers.flatMap((openerIndex, n) => {
    const opener = lines[openerIndex];
    if (opener?.kind !== "fact") return [];
    return [tripFrom(uri, { opener, openerIndex }, lines.slice(openerIndex, openers[n + 1]), gearOf)];
  });
}

function tripFrom(uri: string, place: TripPlace, lines: readonly Line[], gearOf: GearResolver): Trip {
  const date = slotName(place.opener) ?? "";
  const boat = slotName(place.opener, 1) ?? "";
  const gear = gearOf(boat, date);
  const known = knownTrips.get(place.opener);
  if (known !== undefined && isSameTrip(known, uri, place.openerIndex, gear, lines)) return known.trip;
  const trip = { uri, ...place, date, boat, gear, ...readTrip(place.openerIndex, lines, date, gear) };
  knownTrips.set(place.opener, { lines, trip });
  return trip;
}

interface TripPlace {
  readonly opener: FactLine;
  readonly openerIndex: number;
}

function isSameTrip(
  { trip, lines: before }: KnownTrip,
  uri: string,
  openerIndex: number,
  gear: Gear,
  lines: readonly Line[],
): boolean {
  if (trip.uri !== uri || trip.openerIndex !== openerIndex || trip.gear !== gear) return false;
  return before.length === lines.length && before.every((line, index) => line === lines[index]);
}

function readTrip(
  openerIndex: number,
  lines: readonly Line[],
  date: string,
  gear: Gear,
): Pick<Trip, "properties" | "events" | "zone" | "unreadLines"> {
  const properties: Trip["properties"][number][] = [];
  const facts: { lineIndex: number; line: FactLine }[] = [];
  lines.forEach((line, index) => {
    const lineIndex = openerIndex + index;
    if (line.kind === "property" && line.block === "trip") properties.push({ lineIndex, line });
    else if (line.kind === "fact" && index > 0 && !isGear(line.verb)) facts.push({ lineIndex, line });
  });
  const zoneLine = properties.find((property) => property.line.verb === "zone");
  const zone = (zoneLine === undefined ? undefined : slotName(zoneLine.line)) ?? gear.zone;
  const events = facts.map(({ lineIndex, line }) => ({
    lineIndex,
    line,
    instant: instantOf(line, date, zone),
    rig: RIG_VERBS.has(line.verb) ? matchMaybe(gear.rigs, slotName(line)) : undefined,
  }));
  return { properties, events, zone, unreadLines: lines.filter(isUnread).length };
}

function isUnread(line: Line): boolean {
  if (line.kind === "unreadable") return true;
  return isRead(line) && line.items.some(({ value }) => value.kind === "unread");
}

function instantOf(line: FactLine, tripDate: string, zone: string | undefined): Instant | null {
  if (line.clock === null) return null;
  const instant = resolveInstant(line.date ?? tripDate, line.clock, line.offset, zone);
  return Number.isFinite(instant.utcMs) ? instant : null;
}
