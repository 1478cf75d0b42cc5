import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type SampleTexts, writeSchema } from "./generate.ts";
import type { ServerSetup } from "./language-client.ts";
import { built, missing, peerBundles, peersFolder, workFolder } from "./places.ts";

/** A server of the bench: how to start it, what it reads, and where in that text somebody types. */
export interface BenchServer extends ServerSetup {
  ours: boolean;
  text: (sample: SampleTexts) => string;
  /** An amount of cable with two digits; a "1" typed before it is beyond what the peers allow. */
  amount: RegExp;
  /** A new line with the first letter of its verb typed, and the column where completion is asked for. */
  typed: { line: string; column: number };
  /** The wait that the server itself adds to every change, ms. */
  fixedWaitMs: number;
}

/** The workspace of the servers: empty, so that none has anything to index. */
export const emptyWorkspace = join(workFolder, "empty-workspace");

/** Our server and its peers. Ours is left out, with a note, while it is not built. */
export function benchServers(notes: string[]): BenchServer[] {
  mkdirSync(emptyWorkspace, { recursive: true });
  const absent = missing(built.server);
  if (absent) notes.push(absent);
  return [...(absent ? [] : [ours]), yamlServer(), workbench];
}

const journal = {
  languageId: "deepwake",
  extension: "trip",
  text: (sample: SampleTexts) => sample.journal,
  amount: /C1 out (?=\d\d ft)/,
  typed: { line: "12:00 s\n", column: 7 },
  fixedWaitMs: 0,
};

const ours: BenchServer = { ...journal, name: "ours", ours: true, args: [built.server] };
const workbench: BenchServer = {
  ...journal,
  name: "language workbench (langium)",
  ours: false,
  args: [peerBundles.workbench],
};

function yamlServer(): BenchServer {
  const schema = join(workFolder, "trips.schema.json");
  writeSchema(schema);
  const schemas = { [pathToFileURL(schema).href]: ["**/.work/**/*.yaml"] };
  const line = '      - { at: "12:00", do: s }\n';
  return {
    name: "YAML server",
    ours: false,
    args: [peerBundles.yaml],
    initializationOptions: { l10nPath: join(peersFolder, "node_modules/yaml-language-server/l10n") },
    languageId: "yaml",
    extension: "yaml",
    settings: {
      yaml: { validate: true, hover: true, completion: true, schemaStore: { enable: false }, schemas },
      "[yaml]": {},
    },
    text: (sample) => sample.yaml,
    amount: /rig: C1, out_ft: (?=\d\d\D)/,
    typed: { line, column: line.indexOf(" }") },
    fixedWaitMs: 200,
  };
}
