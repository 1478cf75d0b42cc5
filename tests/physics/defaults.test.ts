import { describe, expect, test } from "vitest";
import type { DefaultRow } from "../../server/physics/default-row.ts";
import { DEFAULTS } from "../../server/physics/defaults.ts";

const rows: readonly (readonly [string, DefaultRow])[] = Object.entries(DEFAULTS);

describe("the table of defaults", () => {
  test.each(rows)("%s is a finite value with an origin and one plain sentence", (_key, row) => {
    expect(Number.isFinite(row.value)).toBe(true);
    expect(row.sd).toBeGreaterThanOrEqual(0);
    expect(row.origin).not.toBe("");
    expect(row.says).toMatch(/^[A-Z].*\.$/);
  });
  test("holds the figures that the design settled on", () => {
    expect(DEFAULTS.cableDragMultiplier.value).toBe(1.2);
    expect(Math.hypot(DEFAULTS.sharedDrag.sd, DEFAULTS.cableDragMultiplier.sd)).toBeCloseTo(0.3, 2);
    expect([DEFAULTS.rodPullN.value, DEFAULTS.rodPullN.sd]).toEqual([8, 4]);
    expect([DEFAULTS.counterScale.sd, DEFAULTS.counterOffsetM.sd]).toEqual([0.03, 0.6]);
    expect(DEFAULTS.probeAboveBallM.value).toBeCloseTo(0.381, 12);
    expect(DEFAULTS.colorLengthM.value).toBeCloseTo(9.144, 12);
  });
});
