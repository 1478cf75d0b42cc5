/** `deepwake calibrate`: each downrigger's drag and counter, learned from its readings. */
import { resolve } from "node:path";
import { isCalendarDate } from "../../../grammar/stamp.ts";
import { calibrateAll, type RigCalibration } from "../../../server/analysis/calibration.ts";
import {
  calibrationReadings,
  type RigReading,
  type UnusedReading,
} from "../../../server/analysis/calibration-readings.ts";
import { fittedGroupOf } from "../../../server/analysis/fitted-group.ts";
import { calibrateLines, type LineCalibration } from "../../../server/analysis/line-calibration.ts";
import type { LineReading } from "../../../server/analysis/line-readings.ts";
import { TRIP_ENDING } from "../../../server/files/find-books.ts";
import type { Rig } from "../../../server/model/gear-types.ts";
import { matchMaybe } from "../../../server/model/match-name.ts";
import { CALIBRATION_CAUTION } from "../../../server/reports/calibration-sentences.ts";
import { residualSvg } from "../../../server/reports/residual-picture.ts";
import { complain } from "../complain.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import { JournalReader } from "../journals.ts";
import { askedFor, type Unusable } from "../paths.ts";
import { paintFor, widthOf } from "../render/terminal.ts";
import { didYouMean } from "../suggest.ts";
import { type Call, INPUT_OPTIONS, type Verb } from "../verb.ts";
import type { World } from "../world.ts";
import { calibratedLineJson, calibratedRigJson, unusedJson } from "./calibrate-json.ts";
import { calibrateText } from "./calibrate-text.ts";

export const CALIBRATE: Verb = {
  name: "calibrate",
  summary: "what the readings say of each rig's counter and line",
  usage: ["calibrate [TRIP or FOLDER]... [--rig RIG] [--since YYYY-MM-DD] [--svg FILE]"],
  about: [
    "Fits counter and drag of each downrigger and of each leadcore, copper, wire or flat line, and the pull of each diver, to their probe depths, touches of the bottom and distances behind, over all the trips named. A new cable, ball or rig in the gear book starts anew.",
    "Prints what can't be told yet, the reading that would settle it, and the line for the gear book. Without a path it is the folder you are in.",
  ],
  options: {
    rig: { value: "RIG", doc: "Only this rig." },
    since: { value: "YYYY-MM-DD", doc: "Only trips of this day and later." },
    svg: { value: "FILE", doc: "Write a picture of the readings against the fit, as a new file." },
    force: { doc: "Write the picture over a file that is there already." },
    ...INPUT_OPTIONS,
  },
  examples: [
    ["deepwake calibrate trips", "a season's readings"],
    ["deepwake calibrate trips --rig C1 --since 2031-06-01 --svg c1.svg", "one rig, with a picture"],
  ],
  run: calibrateVerb,
};

/** Readings of all files, by file. */
export interface Gathered {
  readonly used: RigReading[];
  readonly ofLines: LineReading[];
  readonly unused: { readonly path: string; readonly trip: string; readonly one: UnusedReading }[];
  /** As files are shown, by URI. */
  readonly shownByUri: Map<string, string>;
  readonly files: { readonly path: string; readonly readings: number; readonly error?: string }[];
  /** Every rig of the books, by name. */
  readonly rigs: Map<string, Rig>;
}

/** Fits of downriggers, and of all other lines. */
interface Fitted {
  readonly fits: readonly RigCalibration[];
  readonly lines: readonly LineCalibration[];
}

async function calibrateVerb(call: Call, world: World): Promise<ExitCode> {
  const since = call.values.get("since") ?? "";
  if (since !== "" && !isCalendarDate(since)) {
    complain(world, `--since ${since} is no day; write it like 2031-06-01.`);
    return UNUSABLE;
  }
  const { gathered, unusable } = await gather(call, since, world);
  const rig = matchMaybe(gathered.rigs, call.values.get("rig")?.normalize("NFC"));
  if (rig !== undefined && gathered.rigs.size > 0 && !gathered.rigs.has(rig)) {
    complain(world, `there is no rig ${rig} in the gear books${didYouMean(rig, gathered.rigs.keys())}`);
    return UNUSABLE;
  }
  const isAsked = (name: string): boolean => rig === undefined || name === rig;
  const fits = calibrateAll(gathered.used.filter((one) => isAsked(one.rig.name)));
  const lines = calibrateLines(gathered.ofLines.filter((one) => isAsked(one.rig.name)));
  const unused = gathered.unused.filter(({ one }) => isAsked(one.rig));
  for (const { shown, why } of unusable) complain(world, `${shown} can't be used: ${why}`);
  await write(call, world, { fits, lines }, { ...gathered, unused });
  const isDrawn = draw(call, world, { fits, lines });
  return unusable.length > 0 || !isDrawn ? UNUSABLE : FINE;
}

async function gather(
  call: Call,
  since: string,
  world: World,
): Promise<{ gathered: Gathered; unusable: Unusable[] }> {
  const found = askedFor(call, [TRIP_ENDING], world);
  const reader = new JournalReader(world);
  const unusable = [...found.unusable];
  const gathered: Gathered = {
    used: [],
    ofLines: [],
    unused: [],
    shownByUri: new Map(),
    files: [],
    rigs: new Map(),
  };
  for await (const read of reader.readAll(found.files)) {
    const { shown } = read.file;
    if (!read.ok) {
      unusable.push({ shown, why: read.why });
      continue;
    }
    const before = gathered.used.length + gathered.ofLines.length;
    gathered.shownByUri.set(read.analysis.uri, shown);
    for (const day of read.analysis.trips) {
      for (const [name, one] of day.trip.gear.rigs) gathered.rigs.set(name, one);
      if (day.trip.date < since) continue;
      const { used, ofLines, unused } = calibrationReadings(day);
      gathered.used.push(...used);
      gathered.ofLines.push(...ofLines);
      gathered.unused.push(...unused.map((one) => ({ path: shown, trip: day.trip.date, one })));
    }
    gathered.files.push({ path: shown, readings: gathered.used.length + gathered.ofLines.length - before });
  }
  unusable.push(...reader.unreadBooks(found.files));
  gathered.files.push(...unusable.map(({ shown, why }) => ({ path: shown, readings: 0, error: why })));
  return { gathered, unusable };
}

async function write(call: Call, world: World, { fits, lines }: Fitted, gathered: Gathered): Promise<void> {
  if (call.switches.has("json")) {
    const rigs = [
      ...fits.map((one) => calibratedRigJson(one, gathered.shownByUri)),
      ...lines.map((one) => calibratedLineJson(one, gathered.shownByUri)),
    ];
    const unused = gathered.unused.map(unusedJson);
    const content = { caution: CALIBRATION_CAUTION, rigs, unused, files: gathered.files };
    world.out.write(envelopeText("calibrate", world, content));
    return;
  }
  const look = { width: widthOf(world.out), paint: await paintFor(world, call) };
  world.out.write(
    calibrateText(fits, lines, gathered.unused, look)
      .map((line) => `${line}\n`)
      .join(""),
  );
}

/** False where the picture could not be written. */
function draw(call: Call, world: World, { fits, lines }: Fitted): boolean {
  const file = call.values.get("svg");
  if (file === undefined) return true;
  const picture = residualSvg([...fits, ...lines.map(fittedGroupOf)]);
  const why = world.files.writeText(resolve(world.cwd, file), picture, call.switches.has("force"));
  if (why !== undefined) complain(world, `${file} is not written: ${why}`);
  return why === undefined;
}
