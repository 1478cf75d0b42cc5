import { expect, test } from "vitest";
import { sharedDragFrom } from "../../server/physics/shared-drag.ts";

const SHARED = 0.22 ** 2;
const OWN = 0.2 ** 2;

/** What a fit makes of readings with variance `v` that alone would say `read`: the prior is in it. */
function fitted(read: number, v: number): { lnDrag: number; lnDragSd: number } {
  const posterior = 1 / (1 / v + 1 / (SHARED + OWN));
  return { lnDrag: Math.log(1.2) + (read / v) * posterior, lnDragSd: Math.sqrt(posterior) };
}

test("nothing fitted leaves the prior", () => {
  expect(sharedDragFrom([])).toEqual({ lnShift: 0, lnSd: 0.22 });
});

test.each([0.001, 0.01, 0.1])("one cable with variance %d: the published formula", (v) => {
  const { lnShift, lnSd } = sharedDragFrom([fitted(0.2, v)]);
  expect(lnSd ** 2).toBeCloseTo((SHARED * (OWN + v)) / (SHARED + OWN + v), 12);
  expect(lnShift).toBeCloseTo((SHARED / (SHARED + OWN + v)) * 0.2, 12);
});

test("two cables say more than one, and however many leave something", () => {
  const one = sharedDragFrom([fitted(0.2, 0.005)]);
  const many = sharedDragFrom(Array.from({ length: 50 }, () => fitted(0.2, 0.005)));
  expect(many.lnSd).toBeLessThan(one.lnSd);
  expect(many.lnShift).toBeGreaterThan(one.lnShift);
  expect(many.lnShift).toBeLessThan(0.2);
});

test("a fit that says no more than the prior counts for nothing", () => {
  expect(sharedDragFrom([{ lnDrag: 1, lnDragSd: 0.4 }])).toEqual({ lnShift: 0, lnSd: 0.22 });
  expect(sharedDragFrom([{ lnDrag: Number.NaN, lnDragSd: 0.1 }]).lnShift).toBe(0);
});
