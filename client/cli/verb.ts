/** What a verb is: its words for `--help`, its options, and what it does. */
import type { ExitCode } from "./exit-codes.ts";
import type { World } from "./world.ts";

/** One option. With a `value` (its name in the help) it takes one, without it is a switch. */
export interface OptionRow {
  readonly value?: string;
  readonly short?: string;
  readonly doc: string;
}

export type OptionRows = Readonly<Record<string, OptionRow>>;

/** What the user asked for. */
export interface Call {
  readonly paths: readonly string[];
  /** Options with a value, by name. */
  readonly values: ReadonlyMap<string, string>;
  /** Switches that are on. */
  readonly switches: ReadonlySet<string>;
}

/** One verb. */
export interface Verb {
  readonly name: string;
  /** One line for the list of verbs. */
  readonly summary: string;
  /** The forms it takes, without the program's name. */
  readonly usage: readonly string[];
  /** A few sentences, one an entry. */
  readonly about: readonly string[];
  readonly options: OptionRows;
  readonly examples: readonly (readonly [command: string, does: string])[];
  run(call: Call, world: World): Promise<ExitCode>;
}

/** Options that every verb has. */
export const COMMON_OPTIONS: OptionRows = {
  json: { doc: "Print JSON for other programs; its schema is in docs/schemas." },
  color: { doc: "Color even where the output is no terminal." },
  "no-color": { doc: "No color (so does NO_COLOR in the environment)." },
  help: { short: "h", doc: "Show this." },
};

/** The options of verbs that read journals, standard input included. */
export const INPUT_OPTIONS: OptionRows = {
  "stdin-path": {
    value: "FILE",
    doc: "With - for standard input: the file it stands for, to find its gear books.",
  },
};
