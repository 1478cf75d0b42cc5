/** The last value of each attribute on a rig before a line, as it was written: the best guess for the next one. */
import type { ReadLine } from "../../grammar/journal.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { matchMaybe } from "../model/match-name.ts";
import { slotName } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import type { Snapshot } from "./snapshot.ts";

/** How many times back that the rig was set to look: what it had before that is no guess for today. */
const MOST_SETS = 8;
const CARRIED = new Set(["out", "setback", "lure", "above", "dial", "board", "leader", "flasher", "slider"]);

/** Values by attribute, canonically written; empty for lines without a rig. */
export function lastValues(
  snapshot: Snapshot,
  lineIndex: number,
  line: ReadLine,
): ReadonlyMap<string, string> {
  return valuesOnRig(snapshot, lineIndex, slotName(line));
}

/** All of them in one line's words: `out 72 ft setback 15 ft`; empty for a rig that was never set. */
export function lastSetting(snapshot: Snapshot, lineIndex: number, rig: string): string {
  return [...valuesOnRig(snapshot, lineIndex, rig)].map(([word, value]) => `${word} ${value}`).join(" ");
}

function valuesOnRig(
  snapshot: Snapshot,
  lineIndex: number,
  written: string | undefined,
): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  const day = snapshot.tripAt(lineIndex);
  const rig = matchMaybe(day?.trip.gear.rigs ?? new Map(), written);
  if (day === undefined || rig === undefined) return values;
  let sets = 0;
  for (const { line: other } of linesUpward(snapshot, day.trip, rig, lineIndex)) {
    for (const item of other.items) {
      if (CARRIED.has(item.word) && !values.has(item.word))
        values.set(item.word, valueText(other, item.word));
    }
    if (other.verb === "set") sets++;
    if (sets === MOST_SETS) break;
  }
  return values;
}

/** The lines of a rig above a line, from the last one up, through the boat's earlier trips in the file. */
function* linesUpward(snapshot: Snapshot, own: Trip, rig: string, lineIndex: number): Generator<TripEvent> {
  const { trips } = snapshot.analysis;
  for (let at = trips.findLastIndex(({ trip }) => trip === own); at >= 0; at--) {
    const trip = trips[at]?.trip;
    if (trip === undefined || trip.boat !== own.boat) continue;
    const lines = linesByRig(trip).get(rig) ?? [];
    for (let n = lines.length - 1; n >= 0; n--) {
      const event = lines[n];
      if (event !== undefined && event.lineIndex < lineIndex) yield event;
    }
  }
}

const knownLines = new WeakMap<Trip, ReadonlyMap<string, readonly TripEvent[]>>();

/** A trip's lines by rig, kept for as long as the trip is the same. */
function linesByRig(trip: Trip): ReadonlyMap<string, readonly TripEvent[]> {
  const known = knownLines.get(trip);
  if (known !== undefined) return known;
  const lines = new Map<string, TripEvent[]>();
  for (const event of trip.events) {
    const own = lines.get(event.rig ?? "");
    if (own === undefined) lines.set(event.rig ?? "", [event]);
    else own.push(event);
  }
  knownLines.set(trip, lines);
  return lines;
}

/** The attribute's value alone, in canonical form. */
function valueText(line: ReadLine, word: string): string {
  const items = line.items.filter((item) => item.word === word).map((item) => ({ ...item, bare: true }));
  const alone = { ...line, kind: "fact" as const, date: null, clock: null, slots: [], items, comment: null };
  return canonicalLine(alone).slice(line.verb.length + 1);
}
