/** Units against their exact definitions, and conversions that follow from these by plain arithmetic. */
import { describe, expect, test } from "vitest";
import { findUnit, fromSi, toSi, type UnitRow } from "../../grammar/units.ts";
import { partsToSi } from "../../server/model/quantities.ts";
import { checkRows } from "./reference-rows.ts";

function unit(spelling: string): UnitRow {
  const row = findUnit(spelling);
  if (row === undefined) throw new Error(`no unit ${spelling}`);
  return row;
}

/** A measure as it is written, `20 lb 8 oz`, in SI. */
function measureSi(written: string): number {
  const words = written.split(" ");
  const parts = words.flatMap((number, i) =>
    i % 2 === 0 ? [{ number, unit: unit(words[i + 1] ?? "").unit }] : [],
  );
  return partsToSi(parts, undefined, unit(words[1] ?? "").dimension) ?? Number.NaN;
}

const measureIn = ([written, spelling]: readonly [string, string]): number =>
  fromSi(measureSi(written), unit(spelling));

describe("exact by definition, to the last digit", () => {
  test.each([
    ["oz", 0.028349523125, "avoirdupois ounce, a sixteenth of 0.45359237 kg; mathjs 15.2.0, run"],
    ["lbf", 4.4482216152605, "0.45359237 x 9.80665; mathjs 15.2.0, run"],
    ["nmi", 1852, "international, 1929; js-quantities 1.8.0, run; NIST SP 811 App. B, memory"],
    ["mph", 0.44704, "mathjs 15.2.0, js-quantities 1.8.0, run"],
    ["kn", 1852 / 3600, "arithmetic"],
  ])("1 %s is %d in SI (%s)", (spelling, wanted) => {
    expect(toSi(1, unit(spelling))).toBe(wanted);
  });
});

const EXACT = "NIST SP 811 App. B and the definitions of 1929 and 1959; exact arithmetic";
/** Of the printed digits' last, or of a double where the value is printed in full. */
const row = (
  from: string,
  expected: number,
  to: string,
  tolerance = 1e-14 * Math.max(1, Math.abs(expected)),
) => ({
  name: `${from} is ${expected} ${to}`,
  input: [from, to] as const,
  expected,
  tolerance,
  source: EXACT,
});

describe("conversions", () => {
  checkRows(
    [
      row("100 ft", 30.48, "m"),
      row("65 ft", 19.812, "m"),
      row("2.5 mph", 1.1176, "m/s"),
      row("2.5 mph", 2.172440604752, "kn", 5e-13),
      row("2.3 kn", 1.183222222222, "m/s", 5e-13),
      row("2.3 kn", 2.646792730454, "mph", 5e-13),
      row("20 lb 8 oz", 9.298643585, "kg"),
      row("10 fathoms", 18.288, "m"),
      row("10 fathoms", 60, "ft"),
      row("1 nmi", 1.150779448024, "mi", 5e-13),
      row("32 F", 0, "C"),
      row("212 F", 100, "C"),
      row("54 F", 12.222222222, "C", 5e-10),
    ],
    measureIn,
  );
});
