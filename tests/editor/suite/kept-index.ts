/** That what is known of the workspace is kept for the next start, where there is a disk to keep it on. */
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import assert from "./assert.ts";
import { heard, paramsOf } from "./messages.ts";
import { answerWhen, openJournal } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** The folder that the extension named to its server. */
function storageFolder(): string {
  const [params] = paramsOf(heard.fromEditor, "initialize");
  const storage = Reflect.get(Object(Reflect.get(Object(params), "initializationOptions")), "storage");
  assert.match(String(storage), /^file:/u, JSON.stringify(params));
  return fileURLToPath(String(storage));
}

function filesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

export const keptIndexTests: readonly EditorTest[] = [
  {
    name: "the index is kept in the folder that the editor has for it",
    async run() {
      await openJournal("slips.trip");
      const ask = async (): Promise<string[]> => filesIn(storageFolder());
      await answerWhen("nothing was kept", ask, (files) => files.length > 0);
    },
  },
];
