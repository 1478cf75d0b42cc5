/** Makes the record of a file from what was read of it. */
import type { Parse } from "../../grammar/parse.ts";
import { namedPlaces } from "../model/named-places.ts";
import { slotName } from "../model/quantities.ts";
import type { FileRecord, TripHeading } from "./index-view.ts";

const recordOfParse = new WeakMap<Parse, FileRecord>();

/** The record of one file; the very same while its parse is. */
export function fileRecord(uri: string, parse: Parse): FileRecord {
  const known = recordOfParse.get(parse);
  if (known?.uri === uri) return known;
  const places = namedPlaces(parse);
  const boats = new Set(places.flatMap(({ kind, name }) => (kind === "boat" ? [name] : [])));
  const kind = uri.toLowerCase().endsWith(".gear") ? "gear" : "trip";
  const record: FileRecord = { uri, kind, boats: [...boats], places, trips: tripHeadings(parse) };
  recordOfParse.set(parse, record);
  return record;
}

function tripHeadings(parse: Parse): TripHeading[] {
  const trips: TripHeading[] = [];
  parse.journal.lines.forEach((line, lineIndex) => {
    if (line.kind === "fact" && line.verb === "trip") {
      trips.push({ lineIndex, date: slotName(line) ?? "", boat: slotName(line, 1) ?? "", harbor: null });
    } else if (line.kind === "property" && line.verb === "harbor") {
      const trip = trips.at(-1);
      if (trip !== undefined) trips.splice(-1, 1, { ...trip, harbor: slotName(line) ?? null });
    }
  });
  return trips;
}
