/** `deepwake summary`: each trip in figures. */
import type { TripAnalysis } from "../../../server/analysis/journal-analysis.ts";
import { TRIP_ENDING } from "../../../server/files/find-books.ts";
import { SUMMARY_CAUTION, summarySentences } from "../../../server/reports/summary-sentences.ts";
import { complain } from "../complain.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import { guardFile } from "../guard-file.ts";
import { JournalReader } from "../journals.ts";
import type { SummaryFileJson } from "../output-schemas.ts";
import { askedFor } from "../paths.ts";
import { printable } from "../render/printable.ts";
import { type Paint, paintFor, widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import { tripHeading } from "../trip-heading.ts";
import { type Call, INPUT_OPTIONS, type Verb } from "../verb.ts";
import type { World } from "../world.ts";
import { tripSummaryJson } from "./summary-json.ts";

export const SUMMARY: Verb = {
  name: "summary",
  summary: "each trip in figures: hours, fish, catch per rod-hour",
  usage: ["summary [TRIP or FOLDER]..."],
  about: [
    "Hours, rod-hours, fish kept and released, bites, catch per rod-hour with the range that would fit as well, speeds, temperatures and the depths that caught.",
    "Without a path it is the folder you are in.",
  ],
  options: INPUT_OPTIONS,
  examples: [
    ["deepwake summary trips/2031-06-21.trip", "one day"],
    ["deepwake summary --json trips", "a season's trips for another program"],
  ],
  run: summaryVerb,
};

async function summaryVerb(call: Call, world: World): Promise<ExitCode> {
  const found = askedFor(call, [TRIP_ENDING], world);
  const isJson = call.switches.has("json");
  const look = { width: widthOf(world.out), paint: await paintFor(world, call) };
  const reader = new JournalReader(world);
  const unusable = [...found.unusable];
  const lines: string[] = [];
  const files: SummaryFileJson[] = [];
  for await (const read of reader.readAll(found.files)) {
    const { shown } = read.file;
    const done = guardFile(() => {
      if (!read.ok) unusable.push({ shown, why: read.why });
      else if (isJson) files.push({ path: shown, trips: read.analysis.trips.map(tripSummaryJson) });
      else for (const line of fileLines(shown, read.analysis.trips, look)) lines.push(line);
    });
    if (!done.ok) unusable.push({ shown, why: done.why });
  }
  unusable.push(...reader.unreadBooks(found.files));
  for (const { shown, why } of unusable) complain(world, `${shown} can't be used: ${why}`);
  files.push(...unusable.map(({ shown, why }) => ({ path: shown, trips: [], error: why })));
  if (isJson) world.out.write(envelopeText("summary", world, { caution: SUMMARY_CAUTION, files }));
  else if (lines.length > 0)
    world.out.write([...lines, ...wrap(SUMMARY_CAUTION, look.width)].map((line) => `${line}\n`).join(""));
  return unusable.length > 0 ? UNUSABLE : FINE;
}

interface Look {
  readonly width: number;
  readonly paint: Paint;
}

function fileLines(shown: string, trips: readonly TripAnalysis[], look: Look): string[] {
  if (trips.length === 0) return [`${printable(shown)}: no trip in it.`, ""];
  return trips.flatMap((day) => [
    ...tripHeading(shown, day, look.width, look.paint),
    ...summarySentences(day).flatMap((sentence) => wrap(`  ${printable(sentence)}`, look.width, 4)),
    "",
  ]);
}
