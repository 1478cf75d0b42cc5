/** Words of the command line → what was asked for, or one sentence on what is wrong with them. */
import { parseArgs } from "node:util";
import { didYouMean } from "./suggest.ts";
import { type Call, COMMON_OPTIONS, type OptionRows } from "./verb.ts";

/** A call, or what is wrong. */
type ReadCall = { readonly ok: true; readonly call: Call } | { readonly ok: false; readonly why: string };

/** Reads the words behind a verb by its options. */
export function readCall(args: readonly string[], own: OptionRows): ReadCall {
  const options = { ...COMMON_OPTIONS, ...own };
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(Object.entries(options).map(([name, row]) => [name, optionType(row)])),
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const paths: string[] = [];
  const values = new Map<string, string>();
  const switches = new Set<string>();
  for (const token of tokens) {
    if (token.kind === "positional") paths.push(token.value);
    if (token.kind !== "option") continue;
    const row = Object.hasOwn(options, token.name) ? options[token.name] : undefined;
    if (row === undefined) return no(unknownOption(token.rawName, Object.keys(options)));
    const why = misuse(token, row.value, values);
    if (why !== undefined) return no(why);
    if (token.value === undefined) switches.add(token.name);
    else values.set(token.name, token.value);
  }
  return { ok: true, call: { paths, values, switches } };
}

const no = (why: string): ReadCall => ({ ok: false, why });

function optionType({ value, short }: OptionRows[string]): { type: "string" | "boolean"; short?: string } {
  return { type: value === undefined ? "boolean" : "string", ...(short === undefined ? {} : { short }) };
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function misuse(
  { name, rawName, value, inlineValue }: OptionToken,
  takes: string | undefined,
  before: ReadonlyMap<string, string>,
): string | undefined {
  if (takes === undefined) return value === undefined ? undefined : `${rawName} takes no value`;
  const isNext = inlineValue !== true && value !== undefined && /^-\D/u.test(value);
  if (value === undefined || value === "" || isNext) return `${rawName} needs a value: ${rawName} ${takes}`;
  return before.has(name) ? `${rawName} is given twice` : undefined;
}

function unknownOption(rawName: string, names: readonly string[]): string {
  const known = names.map((name) => `--${name}`);
  return `there is no option ${rawName}${didYouMean(rawName, known)}`;
}
