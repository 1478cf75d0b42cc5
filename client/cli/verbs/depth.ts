/** `deepwake depth`: every line of a trip, one what-if, or a file of towed-line cases. */
import { complain } from "../complain.ts";
import { type ExitCode, UNUSABLE } from "../exit-codes.ts";
import { type Call, INPUT_OPTIONS, type OptionRows, type Verb } from "../verb.ts";
import type { World } from "../world.ts";

/** Options that only the what-if takes. */
const WHAT_IF_OPTIONS: OptionRows = {
  rig: { value: "RIG", doc: "The rig of a what-if, as the gear book calls it." },
  out: { value: "LENGTH", doc: "Cable out by its counter, like 90ft." },
  speed: { value: "SPEED", doc: "Speed at the ball, like 2.5mph." },
  setback: { value: "LENGTH", doc: "How far the lure is behind its release." },
  above: { value: "LENGTH", doc: "How far above the ball a stacked rod is clipped." },
  lure: { value: "LURE", doc: "The lure, as the gear book calls it." },
  temp: { value: "TEMPERATURE", doc: "Temperature of the water, like 50F (else 50F)." },
  boat: { value: "NAME", doc: "The boat, where the gear books describe several." },
  date: { value: "YYYY-MM-DD", doc: "The day whose gear it is (else the latest in the book)." },
  book: { value: "FILE", doc: "The gear book (else those in this folder and above)." },
};

export const DEPTH: Verb = {
  name: "depth",
  summary: "the true depth of ball and lure on every line",
  usage: [
    "depth TRIP or FOLDER...",
    "depth --rig RIG --out LENGTH --speed SPEED [--book FILE] [...]",
    "depth --case FILE [--json]",
  ],
  about: [
    "Of trips: every set, move and again line, and every change that alters a depth, with the range that fits what isn't known exactly, or why there is no depth.",
    "What if: one rig of the gear book at a length out and a speed.",
    "Cases: towed lines in SI, one or a file with cases; with --json an array with the case file's own field names.",
  ],
  options: {
    ...WHAT_IF_OPTIONS,
    case: { value: "FILE", doc: "Solve towed-line cases instead." },
    ...INPUT_OPTIONS,
  },
  examples: [
    ["deepwake depth trips/2031-06-21.trip", "every line of a morning"],
    ["deepwake depth --rig C1 --out 90ft --speed 2.5mph", "before you set it"],
    [
      'deepwake depth --rig C1 --out 27m --speed 4km/h --setback 6m --lure "Ash Wednesday" --book boat.gear',
      "in your own units",
    ],
    ["deepwake depth --case cases.json --json", "the solver against other numbers"],
  ],
  run: depthVerb,
};

/** Which of the three forms is meant shows in the options; a mixture is refused. */
async function depthVerb(call: Call, world: World): Promise<ExitCode> {
  const asked = Object.keys(WHAT_IF_OPTIONS).filter((name) => call.values.has(name));
  const forms = [call.paths.length > 0, asked.length > 0, call.values.has("case")];
  if (forms.filter(Boolean).length > 1) {
    const options = [...asked, ...(call.values.has("case") ? ["case"] : [])].map((name) => `--${name}`);
    complain(world, `${options.join(", ")}: trips, a what-if and cases don't go together; ask for one.`);
    return UNUSABLE;
  }
  if (call.values.has("case")) return (await import("./depth-of-cases.ts")).depthOfCases(call, world);
  if (asked.length > 0) return (await import("./depth-what-if.ts")).depthWhatIf(call, world);
  const json = call.paths.find((path) => path.toLowerCase().endsWith(".json"));
  if (json !== undefined) {
    complain(world, `${json} is no trip; towed-line cases are asked for with --case ${json}`);
    return UNUSABLE;
  }
  if (call.paths.length > 0) return (await import("./depth-of-trips.ts")).depthOfTrips(call, world);
  complain(
    world,
    "which trip? Name one, or ask --rig RIG --out LENGTH --speed SPEED. See deepwake depth --help",
  );
  return UNUSABLE;
}
