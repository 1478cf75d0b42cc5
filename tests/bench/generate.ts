import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { keyedSchema } from "./keyed-schema.ts";
import { linesPerTrip, makeTrip } from "./make-trip.ts";
import { gearBook, type Trip } from "./trip-facts.ts";
import { journalText, tripText } from "./write-journal.ts";
import { keyedDocument, yamlBlock, yamlFlow } from "./write-keyed.ts";

/** The sizes that the bench measures, in event lines of one file; the longer ones hold many trips. */
export const sizes = [150, 5000, 15000] as const;

/** One size's events in every format. */
export interface SampleTexts {
  events: number;
  journal: string;
  yaml: string;
  yamlBlock: string;
  json: string;
}

/** The same seeded events in every format. */
export function sampleTexts(size: number): SampleTexts {
  const trips = Array.from({ length: Math.max(1, Math.round(size / linesPerTrip)) }, (_, index) =>
    makeTrip(index),
  );
  return {
    events: trips.reduce((sum, trip) => sum + trip.events.length, 0),
    journal: journalText(trips),
    yaml: yamlFlow(trips),
    yamlBlock: yamlBlock(trips),
    json: JSON.stringify(keyedDocument(trips)),
  };
}

/** Writes a folder of trips, a file each, with the gear book beside them; the folder is emptied first. */
export function writeTripFolder(folder: string, count: number): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "bright-penny.gear"), gearBook());
  for (let index = 0; index < count; index += 1) {
    const trip: Trip = makeTrip(index);
    writeFileSync(join(folder, `${trip.date}.trip`), tripText(trip));
  }
}

/** Writes the schema that types and bounds the YAML peer's data. */
export function writeSchema(file: string): void {
  writeFileSync(file, JSON.stringify(keyedSchema, null, 2));
}
