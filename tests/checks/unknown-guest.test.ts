import { test } from "vitest";
import { dedent } from "../harness/markers.ts";
import { checkFixOf, checkLines } from "./check-day.ts";

const GUESTS = '  guest G1 "Marv Tessler"\n  guest G2\n  mate Dov\n';

test.each([
  "06:14 catch unknown coho by G1",
  "06:14 catch unknown coho by g2",
  "06:14 catch unknown coho by captain\n06:18 catch unknown coho by mate\n06:20 lost unknown fish by dov",
  "06:14 catch unknown coho by G7 sure",
  `
  06:14 catch unknown coho by G7
                              ^^ unknown-guest No guest "G7" is named under this trip. Did you mean G1 or G2?
  `,
])("%s", (source) => {
  checkLines("opener", GUESTS + dedent(source));
});

test("a trip that names no guests has any", () => {
  checkLines("opener", "06:14 catch unknown coho by Marv");
});

test("the nearest are at hand", () => {
  const lines = (name: string): string => `${GUESTS}06:14 catch unknown coho by ${name}\n`;
  checkFixOf("unknown-guest", "opener", lines("G11"), lines("G1"), "G1");
});
