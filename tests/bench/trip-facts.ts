/**
 * What the bench's invented trips are made of, before they are written in one peer's format or another.
 * A trip is a list of events; an event is a verb, perhaps a rig, and items that every format can spell.
 */

/** One thing said on an event line. The key names it in the keyed formats, the word in the journal. */
export type Item =
  | { kind: "measure"; key: string; word?: string; value: number; unit: string }
  | { kind: "range"; key: string; word: string; low: number; high: number; unit: string }
  | { kind: "number"; key: string; word: string; value: number }
  | { kind: "name"; key: string; word?: string; value: string }
  | { kind: "text"; key: string; word?: string; value: string }
  | { kind: "flag"; key: string }
  | { kind: "position"; latitude: number; longitude: number }
  | { kind: "profile"; points: readonly { depthFt: number; tempF: number }[] };

/** One event of a trip, at a minute of its day. */
export interface TripEvent {
  minute: number;
  verb: string;
  rig?: string;
  items: readonly Item[];
}

/** One trip: its day, how many fished, and what happened in the order of time. */
export interface Trip {
  date: string;
  harbor: string;
  anglers: number;
  targets: readonly string[];
  events: readonly TripEvent[];
}

/** A measured item, with its word before it or (no word) read by its unit. */
export function measure(word: string, value: number, unit: string): Item {
  return { kind: "measure", key: word, word, value, unit };
}

/** A named item such as a lure. */
export function name(word: string, value: string): Item {
  return { kind: "name", key: word, word, value };
}

/** The clock of a minute of the day, `05:07`. */
export function clockOf(minute: number): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** The day of the trip with this number: a hundred days from mid-May, then the next year's. */
export function dateOf(index: number): string {
  const day = new Date(Date.UTC(2014 + Math.floor(index / 100), 4, 15 + (index % 100)));
  return day.toISOString().slice(0, 10);
}

/** The boat whose trips these are. */
export const boatName = "Bright Penny";

/** Lures of the gear book: name, kind, length in inches. */
export const lures = [
  ["glow-spoon", "spoon", 4],
  ["mini-spoon", "spoon", 2.5],
  ["green-spoon", "spoon", 4],
  ["white-fly", "fly", 2.5],
  ["green-fly", "fly", 3],
  ["barred-plug", "plug", 4.5],
] as const;

/** Rigs of the gear book, as the journal spells their definitions. */
export const rigs = {
  P1: "downrigger port cable rigger-wire ball round-12 boom 4 ft release 2 ft",
  C1: "downrigger center cable rigger-wire ball round-12 probe 1.25 ft",
  S1: "downrigger starboard cable rigger-braid ball round-12",
  PB: "leadcore port board 90 ft leader 30 ft holds 10 colors",
  SD: "diver starboard cable diver-wire dial 2",
} as const;

/** The name of a rig of the gear book. */
export type RigName = keyof typeof rigs;

/** The boat's gear book in the journal's own syntax. */
export function gearBook(): string {
  return [
    `boat "${boatName}"`,
    "  units ft mph F lb in",
    "  water fresh",
    "  zone America/Detroit",
    "  sounder 2 ft",
    "  rods-per-angler 3",
    "",
    "cable rigger-wire steel diameter 0.9 mm",
    "cable rigger-braid braid diameter 0.6 mm",
    "cable diver-wire steel diameter 0.53 mm",
    "ball round-12 sphere 12 lb",
    ...lures.map(([lure, kind, inches]) => `lure ${lure} ${kind} ${inches} in`),
    "",
    ...Object.entries(rigs).map(([rig, definition]) => `rig ${rig} ${definition}`),
    "",
    "nickname king chinook",
    "band chinook 45 to 52 F",
    "limit salmon-trout per-angler 5",
    "",
  ].join("\n");
}
