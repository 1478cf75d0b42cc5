/** `deepwake depth --rig …`: one line that nobody set, computed as if it stood in a trip. */

import { fileURLToPath } from "node:url";
import { lengthWords, speedWords, tempWords } from "../../../server/model/figures.ts";
import { DEPTH_CAUTION, depthSentences } from "../../../server/reports/depth-sentences.ts";
import { gearChangeSentences } from "../../../server/reports/gear-change-sentences.ts";
import { complain } from "../complain.ts";
import { depthLineJson } from "../depth-lines.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import type { WhatIfJson } from "../output-schemas.ts";
import { shownPath } from "../paths.ts";
import { printable } from "../render/printable.ts";
import { type Paint, paintFor, widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import type { Call } from "../verb.ts";
import { type ChosenGear, chooseGear } from "../what-if/choose-gear.ts";
import { type ImaginedLine, imagineLine } from "../what-if/imagine-line.ts";
import type { World } from "../world.ts";

/** Prints the what-if's answer. Ends with 2 when there is none. */
export async function depthWhatIf(call: Call, world: World): Promise<ExitCode> {
  const chosen = chooseGear(call.values, world);
  if (!chosen.ok) return refuse(world, chosen.why);
  const imagined = imagineLine(call.values, chosen);
  if (!imagined.ok) return refuse(world, imagined.why);
  const { depth } = imagined;
  if (call.switches.has("json")) world.out.write(whatIfJson(imagined, chosen, world));
  else if (depth.why === null)
    world.out.write(whatIfText(imagined, chosen, widthOf(world.out), await paintFor(world, call)));
  if (depth.why === null) return FINE;
  return refuse(world, `no depth for ${depth.rig}: ${depth.why}.`);
}

function refuse(world: World, why: string): ExitCode {
  complain(world, why);
  return UNUSABLE;
}

type Imagined = ImaginedLine & { ok: true };
type Chosen = ChosenGear & { ok: true };

function whatIfJson({ day, depth }: Imagined, { isDated }: Chosen, world: World): string {
  const { gear, date, boat } = day.trip;
  const book = gear.rigs.get(depth.rig)?.origin.uri;
  const whatIf: WhatIfJson = {
    boat,
    date: isDated ? date : null,
    speedMS: depth.speed?.value ?? null,
    waterTempC: depth.water?.tempC ?? null,
    setbackM: depth.setting.setbackM ?? null,
    lure: depth.setting.lure ?? null,
  };
  const line = { ...depthLineJson(day, depth), line: null, time: null, instant: null };
  const path = book === undefined ? "" : shownPath(fileURLToPath(book), world);
  return envelopeText("depth", world, { caution: DEPTH_CAUTION, whatIf, files: [{ path, lines: [line] }] });
}

/** The same sentences as on a line of a trip; the speed is in the heading, for nobody read it. */
function whatIfText(imagined: Imagined, chosen: Chosen, width: number, paint: Paint): string {
  const { day, depth } = imagined;
  const sentences = [
    ...depthSentences(day, { ...depth, speed: undefined }),
    ...gearChangeSentences(day, depth),
  ];
  const noLure = depth.lure === null && depth.whyNoLure !== null;
  const hint = noLure ? ["For the lure's depth give --setback and --lure."] : [];
  return [
    ...wrap(printable(heading(imagined, chosen)), width, 2).map(paint.strong),
    ...[...sentences, ...hint, DEPTH_CAUTION].flatMap((text) => wrap(printable(text), width, 2)),
  ]
    .map((line) => `${line}\n`)
    .join("");
}

/** `C1 with 90 ft out at 2.5 mph in water of 50 F (Bright Penny, gear of 2031-08-10)` */
function heading({ day, depth }: Imagined, { isDated }: Chosen): string {
  const { gear, date, boat } = day.trip;
  const { aboveM } = depth.setting;
  const outM = day.depths[0]?.setting.outM;
  const clip = aboveM === undefined ? "" : `, ${lengthWords(gear, aboveM)} above the ball,`;
  const out = outM === undefined ? "" : ` with ${lengthWords(gear, outM)} out`;
  const speed = depth.speed === undefined ? "" : ` at ${speedWords(gear, depth.speed.value)}`;
  const water = depth.water === undefined ? "" : ` in water of ${tempWords(gear, depth.water.tempC)}`;
  return `${depth.rig}${clip}${out}${speed}${water} (${boat}${isDated ? `, gear of ${date}` : ""})`;
}
