/** Numbers as they are typed: `72`, `2.30`, `-1.5`, `72ft`; and the common ways to get them wrong. */
import { findUnit } from "./units.ts";

const NUMBER = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+))(.*)$/su;

/** True when a word starts like a number, so that it is read as one. */
export function looksNumeric(word: string): boolean {
  const first = word.charCodeAt(0);
  if (first >= 48 && first <= 57) return true;
  if (first !== 43 && first !== 45 && first !== 46) return false;
  const second = word.charCodeAt(1);
  return (second >= 48 && second <= 57) || second === 46;
}

/** Digits with at most one point between them; most numbers are, and need no pattern. */
function isPlainNumber(word: string): boolean {
  let points = 0;
  for (let at = 0; at < word.length; at++) {
    const code = word.charCodeAt(at);
    if (code === 46 && at > 0 && at < word.length - 1) points++;
    else if (code < 48 || code > 57) return false;
  }
  return points <= 1 && word !== "";
}

/** Splits `72ft` into number and unit; undefined when the word is not a number followed by letters. */
export function splitNumber(word: string): { number: string; unit: string } | undefined {
  if (isPlainNumber(word)) return { number: word, unit: "" };
  const match = NUMBER.exec(word);
  if (match === null) return undefined;
  const [, number = "", unit = ""] = match;
  return /^[\d.,/+–—-]/u.test(unit) ? undefined : { number, unit };
}

const RUN_TOGETHER = /^(?:\d+(?:\.\d+)?[^\d.,+-]+){2,}$/u;
const PART = /\d+(?:\.\d+)?[^\d.,+-]+/gu;

/** The parts of a measure written without a blank: `5lb4oz` → `5lb`, `4oz`. Undefined unless all measure the same. */
export function splitCompound(word: string): readonly string[] | undefined {
  if (!RUN_TOGETHER.test(word)) return undefined;
  const parts = word.match(PART) ?? [];
  const [first, ...others] = parts.map((part) => findUnit(splitNumber(part)?.unit ?? "")?.dimension);
  return first !== undefined && others.every((dimension) => dimension === first) ? parts : undefined;
}

const MENDS: readonly (readonly [RegExp, (m: RegExpExecArray) => string])[] = [
  [/^([+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?)(\p{L}*)$/u, (m) => withUnit((m[1] ?? "").replaceAll(",", ""), m[2])],
  [/^([+-]?\d+),(\d+)(\p{L}*)$/u, (m) => withUnit(`${m[1]}.${m[2]}`, m[3])],
  [/^(\d+(?:\.\d+)?)[-–—](\d+(?:\.\d+)?)(\p{L}*)$/u, (m) => withUnit(`${m[1]} to ${m[2]}`, m[3])],
  [/^([+-]?\d+)\.(\p{L}*)$/u, (m) => withUnit(m[1] ?? "", m[2])],
  [/^(\d+)\/(\d+)(\p{L}*)$/u, (m) => withUnit(fraction(Number(m[1]), Number(m[2])), m[3])],
];

/** How a misspelt number is probably meant, or null. `72,5` → `72.5`, `1,200` → `1200`, `70-95` → `70 to 95`. */
export function mendNumber(word: string): string | null {
  for (const [pattern, mend] of MENDS) {
    const match = pattern.exec(word);
    if (match !== null) return mend(match) || null;
  }
  return null;
}

function withUnit(number: string, unit: string | undefined): string {
  return unit === undefined || unit === "" || number === "" ? number : `${number} ${unit}`;
}

function fraction(top: number, bottom: number): string {
  return bottom === 0 ? "" : String(Number((top / bottom).toFixed(3)));
}
