/** `deepwake depth TRIP…`: every set, move and again line of trips, and every change that alters a depth. */
import type { JournalAnalysis } from "../../../server/analysis/journal-analysis.ts";
import { TRIP_ENDING } from "../../../server/files/find-books.ts";
import { DEPTH_CAUTION } from "../../../server/reports/depth-sentences.ts";
import { complain } from "../complain.ts";
import { depthLineJson, shownDepths } from "../depth-lines.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import { guardFile } from "../guard-file.ts";
import { JournalReader } from "../journals.ts";
import type { DepthFileJson } from "../output-schemas.ts";
import { askedFor } from "../paths.ts";
import { paintFor, widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import type { Call } from "../verb.ts";
import type { World } from "../world.ts";
import { type Look, tripDepthLines } from "./depth-text.ts";

/** Prints the depths of the named trips. */
export async function depthOfTrips(call: Call, world: World): Promise<ExitCode> {
  const found = askedFor(call, [TRIP_ENDING], world);
  const isJson = call.switches.has("json");
  const look = { width: widthOf(world.out), paint: await paintFor(world, call) };
  const reader = new JournalReader(world);
  const unusable = [...found.unusable];
  const texts: string[][] = [];
  const files: DepthFileJson[] = [];
  for await (const read of reader.readAll(found.files)) {
    const { shown } = read.file;
    const done = guardFile(() => {
      if (!read.ok) unusable.push({ shown, why: read.why });
      else if (isJson) files.push(depthFileJson(shown, read.analysis));
      else texts.push(fileText(shown, read.analysis, look));
    });
    if (!done.ok) unusable.push({ shown, why: done.why });
  }
  unusable.push(...reader.unreadBooks(found.files));
  for (const { shown, why } of unusable) complain(world, `${shown} can't be used: ${why}`);
  files.push(...unusable.map(({ shown, why }) => ({ path: shown, lines: [], error: why })));
  if (isJson) world.out.write(envelopeText("depth", world, { caution: DEPTH_CAUTION, files }));
  else if (texts.length > 0) world.out.write(withCaution(texts, widthOf(world.out)));
  return unusable.length > 0 ? UNUSABLE : FINE;
}

function depthFileJson(path: string, { trips }: JournalAnalysis): DepthFileJson {
  return { path, lines: trips.flatMap((day) => shownDepths(day).map((depth) => depthLineJson(day, depth))) };
}

function fileText(shown: string, { trips }: JournalAnalysis, look: Look): string[] {
  if (trips.length === 0) return [`${shown}: no trip in it.`, ""];
  return trips.flatMap((day) => [...tripDepthLines(shown, day, look), ""]);
}

function withCaution(texts: readonly string[][], width: number): string {
  return [...texts.flat(), ...wrap(DEPTH_CAUTION, width)].map((line) => `${line}\n`).join("");
}
