/** Finds the verb, reads its arguments, runs it. A bug ends in one line, not in a stack trace. */
import { readCall } from "./arguments.ts";
import { complain } from "./complain.ts";
import { type ExitCode, FINE, UNUSABLE } from "./exit-codes.ts";
import { programHelp, verbHelp } from "./help.ts";
import { didYouMean } from "./suggest.ts";
import { COMMON_OPTIONS } from "./verb.ts";
import { VERBS } from "./verbs.ts";
import type { World } from "./world.ts";

/** Runs the program on its arguments and answers how it ends. */
export async function run(args: readonly string[], world: World): Promise<ExitCode> {
  try {
    return await dispatch(args, world);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    complain(world, `this is a bug in deepwake: ${said.split("\n")[0]}`);
    const isDebugging = world.env.DEEPWAKE_DEBUG === "1" && error instanceof Error;
    world.err.write(
      isDebugging
        ? `${error.stack}\n`
        : "Please report it with the command you gave (DEEPWAKE_DEBUG=1 shows where it happened).\n",
    );
    return UNUSABLE;
  }
}

/** Options of every verb that may as well stand before it. */
const EARLY = new Set([...Object.keys(COMMON_OPTIONS).map((name) => `--${name}`), "-h"]);
const VERSION = new Set(["--version", "-V"]);
const HELP = new Set(["--help", "-h", "help"]);

async function dispatch(args: readonly string[], world: World): Promise<ExitCode> {
  const verbAt = args.findIndex((word) => !EARLY.has(word));
  const early = verbAt < 0 ? args : args.slice(0, verbAt);
  const [name = "--help", ...rest] = verbAt < 0 ? [] : args.slice(verbAt);
  if (VERSION.has(name)) {
    world.out.write(`${world.version}\n`);
    return FINE;
  }
  const isHelp = HELP.has(name);
  if (isHelp && rest.length === 0) {
    world.out.write(await programHelp(world));
    return verbAt < 0 && !early.some((word) => HELP.has(word)) ? UNUSABLE : FINE;
  }
  const [asked = "", words] = isHelp ? [rest[0], ["--help"]] : [name, [...early, ...rest]];
  const load = VERBS.get(asked);
  if (load === undefined) return refuse(world, unknownVerb(asked), "deepwake --help");
  const verb = await load();
  const read = readCall(words, verb.options);
  if (!read.ok) return refuse(world, read.why, `deepwake ${verb.name} --help`);
  if (!read.call.switches.has("help")) return verb.run(read.call, world);
  world.out.write(verbHelp(verb, world));
  return FINE;
}

function unknownVerb(asked: string): string {
  if (asked.startsWith("-")) return `${asked} stands before the verb; the verb comes first`;
  return `there is no verb "${asked}"${didYouMean(asked, VERBS.keys())}`;
}

function refuse(world: World, why: string, help: string): ExitCode {
  const stop = why.endsWith("?") ? "" : ".";
  complain(world, `${why}${stop} See ${help}`);
  return UNUSABLE;
}
