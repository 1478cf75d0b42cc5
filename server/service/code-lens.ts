/** Over each trip: what the day came to, in a few words, and the let-out table. Their words are made when asked for. */
import type { CodeLens } from "vscode-languageserver-types";
import { tripInBrief } from "../reports/trip-in-brief.ts";
import type { Snapshot } from "./snapshot.ts";

/** The editor's command that opens the let-out table for a document's URI and a line number from 0. */
export const LET_OUT_TABLE_COMMAND = "deepwake.letOutTable";

/** What a lens carries so that its words can be made later. */
interface LensData {
  readonly uri: string;
  readonly line: number;
  readonly of: "summary" | "let-out";
}

/** A lens that only says something calls no command. */
const NO_COMMAND = "";

/** Lenses over the openers of trips. The table's is there only for a client that has the command. */
export function codeLenses(snapshot: Snapshot, commands: ReadonlySet<string>): CodeLens[] {
  return snapshot.analysis.trips.flatMap(({ trip }) => {
    const line = trip.openerIndex;
    const range = { start: { line, character: 0 }, end: { line, character: trip.opener.raw.length } };
    const lensOf = (of: LensData["of"]): CodeLens => ({
      range,
      data: { uri: snapshot.uri, line, of } satisfies LensData,
    });
    const hasTable = trip.gear.rigs.size > 0 && commands.has(LET_OUT_TABLE_COMMAND);
    return [lensOf("summary"), ...(hasTable ? [lensOf("let-out")] : [])];
  });
}

/** A lens with its words; as it was where its trip is gone. */
export function resolveCodeLens(snapshot: Snapshot, lens: CodeLens): CodeLens {
  const { uri, line, of }: LensData = lens.data;
  const day = snapshot.analysis.trips.find(({ trip }) => trip.openerIndex === line);
  if (day === undefined) return lens;
  const command =
    of === "summary"
      ? { title: tripInBrief(day.trip.gear, day.summary), command: NO_COMMAND }
      : { title: "Let-out table", command: LET_OUT_TABLE_COMMAND, arguments: [uri, line] };
  return { ...lens, command };
}
