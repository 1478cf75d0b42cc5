/** `deepwake letout`: how much cable or line to let out for a depth, by the captain's own rigs. */
import { fileURLToPath } from "node:url";
import { findUnit } from "../../../grammar/units.ts";
import { createDepthMemo } from "../../../server/analysis/depth-memo.ts";
import { type LetOutColumn, letOutColumns } from "../../../server/analysis/let-out-columns.ts";
import { imaginedLine } from "../../../server/analysis/lines-to-set.ts";
import { statedWater } from "../../../server/analysis/stated-water.ts";
import { resolveGear } from "../../../server/model/gear.ts";
import type { Gear } from "../../../server/model/gear-types.ts";
import { letOutMarkdown } from "../../../server/reports/let-out-markdown.ts";
import { type LetOutTable, letOutTable } from "../../../server/reports/let-out-table.ts";
import { statedFacts } from "../../../server/reports/stated-facts.ts";
import { complain } from "../complain.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import { shownPath } from "../paths.ts";
import { paintFor, widthOf } from "../render/terminal.ts";
import type { Call, Verb } from "../verb.ts";
import { type ChosenGear, chooseGear } from "../what-if/choose-gear.ts";
import { type AskedLetOut, readLetOut } from "../what-if/read-let-out.ts";
import type { World } from "../world.ts";
import { letOutCsv } from "./letout-csv.ts";
import { letOutPage } from "./letout-html.ts";
import { letOutJson } from "./letout-json.ts";
import { letOutText } from "./letout-text.ts";

const FORMATS = ["table", "markdown", "csv", "html", "json"] as const;
type Format = (typeof FORMATS)[number];

export const LETOUT: Verb = {
  name: "letout",
  summary: "how much to let out for a depth, rig by rig: the cable to set",
  usage: ["letout --speed SPEED [--depths LIST] [--rigs LIST] [--book FILE] [...]"],
  about: [
    "A table for the rail: rows are the depths you want, columns your own rigs at a speed, with the gear and calibrations of a day.",
    "The depth is the lure's; a downrigger's ball where no setback is given. Leadcore is counted in colors.",
    "Prints for the terminal, as Markdown, as CSV, or as one page to print.",
  ],
  options: {
    speed: { value: "SPEED", doc: "Speed down at the lines, like 2.5mph." },
    "surface-speed": { value: "SPEED", doc: "Speed through the water on top, where it differs." },
    "speed-at": { value: "LENGTH", doc: "The depth of --speed where both are given (else each row's)." },
    depths: { value: "LIST", doc: "The depths, like 30,40,50ft." },
    from: { value: "LENGTH", doc: "Or the first depth (else 20ft)." },
    to: { value: "LENGTH", doc: "The last depth (else 120ft)." },
    step: { value: "LENGTH", doc: "From one depth to the next (else 10ft)." },
    rigs: { value: "LIST", doc: "The rigs, like C1,P1,PB (else all but jigs)." },
    lure: { value: "LURE", doc: "The lure on every rig, as the gear book calls it." },
    setback: { value: "LENGTH", doc: "How far it is behind a downrigger's release." },
    above: { value: "LENGTH", doc: "How far above the ball stacked rods are clipped." },
    temp: { value: "TEMPERATURE", doc: "Temperature of the water, like 50F (else 50F)." },
    boat: { value: "NAME", doc: "The boat, where the gear books describe several." },
    date: { value: "YYYY-MM-DD", doc: "The day whose gear it is (else the latest in the book)." },
    book: { value: "FILE", doc: "The gear book (else those in this folder and above)." },
    format: { value: "FORM", doc: "Print as table, markdown, csv, html or json." },
  },
  examples: [
    ["deepwake letout --speed 2.5mph --rigs C1,P1,PB", "three rigs, 20 to 120 ft"],
    [
      "deepwake letout --speed 2.5mph --surface-speed 2.3mph --depths 30,45,60ft --lure glow-spoon --setback 20ft",
      "for the lure, with a current below",
    ],
    [
      "deepwake letout --speed 4km/h --from 5m --to 40m --step 5m --format html > cable.html",
      "a page to print",
    ],
  ],
  run: letOutVerb,
};

/** True for what is left of `--depths 30,45 ft`. */
const isUnit = (text: string): boolean => findUnit(text) !== undefined;

async function letOutVerb(call: Call, world: World): Promise<ExitCode> {
  const refuse = (why: string): ExitCode => {
    complain(world, why);
    return UNUSABLE;
  };
  const form = formOf(call);
  if (form === undefined)
    return refuse(`--format: "${call.values.get("format")}" is none of ${FORMATS.join(", ")}.`);
  const [path] = call.paths;
  if (path !== undefined)
    return refuse(
      isUnit(path)
        ? `A blank came between a number and "${path}": write them as one word, like 45${path}.`
        : `letout takes no file; the gear book is named by --book ${path}`,
    );
  const chosen = chooseGear(call.values, world);
  if (!chosen.ok) return refuse(chosen.why);
  const gear = resolveGear(chosen.books, chosen.boat, chosen.date);
  const asked = readLetOut(call.values, gear);
  if (!asked.ok) return refuse(asked.why);
  const columns = letOutColumns(
    asked.rigs.map((rig) => imaginedLine(gear, rig, asked.rigging)),
    asked.depthsM,
    (depthM) => statedWater(asked.speeds, depthM),
    createDepthMemo(),
  );
  world.out.write(await written(form, { gear, chosen, asked, columns }, call, world));
  if (columns.some(({ cells }) => cells.some((cell) => cell.ok))) return FINE;
  return refuse("none of these rigs comes to any of these depths.");
}

function formOf({ switches, values }: Call): Format | undefined {
  if (switches.has("json")) return "json";
  const named = values.get("format") ?? "table";
  return FORMATS.find((form) => form === named);
}

interface Answer {
  readonly gear: Gear;
  readonly chosen: ChosenGear & { readonly ok: true };
  readonly asked: AskedLetOut;
  readonly columns: readonly LetOutColumn[];
}

async function written(form: Format, answer: Answer, call: Call, world: World): Promise<string> {
  const { gear, chosen, asked, columns } = answer;
  const date = chosen.isDated ? chosen.date : undefined;
  if (form === "json") {
    const books = [...new Set(asked.rigs.map(({ origin }) => origin.uri))];
    const paths = books.map((uri) => shownPath(fileURLToPath(uri), world));
    return letOutJson({ boat: gear.boat, date, asked, columns, paths }, world);
  }
  const table = letOutTable(
    gear,
    asked.depthsM,
    columns,
    statedFacts(gear, date, asked.speeds, asked.rigging),
  );
  return form === "table"
    ? letOutText(table, widthOf(world.out), await paintFor(world, call))
    : PAGES[form](table);
}

const PAGES: Readonly<Record<Exclude<Format, "json" | "table">, (table: LetOutTable) => string>> = {
  markdown: letOutMarkdown,
  csv: letOutCsv,
  html: letOutPage,
};
