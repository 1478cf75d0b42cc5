/** What the grammar's properties share: the seed, the number of cases, and the examples they start from. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** The same few hundred cases every time, so that a failure can be looked at again. */
export const SETTINGS = { seed: 20310621, numRuns: 300 } as const;

const FOLDER = join(import.meta.dirname, "../../examples");

const NAMES = readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.(?:trip|gear)$/u.test(name))
  .sort();
const textsOf = (names: readonly string[]): string[] =>
  names.map((name) => readFileSync(join(FOLDER, name), "utf8"));

/** The text of every example journal and gear book, those that are wrong on purpose included. */
export const EXAMPLES: readonly string[] = textsOf(NAMES);

/** The examples that are as they should be. */
export const SOUND_EXAMPLES: readonly string[] = textsOf(NAMES.filter((name) => !/\bwrong\b/u.test(name)));

if (SOUND_EXAMPLES.length < 5) throw new Error("the examples were not found");
