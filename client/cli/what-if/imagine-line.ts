/**
 * A what-if as a trip of three lines, computed like any other. Every option is read by the grammar on its own first,
 * so that nothing but the one measure or name it stands for gets into the text.
 */
import { parse } from "../../../grammar/parse.ts";
import { quote } from "../../../grammar/print.ts";
import type { Dimension } from "../../../grammar/units.ts";
import { analyzeJournal, type TripAnalysis } from "../../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../../server/analysis/line-depth.ts";
import { resolveGear } from "../../../server/model/gear.ts";
import type { Gear } from "../../../server/model/gear-types.ts";
import { isColorsOrFeet } from "../../../server/model/leadcore-count.ts";
import { matchName } from "../../../server/model/match-name.ts";
import { cableRigOf } from "../../../server/model/trip.ts";
import type { ChosenGear } from "./choose-gear.ts";
import { measureIn, wrongMeasure, wrongName } from "./read-options.ts";
import { inUnitsAsked } from "./units-asked.ts";

type Options = ReadonlyMap<string, string>;

/** The line as computed, or what is wrong with an option. */
export type ImaginedLine =
  | { readonly ok: true; readonly day: TripAnalysis; readonly depth: LineDepth }
  | { readonly ok: false; readonly why: string };

const no = (why: string): { ok: false; why: string } => ({ ok: false, why });

/** Measures by option: the line and word they stand on, what they measure, and how one looks. */
const MEASURES: readonly (readonly [option: string, verb: string, dimension: Dimension, example: string])[] =
  [
    ["out", "set", "length", "90ft"],
    ["setback", "set", "length", "20ft"],
    ["above", "set", "length", "20ft"],
    ["speed", "probe", "speed", "2.5mph"],
    ["temp", "probe", "temperature", "50F"],
  ];
const NEEDED = ["rig", "out", "speed"];

/** Computes the line that the options describe. */
export function imagineLine(options: Options, chosen: ChosenGear & { ok: true }): ImaginedLine {
  const missing = NEEDED.filter((name) => !options.has(name));
  if (missing.length > 0)
    return no(`a what-if needs ${missing.map((name) => `--${name}`).join(" and ")} too.`);
  const { books, boat, date } = chosen;
  const gear = resolveGear(books, boat, date);
  for (const [kind, known] of [
    ["rig", gear.rigs],
    ["lure", gear.lures],
  ] as const) {
    const name = options.get(kind)?.normalize("NFC");
    const why = name === undefined ? undefined : wrongName(kind, kind, name, known, gear);
    if (why !== undefined) return no(why);
  }
  for (const [option, verb, dimension, example] of MEASURES) {
    const text = options.get(option);
    if (text === undefined) continue;
    const si = measureIn(text, option, verb, dimension, gear);
    const why = si === undefined ? undefined : wrongMeasure(option, dimension, si, gear);
    if (why !== undefined) return no(why);
    if (si === undefined) return no(`--${option}: "${text}" is no ${dimension}; write one like ${example}.`);
  }
  const text = tripText(options, gear, boat, date);
  const parsed = parse(text);
  if (parsed.issues.some((issue) => issue !== null))
    return no("these options make no line that can be read.");
  const set = parsed.journal.lines.at(-1);
  if (set?.kind === "fact" && isColorsOrFeet(set, "out", gear))
    return no(
      `--out ${options.get("out")} what? Write ${options.get("out")}colors or ${options.get("out")}ft.`,
    );
  const day = analyzeJournal({ uri: "deepwake:what-if.trip", parse: parsed }, books).trips[0];
  const depth = day?.depths.at(-1);
  return day === undefined || depth === undefined
    ? no("nothing can be computed of that.")
    : { ok: true, day: inUnitsAsked(day, options), depth };
}

/** Noon is an hour that no clock change touches. */
function tripText(options: Options, gear: Gear, boat: string, date: string): string {
  const rig = matchName(gear.rigs, options.get("rig")?.normalize("NFC") ?? "");
  const cable = cableRigOf(gear, rig)?.name ?? rig;
  const said = (words: readonly string[]): string =>
    words.flatMap((word) => (options.has(word) ? [`${word} ${options.get(word)}`] : [])).join(" ");
  const lure = options.has("lure") ? ` lure ${quote(options.get("lure") ?? "")}` : "";
  const own = cable === rig ? said(["out", "setback"]) : said(["above", "setback"]);
  return [
    `trip ${date} ${quote(boat)}`,
    ...(cable === rig ? [] : [`12:00 set ${quote(cable)} ${said(["out"])}`]),
    `12:00 probe ${quote(cable)} ${said(["speed", "temp"])}`,
    `12:00 set ${quote(rig)} ${own}${lure}`,
  ].join("\n");
}
