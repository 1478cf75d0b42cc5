/** The let-out table for the rigs of a trip as they are set at a line, at the speed of that line. */
import { createDepthMemo } from "../analysis/depth-memo.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { letOutColumns } from "../analysis/let-out-columns.ts";
import { linesOfTrip } from "../analysis/lines-to-set.ts";
import { usualDepths } from "../analysis/usual-depths.ts";
import { waterAtLine } from "../analysis/water-at-line.ts";
import { inStream } from "../analysis/without-depth.ts";
import { clockWords, lengthWords, speedWords } from "../model/figures.ts";
import { letOutMarkdown } from "../reports/let-out-markdown.ts";
import { LET_OUT_TITLE, letOutTable } from "../reports/let-out-table.ts";
import type { Snapshot } from "./snapshot.ts";

/** The command's name, for `workspace/executeCommand` with a document's URI and a line number from 0. */
export const LET_OUT_COMMAND = "deepwake.letOutMarkdown";

/** The table as Markdown, or a sentence that says why there is none. */
export function letOutMarkdownAt(snapshot: Snapshot, lineIndex: number): string {
  const day = snapshot.tripAt(lineIndex) ?? snapshot.analysis.trips[0];
  if (day === undefined) return none("There is no trip in this file.");
  const here = waterAtLine(day, lineIndex);
  if (here === undefined)
    return none("No speed is known at this line: write a probe, surface or gps line with a speed above it.");
  const { gear } = day.trip;
  const lines = linesOfTrip(day.trip, day.timeline, lineIndex);
  if (lines.length === 0) return none(`The gear book has no rigs of ${day.trip.boat}.`);
  const depthsM = usualDepths(gear, here.waterM);
  const columns = letOutColumns(lines, depthsM, () => inStream(here.speed, here.tempC), createDepthMemo());
  return letOutMarkdown(letOutTable(gear, depthsM, columns, facts(day, here)));
}

const none = (why: string): string => `# ${LET_OUT_TITLE}\n\n${why}\n`;

type Here = NonNullable<ReturnType<typeof waterAtLine>>;

function facts({ trip }: TripAnalysis, { speed, timeMs }: Here): string[] {
  const { gear, boat, date, zone } = trip;
  const { value, onTop, rig, source, byCurrent } = speed;
  const where =
    byCurrent !== undefined
      ? `at ${lengthWords(gear, byCurrent.depthM)} by the current`
      : source === "probe"
        ? `at ${rig === undefined ? "the" : `${rig}'s`} probe`
        : source === "gps"
          ? "over ground"
          : "on top";
  const top = onTop === undefined ? "" : `, ${speedWords(gear, onTop.value)} on top`;
  return [
    `${boat}, ${date}, rigged as at ${clockWords(timeMs, zone)}.`,
    `${speedWords(gear, value)} ${where}${top}.`,
  ];
}
