/** The texts of `--help`. */
import { widthOf } from "./render/terminal.ts";
import { wrap } from "./render/wrap.ts";
import { COMMON_OPTIONS, type OptionRow, type OptionRows, type Verb } from "./verb.ts";
import { VERBS } from "./verbs.ts";
import type { World } from "./world.ts";

const ENDINGS =
  "Exit codes: 0 fine, 1 errors found by check or a --check, 2 arguments or a file could not be used.";

/** The program in one screen: what each verb does, with its first example. */
export async function programHelp(world: World): Promise<string> {
  const verbs = await Promise.all([...VERBS.values()].map((load) => load()));
  const lines = [
    "deepwake: trip journals and gear books, checked, with the true depth of every line.",
    "",
    ...verbs.map((verb) => `  ${verb.name.padEnd(11)}${verb.summary}`),
    "",
    "Examples:",
    ...verbs.flatMap((verb) => verb.examples.slice(0, 1).map(([command]) => `  ${command}`)),
    "",
    "deepwake VERB --help says more, deepwake --version which one this is.",
    ENDINGS,
  ];
  return fitted(lines, world);
}

/** One verb: its forms, what it does, its options, examples. */
export function verbHelp(verb: Verb, world: World): string {
  const rows = { ...verb.options, ...COMMON_OPTIONS };
  const lines = [
    `deepwake ${verb.name}: ${verb.summary}`,
    "",
    ...verb.usage.map((form) => `  deepwake ${form}`),
    "",
    ...verb.about,
    "",
    "Options:",
    ...optionLines(rows),
    "",
    "Examples:",
    ...verb.examples.flatMap(([command, does]) => [`  ${command}`, `      ${does}`]),
    "",
    ENDINGS,
  ];
  return fitted(lines, world);
}

function optionLines(rows: OptionRows): string[] {
  const heads = Object.entries(rows).map(([name, row]) => [optionHead(name, row), row.doc] as const);
  const widest = Math.max(...heads.map(([head]) => head.length));
  return heads.map(([head, doc]) => `  ${head.padEnd(widest)}  ${doc}`);
}

function optionHead(name: string, { value, short }: OptionRow): string {
  const long = `--${name}${value === undefined ? "" : ` ${value}`}`;
  return short === undefined ? long : `-${short}, ${long}`;
}

/** Continued lines hang under the last column of the line they continue. */
function fitted(lines: readonly string[], world: World): string {
  const width = widthOf(world.out);
  return lines
    .flatMap((line) => wrap(line, width, Math.min(line.search(/\S/u) + 2, 8)))
    .map((line) => `${line}\n`)
    .join("");
}
