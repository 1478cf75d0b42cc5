/** `deepwake serve`: the language server, for any editor that speaks its protocol. */
import { complain } from "../complain.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import type { Call, Verb } from "../verb.ts";
import type { World } from "../world.ts";

export const SERVE: Verb = {
  name: "serve",
  summary: "the language server, for any editor that can start one",
  usage: ["serve [--stdio]", "serve --socket PORT", "serve --pipe NAME"],
  about: [
    "Checks, depths, completion and all else that the extension shows, by the Language Server Protocol.",
    "An editor starts it and talks to it; it reads journals and gear books and changes none of them. All it writes is its index of them, and only where the editor gives it a folder for it. docs/other-editors.md has set-ups.",
  ],
  options: {
    stdio: { doc: "Talk over standard input and output; so it is when nothing is said." },
    socket: { value: "PORT", doc: "Talk over a connection to this local port, where the editor listens." },
    pipe: { value: "NAME", doc: "Talk over this pipe or local socket, where the editor listens." },
    clientProcessId: { value: "PID", doc: "End when the process of that number has ended." },
  },
  examples: [
    ["deepwake serve --stdio", "what to put into an editor's settings"],
    ["deepwake serve --socket 5007", "for an editor that listens on port 5007"],
  ],
  run: serveVerb,
};

async function serveVerb({ paths, values, switches }: Call, world: World): Promise<ExitCode> {
  const [path] = paths;
  if (path !== undefined) {
    complain(world, `serve takes no files, and "${path}" was given. See deepwake serve --help`);
    return UNUSABLE;
  }
  const ways = [
    ...(switches.has("stdio") ? ["--stdio"] : []),
    ...["socket", "pipe"].flatMap((way) => (values.has(way) ? [`--${way}=${values.get(way)}`] : [])),
  ];
  if (ways.length > 1) {
    complain(world, `serve talks over one of --stdio, --socket and --pipe, not over ${ways.length}.`);
    return UNUSABLE;
  }
  const port = values.get("socket");
  if (port !== undefined && !(/^\d{1,5}$/u.test(port) && Number(port) <= 65_535)) {
    complain(world, `--socket needs the number of a port, not "${port}".`);
    return UNUSABLE;
  }
  const client = values.get("clientProcessId");
  if (world.err.isTerminal && ways.every((way) => way === "--stdio"))
    world.err.write("The language server waits for an editor to talk to it. Ctrl+C ends it.\n");
  await world.serve([
    ...(ways.length === 0 ? ["--stdio"] : ways),
    ...(client === undefined ? [] : [`--clientProcessId=${client}`]),
  ]);
  return FINE;
}
