/** The options of a let-out table → what is asked, or what is wrong with one of them. */
import type { Dimension } from "../../../grammar/units.ts";
import { type Rigging, usualRigs } from "../../../server/analysis/lines-to-set.ts";
import type { StatedSpeeds } from "../../../server/analysis/stated-water.ts";
import { usualRows } from "../../../server/analysis/usual-depths.ts";
import type { Gear, Rig } from "../../../server/model/gear-types.ts";
import { measureIn, wrongMeasure, wrongName } from "./read-options.ts";

type Options = ReadonlyMap<string, string>;

/** What a let-out table is asked for. */
export interface AskedLetOut {
  readonly ok: true;
  readonly depthsM: readonly number[];
  readonly rigs: readonly Rig[];
  readonly rigging: Rigging;
  readonly speeds: StatedSpeeds;
}

interface Wrong {
  readonly ok: false;
  readonly why: string;
}

const no = (why: string): Wrong => ({ ok: false, why });

type Reading = readonly [word: string, verb: string, dimension: Dimension, example: string];

/** Measures by option: the word and verb they are read as, what they measure, and how one looks. */
const MEASURES = {
  speed: ["speed", "probe", "speed", "2.5mph"],
  "surface-speed": ["speed", "probe", "speed", "2.3mph"],
  "speed-at": ["depth", "probe", "length", "80ft"],
  temp: ["temp", "probe", "temperature", "50F"],
  setback: ["setback", "set", "length", "20ft"],
  above: ["above", "set", "length", "20ft"],
} as const satisfies Readonly<Record<string, Reading>>;
/** The rows, unless they are listed. */
const ROWS = {
  from: ["out", "set", "length", "20ft"],
  to: ["out", "set", "length", "120ft"],
  step: ["out", "set", "length", "10ft"],
} as const satisfies Readonly<Record<string, Reading>>;
type Measures = Partial<Record<keyof typeof MEASURES | keyof typeof ROWS, number>>;

/** More rows than this are a slip. */
const MOST_ROWS = 200;

/** Reads the options by the boat's gear. */
export function readLetOut(options: Options, gear: Gear): AskedLetOut | Wrong {
  if (!options.has("speed")) return no("at what speed? Say --speed 2.5mph.");
  const read = measures(options, gear);
  if (!read.ok) return read;
  const { of } = read;
  const depths = options.has("depths") ? listedDepths(options, gear) : steppedDepths(of, gear);
  if (!depths.ok) return depths;
  const lure = options.get("lure")?.normalize("NFC");
  const why = lure === undefined ? undefined : wrongName("lure", "lure", lure, gear.lures, gear);
  if (why !== undefined) return no(why);
  const rigging = { lure, setbackM: of.setback, aboveM: of.above };
  const rigs = rigsOf(options.get("rigs")?.normalize("NFC"), gear, rigging);
  if (!rigs.ok) return rigs;
  const speeds = {
    speedMS: of.speed ?? 0,
    surfaceSpeedMS: of["surface-speed"],
    speedDepthM: of["speed-at"],
    waterTempC: of.temp,
  };
  return { ok: true, depthsM: depths.depthsM, rigs: rigs.rigs, rigging, speeds };
}

function measures(options: Options, gear: Gear): { ok: true; of: Measures } | Wrong {
  const found: Record<string, number> = {};
  for (const [option, [word, verb, dimension, example]] of Object.entries({ ...MEASURES, ...ROWS })) {
    const text = options.get(option);
    if (text === undefined) continue;
    const si = measureIn(text, word, verb, dimension, gear);
    if (si === undefined) return no(`--${option}: "${text}" is no ${dimension}; write one like ${example}.`);
    const why = wrongMeasure(option, dimension, si, gear);
    if (why !== undefined) return no(why);
    found[option] = si;
  }
  return { ok: true, of: found };
}

type Depths = { ok: true; depthsM: readonly number[] } | Wrong;

/** `30,40,50ft`: the last unit serves those before it. */
function listedDepths(options: Options, gear: Gear): Depths {
  if (Object.keys(ROWS).some((name) => options.has(name)))
    return no("--depths names the depths; --from, --to and --step don't go with it.");
  const texts = (options.get("depths") ?? "").split(",").map((text) => text.trim());
  const unit = /^[\d.]+\s*(.*)$/u.exec(texts.at(-1) ?? "")?.[1] ?? "";
  const depthsM: number[] = [];
  for (const text of texts) {
    const depthM = measureIn(/^[\d.]+$/u.test(text) ? `${text} ${unit}` : text, "out", "set", "length", gear);
    if (depthM === undefined) return no(`--depths: "${text}" is no length; write them like 30,40,50ft.`);
    depthsM.push(depthM);
  }
  return checked(depthsM);
}

/** By tens from 20 to 120 ft, or by fives from 5 to 40 m, where nothing else is said. */
function steppedDepths(asked: Measures, gear: Gear): Depths {
  const usual = usualRows(gear);
  const { step: stepM = usual.stepM, from: fromM = usual.fromM } = asked;
  const toM = asked.to ?? Math.max(fromM, usual.toM);
  if (stepM <= 0) return no("--step has to be more than nothing.");
  if (toM < fromM) return no("--to has to be deeper than --from.");
  const count = Math.floor((toM - fromM) / stepM + 1e-6) + 1;
  if (count > MOST_ROWS) return no(`that makes ${count} rows; ${MOST_ROWS} are the most.`);
  return checked(Array.from({ length: count }, (_, row) => fromM + row * stepM));
}

function checked(depthsM: readonly number[]): Depths {
  if (depthsM.length > MOST_ROWS) return no(`that makes ${depthsM.length} rows; ${MOST_ROWS} are the most.`);
  return depthsM.every((depthM) => depthM > 0 && depthM < 1000)
    ? { ok: true, depthsM }
    : no("the depths have to be below the surface and within 1000 m.");
}

function rigsOf(
  named: string | undefined,
  gear: Gear,
  rigging: Rigging,
): { ok: true; rigs: readonly Rig[] } | Wrong {
  const rigs: Rig[] = [];
  if (named === undefined) rigs.push(...usualRigs(gear, rigging));
  for (const name of named?.split(",").map((text) => text.trim()) ?? []) {
    const rig = gear.rigs.get(name);
    if (rig === undefined) return no(wrongName("rigs", "rig", name, gear.rigs, gear) ?? `--rigs: no ${name}`);
    if (!rigs.includes(rig)) rigs.push(rig);
  }
  return rigs.length === 0
    ? no(`the gear of ${gear.boat} has no rigs to make a table of.`)
    : { ok: true, rigs };
}
