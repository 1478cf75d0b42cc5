/** How much to let out: the inverse of the depth for every kind of rig, in what is counted on deck. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import type { WaterAndSpeed } from "../../server/analysis/downrigger-input.ts";
import { type LetOut, letOut } from "../../server/analysis/let-out.ts";
import { letOutColumns } from "../../server/analysis/let-out-columns.ts";
import { imaginedLine, type Rigging, usualRigs } from "../../server/analysis/lines-to-set.ts";
import { resolveGear } from "../../server/model/gear.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { letOutTable } from "../../server/reports/let-out-table.ts";
import { BOAT, lureFtOf } from "./depth-of.ts";

const FOOT_M = 0.3048;
const MPH_MS = 0.44704;
const SD = "2031-06-01 calibrate SD lift-area 165 cm2 drag-area 105 cm2";
const MORE = `rig P1U stacked P1\n${SD}\n2031-06-01 calibrate S1 drag 1.31 counter-scale 1.02 counter-offset -1.5 ft\n`;

function gearOf(more = "") {
  const book = { uri: "file:///season/boat.gear", parse: parse(`${BOAT}${MORE}${more}`) };
  return resolveGear([book], "Bright Penny", "2031-06-21");
}

const GEAR = gearOf();
const ON: Rigging = { lure: "glow-spoon", setbackM: 20 * FOOT_M, aboveM: 15 * FOOT_M };

function waterAt(speedMph: number, topMph?: number, depthFt = 50): WaterAndSpeed {
  const speedMS = speedMph * MPH_MS;
  return {
    flow:
      topMph === undefined
        ? uniformFlow(speedMS)
        : { type: "piecewise", depthsM: [0, depthFt * FOOT_M], speedsMS: [topMph * MPH_MS, speedMS] },
    speedSdMS: 0.05,
    waterTemperatureC: 10,
  };
}

function ask(rigName: string, depthFt: number, water: WaterAndSpeed, rigging = ON, gear = GEAR): LetOut {
  const rig = gear.rigs.get(rigName);
  if (rig === undefined) throw new Error(`no rig ${rigName}`);
  return letOut(imaginedLine(gear, rig, rigging), water, depthFt * FOOT_M, createDepthMemo());
}

const RIGS = ["P1", "S1", "P1U", "PB", "LB", "CU", "WW", "FW", "SD"];

function rigNamed(name: string) {
  const rig = GEAR.rigs.get(name);
  if (rig === undefined) throw new Error(`no rig ${name}`);
  return rig;
}

describe("undoes the depth", () => {
  test.each(RIGS)("of %s, in one stream and in two", (rig) => {
    let answers = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 90 }),
        fc.double({ min: 1.2, max: 3, noNaN: true }),
        fc.option(fc.double({ min: 0.85, max: 1.2, noNaN: true }), { nil: undefined }),
        (depthFt, mph, share) => {
          const answer = ask(
            rig,
            depthFt,
            waterAt(mph, share === undefined ? undefined : share * mph, depthFt),
          );
          if (!answer.ok) {
            expect(answer.why).toMatch(/^(?:not reachable|it |too shallow|the release)/u);
            return;
          }
          answers++;
          const { band, outM, exactM } = answer;
          if (band === undefined) throw new Error("no depth at the length that was answered");
          const offM = Math.abs(outM - exactM) * Math.abs(band.depthPerOut);
          expect(Math.abs(band.depthM - depthFt * FOOT_M)).toBeLessThan(1.1 * offM + 0.5 * FOOT_M);
          expect(band.lowM).toBeLessThanOrEqual(band.depthM);
          expect(band.highM).toBeGreaterThanOrEqual(band.depthM);
        },
      ),
      { seed: 20310621, numRuns: 40 },
    );
    expect(answers).toBeGreaterThan(5);
  });

  test("agrees with the same line written in a trip", () => {
    const answer = ask("P1", 60, waterAt(2.3), { lure: "glow-spoon", setbackM: 20 * FOOT_M });
    if (!answer.ok) throw new Error(answer.why);
    expect(answer).toMatchObject({ of: "lure", unit: "ft", backing: null });
    const written = lureFtOf(`06:00 set P1 out ${answer.out} ft setback 20 ft lure glow-spoon`, SD);
    expect(written).toBeCloseTo((answer.band?.depthM ?? 0) / FOOT_M, 0);
    expect(Math.abs(written - 60)).toBeLessThan(1);
  });
});

test("without a lure it is the ball that comes to the depth", () => {
  const answer = ask("P1", 60, waterAt(2.3), {});
  expect(answer).toMatchObject({ ok: true, of: "ball" });
});

test("colors to a half; behind all of them, backing", () => {
  const few = ask("PB", 25, waterAt(2));
  expect(few).toMatchObject({ ok: true, unit: "colors", backing: null });
  expect(few.ok && (few.out * 2) % 1).toBe(0);
  expect(ask("PB", 75, waterAt(1.6))).toMatchObject({
    ok: true,
    out: 10,
    unit: "colors",
    backing: { unit: "ft" },
  });
});

test("a boat in meters counts in meters", () => {
  const gear = gearOf();
  const metric = {
    ...gear,
    defaults: resolveGear(
      [{ uri: "file:///m.gear", parse: parse('boat "M"\n  units m km/h C kg cm\n') }],
      "M",
      "2031-06-21",
    ).defaults,
  };
  const answer = ask("CU", 40, waterAt(2.3), ON, metric);
  expect(answer).toMatchObject({ ok: true, unit: "m" });
  expect(answer.ok && Number.isInteger(answer.out)).toBe(true);
});

describe("says why there is none", () => {
  test("out of reach: the deepest, and what brings it", () => {
    const answer = ask("FW", 150, waterAt(2.5));
    if (answer.ok) throw new Error("reached");
    expect(answer.why).toBe("not reachable at this speed");
    expect(answer.deepest?.unit).toBe("ft");
    expect(answer.deepest?.depthM).toBeLessThan(150 * FOOT_M);
    const less = ask("FW", Math.floor((answer.deepest?.depthM ?? 0) / FOOT_M) - 1, waterAt(2.5));
    expect(less.ok).toBe(true);
  });

  test("a ball that would bring a stacked rod out of the water", () => {
    expect(ask("P1U", 1, waterAt(2.3))).toMatchObject({
      ok: false,
      why: expect.stringMatching(/^(?:too shallow for it|the release)/u),
    });
  });

  test("no more than the rig holds", () => {
    const short = gearOf("rig C1 downrigger cable rigger-wire ball round-12 holds 200 ft\n");
    const answer = ask("C1", 198, waterAt(2.5), {}, short);
    expect(answer).toMatchObject({ ok: false, deepest: { out: 200 } });
  });

  test.each([
    ["J1", {}, "J1 is cast or jigged, and hangs where it is let down"],
    [
      "P1U",
      { lure: "glow-spoon", setbackM: 6 },
      "how far above the ball P1U is clipped isn't stated (above 20 ft)",
    ],
  ] as const)("%s", (rig, rigging, why) => {
    expect(ask(rig, 50, waterAt(2.3), rigging)).toMatchObject({ ok: false, why });
  });

  test("a diver that was never measured", () => {
    const gear = gearOf("2031-06-10 cable diver-wire steel diameter 0.4 mm\n");
    expect(ask("SD", 50, waterAt(2.3), ON, gear)).toMatchObject({
      ok: false,
      why: expect.stringMatching(/^SD's diver was never measured/u),
    });
  });

  test.each([-1, Number.NaN, 99])("a speed of %d", (mph) => {
    for (const rig of RIGS) expect(ask(rig, 50, waterAt(mph)).ok).toBe(false);
  });

  test.each([0.001, -5, Number.NaN, 1e9])("a depth of %d ft", (depthFt) => {
    for (const rig of RIGS) {
      const answer = ask(rig, depthFt, waterAt(2.3));
      if (answer.ok) expect(Number.isFinite(answer.out)).toBe(true);
    }
  });
});

test("a column solves the rig forward for no more than the row whose range is shown", () => {
  const memo = createDepthMemo();
  const lines = ["P1", "CU"].map((name) => imaginedLine(GEAR, rigNamed(name), ON));
  const depthsM = [20, 30, 40, 50, 60].map((ft) => ft * FOOT_M);
  const columns = letOutColumns(lines, depthsM, () => waterAt(2.3), memo);
  expect(columns.every(({ cells }) => cells.some((cell) => cell.ok))).toBe(true);
  expect(memo.solved).toBe(0);
  letOutTable(GEAR, depthsM, columns, []);
  expect(memo.solved).toBe(2);
});

test("jigs and stacked rods without a clip are left out unless they are named", () => {
  const names = (rigging: Rigging) => usualRigs(GEAR, rigging).map(({ name }) => name);
  expect(names({})).not.toContain("J1");
  expect(names({})).not.toContain("P1U");
  expect(names({ aboveM: 5 })).toContain("P1U");
});
