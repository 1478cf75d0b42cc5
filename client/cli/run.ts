/** Finds the verb, reads its arguments, runs it. A bug ends in one line, not in a stack trace. */
import { readCall } from "./arguments.ts";
import { complain } from "./complain.ts";
import { type ExitCode, FINE, UNUSABLE } from "./exit-codes.ts";
import { programHelp, verbHelp } from "./help.ts";
import { didYouMean } from "./suggest.ts";
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

async function dispatch(args: readonly string[], world: World): Promise<ExitCode> {
  const [name = "--help", ...rest] = args;
  if (name === "--version" || name === "-V") {
    world.out.write(`${world.version}\n`);
    return FINE;
  }
  const isHelp = name === "--help" || name === "-h" || name === "help";
  if (isHelp && rest.length === 0) {
    world.out.write(await programHelp(world));
    return args.length === 0 ? UNUSABLE : FINE;
  }
  const [asked = "", words] = isHelp ? [rest[0], ["--help"]] : [name, rest];
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
  if (asked.startsWith("-")) return `the verb comes first; ${asked} is none`;
  return `there is no verb "${asked}"${didYouMean(asked, VERBS.keys())}`;
}

function refuse(world: World, why: string, help: string): ExitCode {
  const stop = why.endsWith("?") ? "" : ".";
  complain(world, `${why}${stop} See ${help}`);
  return UNUSABLE;
}
