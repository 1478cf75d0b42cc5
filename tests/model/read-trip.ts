/** Reads a trip of a small boat as the model sees it. */
import { parse } from "../../grammar/parse.ts";
import type { BookFile } from "../../server/model/gear-lines.ts";
import { gearResolver, type Trip } from "../../server/model/trip.ts";
import { tripsOf } from "../../server/model/trips-of.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
rig P1 downrigger port cable rigger-wire ball round-12
rig P1U stacked P1
rig S1 downrigger starboard cable rigger-wire ball round-12
rig J1 jig
rig TW flat rods 2
`;

/** A file as the model takes it. */
export function bookFile(uri: string, text: string): BookFile {
  return { uri, parse: parse(text) };
}

/** A day's lines, with the trip opened above them. Throws when a line can't be read. */
export function readTrip(lines: string, date = "2031-06-21", book = BOOK): Trip {
  const file = bookFile("file:///day.trip", `trip ${date} "Bright Penny"\n${lines}`);
  const issue = file.parse.issues.find((one) => one !== null);
  if (issue !== undefined) throw new Error(`an issue in ${lines}: ${JSON.stringify(issue)}`);
  const [trip] = tripsOf(file.uri, file.parse, gearResolver([file, bookFile("file:///boat.gear", book)]));
  if (trip === undefined) throw new Error("no trip");
  return trip;
}
