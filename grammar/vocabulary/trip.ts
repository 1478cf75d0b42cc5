/** The `trip` opener and the properties under it. */
import { clock, flag, line, name, slot, type VerbRow } from "./rows.ts";

const remark = name("remark", "text", "A remark in quotes.", { bare: true });
const kind = (word: string, doc: string) => flag(word, doc, { group: "kind" });

/** Rows of the `trip` opener and its properties. */
export const TRIP_ROWS: readonly VerbRow[] = [
  line(
    "opener",
    "trip",
    [slot("date", "date"), slot("boat", "boat")],
    [
      kind("charter", "With paying guests."),
      kind("private", "Without paying guests."),
      kind("tournament", "In a tournament."),
      flag("shared", "Meant to be shown to others: no positions, spots or private guests in it."),
      remark,
    ],
    "Opens a trip: its day and its boat. Properties follow, indented; events follow at the margin.",
    'trip 2031-06-21 "Bright Penny" charter',
  ),
  line(
    "trip",
    "harbor",
    [slot("harbor", "place")],
    [remark],
    "The harbor left from.",
    'harbor "Hollis Point"',
    {
      aliases: "harbour",
    },
  ),
  line(
    "trip",
    "grid",
    [slot("grid", "place")],
    [],
    "A statistical grid fished, as the agency numbers them.",
    "grid 0715",
  ),
  line(
    "trip",
    "zone",
    [slot("time zone", "zone")],
    [],
    "Time zone of this trip's clock.",
    "zone America/Detroit",
  ),
  line("trip", "captain", [slot("name", "guest")], [], "Who ran the boat.", 'captain "Nell Ostrander"'),
  line("trip", "mate", [slot("name", "guest")], [], "Who worked the deck.", "mate Dov"),
  line("trip", "anglers", [slot("count", "count")], [], "How many people fished.", "anglers 6"),
  line(
    "trip",
    "guest",
    [slot("guest id", "guest")],
    [
      name("named", "text", "The guest's name.", { bare: true }),
      flag("private", "Stays out of any shared copy."),
    ],
    "A guest: a short id for the lines, and a name.",
    'guest G1 "Marv Tessler" private',
  ),
  line(
    "trip",
    "target",
    [slot("species", "species")],
    [],
    "A species the day was meant for.",
    "target lake-trout",
  ),
  line(
    "trip",
    "method",
    [],
    [
      flag("shallow", "Long leads on short cables: setbacks longer than the cable are meant.", {
        group: "kind",
      }),
      flag("deep", "On or near the bottom.", { group: "kind" }),
      remark,
    ],
    "How the day was fished.",
    "method shallow",
  ),
  line(
    "trip",
    "event",
    [slot("event name", "text")],
    [remark],
    "The tournament or event.",
    'event "Two Lights Open"',
  ),
  line(
    "trip",
    "official",
    [],
    [clock("between", "First and last official minute.", { range: true, bare: true })],
    "Official fishing hours.",
    "official 06:00 to 13:00",
    { needs: "between" },
  ),
  line(
    "trip",
    "scales-close",
    [],
    [clock("by", "The last minute.", { bare: true })],
    "When the scales close.",
    "scales-close 15:00",
    { needs: "by" },
  ),
  line(
    "trip",
    "canceled",
    [],
    [remark],
    "The trip did not go out, and why.",
    'canceled "small craft advisory"',
    {
      aliases: "cancelled",
    },
  ),
];
