/** Values in other units: what is written, and that the way there and back keeps what was written. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findUnit, toSi, UNITS, type UnitRow } from "../../grammar/units.ts";
import { stepOf, writtenIn } from "../../server/model/written-in.ts";

function unit(name: string): UnitRow {
  const row = findUnit(name);
  if (row === undefined) throw new Error(`no unit ${name}`);
  return row;
}

const convert = (number: string, from: UnitRow, to: UnitRow): string | undefined =>
  writtenIn(toSi(Number(number), from), stepOf(number, from), to);

// Expected values by the definitions of the units (NIST SP 811, App. B.8), rounded by hand.
describe("what is written", () => {
  test.each([
    ["72", "ft", "21.9", "m"],
    ["21.9", "m", "72", "ft"],
    ["2.4", "mph", "2.1", "kn"],
    ["45.5", "F", "7.5", "C"],
    ["32", "F", "0", "C"],
    ["31.9", "F", "-0.06", "C"],
    ["6", "fathoms", "36", "ft"],
    ["35", "in", "89", "cm"],
    ["90", "cm", "35.4", "in"],
    ["18", "lb", "8", "kg"],
    ["17", "lb", "7.7", "kg"],
    ["2.30", "ft", "0.701", "m"],
    ["0.9", "mm", "0.035", "in"],
  ])("%s %s is %s %s", (number, from, wanted, to) => {
    expect(convert(number, unit(from), unit(to))).toBe(wanted);
  });
  test("nothing where too many decimals would be needed", () => {
    expect(convert("0.0001", unit("mm"), unit("km"))).toBeUndefined();
  });
});

const pairs = UNITS.flatMap((from) =>
  UNITS.filter((to) => to !== from && to.dimension === from.dimension).map((to) => [from, to] as const),
).filter(([from, to]) => Math.abs(Math.log10(from.factor / to.factor)) < 2);

test("there the value is the same to half a digit, and back again to one", () => {
  const numbers = fc.tuple(fc.integer({ min: -400, max: 100_000 }), fc.integer({ min: 0, max: 2 }));
  fc.assert(
    fc.property(fc.constantFrom(...pairs), numbers, ([from, to], [digits, decimals]) => {
      const number = (digits / 10 ** decimals).toFixed(decimals);
      const there = convert(number, from, to);
      fc.pre(there !== undefined);
      const step = stepOf(number, from);
      expect(Math.abs(toSi(Number(there), to) - toSi(Number(number), from))).toBeLessThanOrEqual(
        step * 0.5000001,
      );
      const back = convert(there ?? "", to, from);
      expect(back).toBeDefined();
      expect(Math.abs(toSi(Number(back), from) - toSi(Number(number), from))).toBeLessThanOrEqual(
        step * 1.0000001,
      );
    }),
    { seed: 5, numRuns: 3000 },
  );
});
