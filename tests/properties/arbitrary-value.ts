/** Values of every type, as the typed form holds them when a canonical line is read. */
import fc from "fast-check";
import type { Part, Value } from "../../grammar/journal.ts";
import { type Dimension, findUnit, UNITS, type UnitRow } from "../../grammar/units.ts";
import type { ValueType } from "../../grammar/vocabulary.ts";

/** A name as it is typed: bare where it can be, else in quotes. */
export interface Name {
  readonly text: string;
  readonly quoted: boolean;
}

const KEYWORDS =
  'out set lure kept slider weight length in to ft all 72 72ft 05:45 2031-06-21 P1 king Māhia a,b a"b -'.split(
    " ",
  );

/** Any name; keywords, numbers and stamps among them. */
export const anyName: fc.Arbitrary<Name> = fc.oneof(
  fc.constantFrom(...KEYWORDS).map((text) => ({ text, quoted: false })),
  fc.stringMatching(/^[a-z][a-z0-9-]{0,8}$/u).map((text) => ({ text, quoted: false })),
  fc
    .string({ maxLength: 12, unit: "grapheme" })
    .map((text) => ({ text: text.replaceAll(/[\r\n]/gu, ""), quoted: true })),
);

/** A calendar date. */
export const anyDate: fc.Arbitrary<string> = fc
  .date({ min: new Date("1950-01-01"), max: new Date("2099-12-31"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

const two = (max: number): fc.Arbitrary<string> => fc.nat(max).map((n) => String(n).padStart(2, "0"));

/** `HH:MM` or `HH:MM:SS`. */
export const anyClock: fc.Arbitrary<string> = fc
  .tuple(two(23), two(59), fc.option(two(59)))
  .map((parts) => parts.filter((part) => part !== null).join(":"));

/** `+HH:MM`, `-HH:MM` or `Z`. */
export const anyOffset: fc.Arbitrary<string> = fc.oneof(
  fc.constant("Z"),
  fc.tuple(fc.constantFrom("+", "-"), two(13), two(59)).map(([sign, h, m]) => `${sign}${h}:${m}`),
);

const positiveNumber = fc.oneof(
  fc.nat(2000).map(String),
  fc.tuple(fc.nat(300), fc.nat(99)).map(([whole, rest]) => `${whole}.${rest}`),
  fc.nat(99).map((rest) => `.${rest}`),
);
const anyNumber = fc
  .tuple(fc.constantFrom("", "", "", "-", "+"), positiveNumber)
  .map(([sign, number]) => sign + number);

/** True when the second measure, written right after the first, would be read as its finer part. */
export function wouldJoin(before: Part | undefined, after: Part | undefined): boolean {
  const [coarse, fine] = [findUnit(before?.unit ?? ""), findUnit(after?.unit ?? "")];
  if (coarse === undefined || fine === undefined || after === undefined) return false;
  if (coarse.dimension !== fine.dimension || !["length", "mass", "duration"].includes(fine.dimension))
    return false;
  return /^\d/u.test(after.number) && Number(after.number) * fine.factor < coarse.factor;
}

/** The parts of one measure: one, or as many as join. */
export function anyParts(dimension: Dimension | "any", isUnitNeeded = false): fc.Arbitrary<Part[]> {
  const units = UNITS.filter((unit) => dimension === "any" || unit.dimension === dimension);
  const unit = fc.constantFrom<(UnitRow | null)[]>(...units, ...(isUnitNeeded ? [] : [null]));
  const part = fc.tuple(anyNumber, unit).map(([number, of]): Part => ({ number, unit: of?.unit ?? null }));
  return fc.array(part, { minLength: 1, maxLength: 3 }).map(([first, ...more]) => {
    const parts = first === undefined ? [] : [first];
    for (const next of more) if (wouldJoin(parts.at(-1), next)) parts.push(next);
    return parts;
  });
}

const degrees = (max: number, letters: string): fc.Arbitrary<string> =>
  fc
    .tuple(fc.nat(max - 1), fc.option(fc.tuple(fc.nat(59), fc.nat(99))), fc.constantFrom(...letters))
    .map(([whole, minutes, letter]) =>
      minutes === null ? `${whole}${letter}` : `${whole} ${minutes[0]}.${minutes[1]}${letter}`,
    );
const signed = (max: number): fc.Arbitrary<string> =>
  fc
    .tuple(fc.constantFrom("", "-", "+"), fc.nat(max - 1), fc.nat(9999))
    .map(([sign, whole, rest]) => `${sign}${whole}.${rest}`);
const position = fc
  .oneof(fc.tuple(degrees(90, "NS"), degrees(180, "EW")), fc.tuple(signed(90), signed(180)))
  .map(([latitude, longitude]): Value => ({ kind: "position", latitude, longitude }));

const PLAIN: Record<string, fc.Arbitrary<string>> = {
  count: fc.nat(500).map(String),
  bearing: fc
    .tuple(fc.nat(359), fc.option(fc.nat(9)))
    .map(([whole, tenth]) => String(whole).padStart(3, "0") + (tenth === null ? "" : `.${tenth}`)),
  dial: fc.constantFrom("0", "1", "2.5", "-3", "+1"),
  ratio: anyNumber,
};

/** A value of that type; with its unit where a bare measure could be of several dimensions. */
export function anyValue(type: ValueType, isUnitNeeded = false): fc.Arbitrary<Value> {
  switch (type.kind) {
    case "flag":
      return fc.constant({ kind: "flag" });
    case "quantity": {
      const parts = anyParts(type.dimension, isUnitNeeded);
      const one = parts.map((p): Value => ({ kind: "quantity", parts: p }));
      if (!type.range) return one;
      return fc.oneof(
        one,
        fc.tuple(parts, parts).map(([low, high]): Value => ({ kind: "range", low, high })),
      );
    }
    case "number":
      return (PLAIN[type.what] ?? fc.constant("1")).map((number): Value => ({ kind: "number", number }));
    case "name":
      return anyName.map((name): Value => ({ kind: "name", ...name }));
    case "position":
      return position;
    case "clock": {
      const to = type.range ? fc.option(anyClock) : fc.constant(null);
      return fc.tuple(anyClock, to).map(([from, until]): Value => ({ kind: "clock", from, to: until }));
    }
    case "date":
      return anyDate.map((date): Value => ({ kind: "date", date }));
    case "point":
      return fc
        .tuple(anyParts("length"), anyParts("temperature"))
        .map(([depth, temp]): Value => ({ kind: "point", depth, temp }));
  }
}
