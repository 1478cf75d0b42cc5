/** Reads the trips of a file; a trip whose lines did not change is the very same as before. */
import { isRead } from "../../grammar/is-read.ts";
import type { FactLine, Line } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { kindDefined } from "./gear-lines.ts";
import type { Gear } from "./gear-types.ts";
import { type Instant, resolveInstant } from "./local-time.ts";
import { matchName } from "./match-name.ts";
import { slotName } from "./quantities.ts";
import { type GearResolver, RIG_VERBS, rigWord, type Trip, type TripEvent } from "./trip.ts";

/** Boats and gear may stand in a trip's file; they are no events of the trip. */
const isGear = (verb: string): boolean => verb === "boat" || kindDefined(verb) !== undefined;

/** The trips as they were made last, by the opener's line, which lasts for as long as nothing is typed into it. */
const knownTrips = new WeakMap<FactLine, Trip>();

/**
 * Every trip of a file, in order. Lines before the first opener belong to none. The very same trip comes back while
 * its lines, their numbers and its gear are the very same, so that what was computed from it can be kept.
 */
export function tripsOf(uri: string, parse: Parse, gearOf: GearResolver): Trip[] {
  const { lines } = parse.journal;
  const openers: number[] = [];
  for (let index = 0; index < lines.length; index++) {
    const line = lines[index];
    if (line?.kind === "fact" && line.verb === "trip") openers.push(index);
  }
  return openers.flatMap((openerIndex, n) => {
    const opener = lines[openerIndex];
    if (opener?.kind !== "fact") return [];
    const stopIndex = openers[n + 1] ?? lines.length;
    return [tripFrom(uri, { opener, openerIndex }, { all: lines, stopIndex }, gearOf)];
  });
}

function tripFrom(uri: string, place: TripPlace, { all, stopIndex }: LinesUpTo, gearOf: GearResolver): Trip {
  const date = slotName(place.opener) ?? "";
  const boat = slotName(place.opener, 1) ?? "";
  const gear = gearOf(boat, date);
  const known = knownTrips.get(place.opener);
  const { openerIndex } = place;
  const isSame =
    known?.uri === uri &&
    known.gear === gear &&
    known.openerIndex === openerIndex &&
    areLines(known.lines, all, openerIndex, stopIndex);
  if (isSame) return known;
  const lines = all.slice(openerIndex, stopIndex);
  const trip = { uri, ...place, lines, date, boat, gear, ...readTrip(openerIndex, lines, date, gear) };
  knownTrips.set(place.opener, trip);
  return trip;
}

interface TripPlace {
  readonly opener: FactLine;
  readonly openerIndex: number;
}

/** The lines of a file, and where those of a trip end: the first that is none of them. */
interface LinesUpTo {
  readonly all: readonly Line[];
  readonly stopIndex: number;
}

/** True for the very same lines. */
function areLines(before: readonly Line[], all: readonly Line[], start: number, stop: number): boolean {
  if (before.length !== stop - start) return false;
  for (let index = 0; index < before.length; index++) if (before[index] !== all[start + index]) return false;
  return true;
}

function readTrip(
  openerIndex: number,
  lines: readonly Line[],
  date: string,
  gear: Gear,
): Pick<Trip, "properties" | "events" | "zone" | "unreadLines" | "holdsGear"> {
  const properties: Trip["properties"][number][] = [];
  const facts: { lineIndex: number; line: FactLine }[] = [];
  let holdsGear = false;
  lines.forEach((line, index) => {
    const lineIndex = openerIndex + index;
    if (line.kind === "property" && line.block === "trip") properties.push({ lineIndex, line });
    else if (line.kind === "fact" && isGear(line.verb)) holdsGear = true;
    else if (line.kind === "fact" && index > 0) facts.push({ lineIndex, line });
  });
  const zoneLine = properties.find((property) => property.line.verb === "zone");
  const zone = (zoneLine === undefined ? undefined : slotName(zoneLine.line)) ?? gear.zone;
  const day = { date, zone, gear };
  const events = facts.map(({ lineIndex, line }) => eventKept(lineIndex, line, day));
  return { properties, events, zone, unreadLines: lines.filter(isUnread).length, holdsGear };
}

/** What an event is read from besides its line. */
interface Day {
  readonly date: string;
  readonly zone: string | undefined;
  readonly gear: Gear;
}

const knownEvents = new WeakMap<FactLine, { readonly day: Day; readonly event: TripEvent }>();

/** The very same event while its line, number, date, zone and gear are the same, so that what leans on it can be kept. */
function eventKept(lineIndex: number, line: FactLine, day: Day): TripEvent {
  const known = knownEvents.get(line);
  if (known !== undefined && isSameDay(known.day, day)) {
    if (known.event.lineIndex === lineIndex) return known.event;
    const event = { ...known.event, lineIndex };
    knownEvents.set(line, { day: known.day, event });
    return event;
  }
  const event = {
    lineIndex,
    line,
    instant: instantOf(line, day.date, day.zone),
    rig: RIG_VERBS.has(line.verb) ? rigMeant(day.gear, line) : undefined,
  };
  knownEvents.set(line, { day, event });
  return event;
}

function isSameDay(one: Day, other: Day): boolean {
  return one.gear === other.gear && one.date === other.date && one.zone === other.zone;
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

/** A rig as the book writes it, or a word that stands for all or for none. */
function rigMeant({ rigs }: Gear, line: FactLine): string | undefined {
  const written = slotName(line);
  if (written === undefined) return undefined;
  const meant = matchName(rigs, written);
  return rigs.has(meant) ? meant : (rigWord(written, line.verb) ?? written);
}
