/** What there is to say of a line that is on no downrigger, and of a slider. */
import type { LineDepth } from "../analysis/line-depth.ts";
import { colorWords, lengthUnit, lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { backWords, bandWords, downWords, placeWords } from "./place-words.ts";

/** Where diver or weight and lure are, how far back and to the side, and what was taken for granted. */
export function longLineSentences(gear: Gear, depth: LineDepth): string[] {
  const { weight, weightIs, lure, setting } = depth;
  if (lure === null) return [];
  const out = setting.outM === undefined ? "" : ` ${lineOutWords(gear, setting)} out.`;
  const first = weight ?? lure;
  const name = weight === null ? "Lure" : weightIs === "diver" ? "Diver" : "Weight";
  return [
    `${name} ${downWords(gear, first)}${backWords(gear, first)}${sideWords(gear, depth, first.onBottom)}.${out}`,
    ...(weight === null ? [] : [`Lure ${downWords(gear, lure)}${backWords(gear, lure)}.`]),
    ...backingSentence(gear, depth),
    ...depth.assumed.map((part) => `${part.charAt(0).toUpperCase()}${part.slice(1)}.`),
  ];
}

/** What is out: `5 colors`, `10 colors and 50 ft`, `200 ft`. */
function lineOutWords(gear: Gear, { outM, outColorsM }: Setting): string {
  if (outM === undefined) return "";
  if (outColorsM === undefined) return lengthWords(gear, outM);
  const colors = colorWords(outColorsM);
  const more = lengthWords(gear, outM - outColorsM);
  return more.startsWith("0 ") ? colors : `${colors} and ${more}`;
}

function sideWords(gear: Gear, { sideM }: LineDepth, isStopped: boolean): string {
  if (sideM === null) return "";
  return `${isStopped ? "" : " of the board"}, ${lengthWords(gear, sideM)} to the side`;
}

function backingSentence(gear: Gear, { backingM }: LineDepth): string[] {
  const words = lengthWords(gear, backingM);
  return words.startsWith("0 ") ? [] : [`${words} of that is backing.`];
}

/** A slider's depth; of a free one only a range. */
export function sliderSentences(gear: Gear, { slider, bottom }: LineDepth): string[] {
  if (slider === null) return [];
  if (slider.lowM >= (bottom?.waterM ?? Number.POSITIVE_INFINITY))
    return [`Slider (${slider.lure}) on the bottom.`];
  const { lure, isFree } = slider;
  if (!isFree) return [`Slider (${lure}) about ${placeWords(gear, slider)}.`];
  return [
    `Slider (${lure}) somewhere from ${bandWords(gear, slider)} ${lengthUnit(gear)} down, on the belly of the line: where a free slider settles is poorly known.`,
  ];
}
