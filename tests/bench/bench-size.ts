import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Area, Effort, Row } from "./figures.ts";
import { built, missing, peerBundles, projectFolder } from "./places.ts";

/** The sizes of what is shipped, next to the peers' servers bundled the same way. */
export async function benchSize(_effort: Effort): Promise<Area> {
  const notes: string[] = [];
  // What is loaded whatever is opened; what a day with readings loads besides has rows of its own.
  const server = kilobytes(built.serverProgram);
  const absent = missing(built.serverProgram);
  if (absent) notes.push(absent);
  const packaged = newestPackage();
  if (packaged === undefined) notes.push("not built yet: the packaged extension (npm run package)");
  const rows: Row[] = [
    { measure: "server bundle", unit: "KB", ours: server, goal: { kind: "at-most", bound: 450 } },
    {
      measure: "server bundle",
      unit: "KB",
      ours: server,
      peer: "YAML server",
      theirs: kilobytes(peerBundles.yaml),
    },
    {
      measure: "server bundle",
      unit: "KB",
      ours: server,
      peer: "language workbench (langium)",
      theirs: kilobytes(peerBundles.workbench),
    },
    fetched("for the first trip: water", built.serverWater),
    fetched("for a day with two positions: distances on the earth", built.serverGeodesic),
    fetched("when somebody edits: completion, fixes, names", built.serverEditing),
    fetched("for a line that is not of plain letters: the parser", built.serverGrammar),
    fetched("for a fish or a summary: sun and moon", built.serverLight),
    { measure: "command line bundle", unit: "KB", ours: kilobytes(built.commandLineProgram) },
    {
      measure: "packaged extension",
      unit: "KB",
      ours: packaged === undefined ? undefined : kilobytes(packaged),
      goal: { kind: "at-most", bound: 1024 },
    },
  ];
  return { title: "Size", rows, notes };
}

/** What the server reads from the disk when it is first needed. */
function fetched(measure: string, file: string): Row {
  return { measure: `fetched ${measure}`, unit: "KB", ours: kilobytes(file) };
}

function kilobytes(file: string): number | undefined {
  return existsSync(file) ? statSync(file).size / 1024 : undefined;
}

/** The packaged extension made last, in the project's folder or in dist/. */
function newestPackage(): string | undefined {
  const folders = [projectFolder, join(projectFolder, "dist")].filter((folder) => existsSync(folder));
  const packages = folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((file) => file.endsWith(".vsix"))
      .map((file) => join(folder, file)),
  );
  return packages.toSorted((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)[0];
}
