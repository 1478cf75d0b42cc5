/** Words and half-sentences that messages are made of. */
import type { Dimension } from "../../../grammar/units.ts";
import type { NameKind, ValueType } from "../../../grammar/vocabulary.ts";

const LONGEST_SHOWN = 40;

/** A text as it was typed, in quotes, cut where it is long. */
export function shown(text: string): string {
  const cut = text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
  return `"${cut}"`;
}

/** `a`, `a or b`, `a, b or c`. */
export function anyOf(words: readonly string[]): string {
  const [last = "", ...before] = [...words].reverse();
  return before.length === 0 ? last : `${before.reverse().join(", ")} or ${last}`;
}

/** A question behind a sentence, with a blank before it; empty without suggestions. */
export function didYouMean(words: readonly string[]): string {
  return words.length === 0 ? "" : ` Did you mean ${anyOf(words)}?`;
}

/** What a measure is, and what it looks like. */
const MEASURES: Readonly<Record<Dimension | "any", readonly [noun: string, example: string]>> = {
  length: ["a length", "90 ft"],
  speed: ["a speed", "2.4 mph"],
  temperature: ["a temperature", "48 F"],
  mass: ["a weight", "12 lb"],
  duration: ["a stretch of time", "4 min"],
  "linear-density": ["a weight for each meter of line", "2.3 g/m"],
  angle: ["an angle", "7 deg"],
  area: ["an area", "165 cm2"],
  force: ["a pull", "5 lbf"],
  pressure: ["a pressure", "1013 hPa"],
  any: ["a number with its unit", "90 ft"],
};

/** `a length`. */
export const measureNoun = (dimension: Dimension | "any"): string => MEASURES[dimension][0];

/** `a length, like 90 ft`. */
export function measureWords(dimension: Dimension | "any"): string {
  const [noun, example] = MEASURES[dimension];
  return `${noun}, like ${example}`;
}

const NUMBERS = {
  count: "a whole number, like 6",
  bearing: "a course, like 310",
  dial: "a dial mark, like 2",
  ratio: "a plain number, like 1.02",
} as const;

const NAMES: Readonly<Partial<Record<NameKind, string>>> = {
  guest: "a guest's id",
  text: "a word, or a text in quotes",
  compass: "a wind direction, like SW, or calm",
  clip: "a clipped fin, like adipose, or none",
  upkeep: "something on the upkeep list",
  calibrated: "the name of a rig or cable",
};

/** What is expected after a word, in the words of the trade. */
export function valueWords(type: ValueType): string {
  switch (type.kind) {
    case "flag":
      return "nothing";
    case "quantity":
      return type.range ? rangeWords(type.dimension) : measureWords(type.dimension);
    case "number":
      return NUMBERS[type.what];
    case "name":
      return NAMES[type.of] ?? `the name of a ${type.of}`;
    case "position":
      return "a position, like 44 46.1N 086 21.7W";
    case "clock":
      return type.range ? "clock times, like 06:00 to 13:00" : "a clock time, like 06:30";
    case "date":
      return "a date, like 2031-06-21";
    case "point":
      return "a depth and the temperature there, like 30 ft 58 F";
  }
}

function rangeWords(dimension: Dimension | "any"): string {
  const [noun, example] = MEASURES[dimension];
  const [number = "", unit = ""] = example.split(" ");
  return `${noun} or a range, like ${example} or ${number} to ${Number(number) + 10} ${unit}`;
}

const SLOTS: Readonly<Record<string, string>> = {
  "species, or fish": "a species, or the word fish,",
  units: "the units meant, like ft mph F lb in,",
  "fresh or salt": "fresh or salt",
  what: "the thing on the upkeep list",
};

/** A slot's label with its article. */
export function slotWords(label: string): string {
  return SLOTS[label] ?? withArticle(label);
}

/** `a rig`, `an event name`. */
export function withArticle(noun: string): string {
  return `${/^[aeio]/u.test(noun) ? "an" : "a"} ${noun}`;
}
