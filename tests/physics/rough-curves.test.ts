/** Rough drawings are off by less than they are taken to be. */
import { expect, test } from "vitest";
import { closestApproach } from "../../server/physics/closest-approach.ts";
import { type Curve, distanceM } from "../../server/physics/curve.ts";
import { boxAround, boxesApartM } from "../../server/physics/curve-box.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { downriggerCurves, longLineCurves } from "../../server/physics/rig-curves.ts";
import {
  roughDownriggerCurves,
  roughLongLineCurves,
  roughlyOffM,
} from "../../server/physics/rough-curves.ts";
import { DIVER, lineInUse, longLine } from "./long-line-maker.ts";
import { normalDraws } from "./random-normal.ts";
import { FOOT_M, MPH_MS, POUND_KG, rig, rod } from "./rig-maker.ts";

const normal = normalDraws(71);
const within = (low: number, high: number): number => {
  const share = 0.5 + 0.25 * normal();
  return low + (high - low) * Math.min(1, Math.max(0, share));
};

/** The farthest that a point of one is from the other. */
function apartM(one: Curve, other: Curve): number {
  return Math.max(...one.map((point) => closestApproach([point], other)?.distanceM ?? Number.NaN));
}

function drawTurn() {
  const speedMS = within(1.6, 3) * MPH_MS;
  const topMS = speedMS + within(-0.3, 0.3) * MPH_MS;
  const flow =
    normal() > 0
      ? uniformFlow(speedMS)
      : ({ type: "piecewise", depthsM: [0, within(8, 30)], speedsMS: [topMS, speedMS] } as const);
  const turnRadiusM = (normal() > 0 ? 1 : -1) * within(40, 110);
  return { flow, turnRadiusM, top: { behindM: 0, acrossM: within(-3, 3), depthM: 0 } };
}

/** The worst of so many drawings, as a share of what is allowed; those that can't be drawn don't count. */
function worst(
  draw: () => readonly [rough: readonly Curve[] | undefined, well: readonly Curve[] | undefined],
) {
  let most = 0;
  let drawn = 0;
  for (let i = 0; i < 300; i++) {
    const [rough, well] = draw();
    if (rough === undefined || well === undefined) continue;
    expect(rough).toHaveLength(well.length);
    drawn++;
    const reachM = Math.max(
      ...well.flat().map((point) => distanceM(point, { behindM: 0, acrossM: 0, depthM: 0 })),
    );
    for (const [n, curve] of well.entries()) {
      const other = rough[n] ?? [];
      most = Math.max(most, Math.max(apartM(curve, other), apartM(other, curve)) / roughlyOffM(reachM));
    }
  }
  expect(drawn).toBeGreaterThan(100);
  return most;
}

test("downriggers", () => {
  const share = worst(() => {
    const { flow, turnRadiusM, top } = drawTurn();
    const outFt = within(30, 160);
    const rods = [rod("C1", within(0, 5), within(5, 100)), rod("C1U", within(8, 20), within(5, 50))];
    const one = rig(outFt, 2, rods.slice(0, normal() > 0 ? 1 : 2), {
      flow,
      cable: lineInUse(normal() > 0 ? "steel" : "braid", within(0.5, 1)),
      ball: { massKg: within(8, 16) * POUND_KG, densityKgM3: 11_340, dragMultiplier: 1.2 },
    });
    return [
      roughDownriggerCurves(one, { flow, turnRadiusM }, top),
      downriggerCurves(one, turnRadiusM, top)?.map((part) => part.curve),
    ];
  });
  expect(share).toBeLessThan(1);
});

test.each([
  ["leadcore", lineInUse("leadcore", 0.85), {}],
  ["copper", lineInUse("copper", 0.95), {}],
  ["flat lines", lineInUse("mono", 0.4), {}],
  ["divers", lineInUse("steel", 0.53), { joint: DIVER }],
] as const)("%s", (_, main, change) => {
  const share = worst(() => {
    const { flow, turnRadiusM, top } = drawTurn();
    const one = longLine(main, within(40, 220), 2, { flow, ...change });
    const rough = roughLongLineCurves(one, { flow, turnRadiusM }, top);
    const well = longLineCurves(one, turnRadiusM, top)?.map((part) => part.curve);
    // Too long for the circle: neither is drawn.
    if (rough?.length === 0) expect(well).toBeUndefined();
    return [rough, well];
  });
  expect(share).toBeLessThan(1);
});

test("boxes are no farther apart than what is in them", () => {
  const one = [
    { behindM: 0, acrossM: 0, depthM: 0 },
    { behindM: 5, acrossM: 1, depthM: 20 * FOOT_M },
  ];
  const other = one.map((point) => ({ ...point, acrossM: point.acrossM + 3, behindM: point.behindM + 9 }));
  for (const acrossM of [-5, 0, 4]) {
    const moved = other.map((point) => ({ ...point, acrossM: point.acrossM + acrossM }));
    const apart = boxesApartM(boxAround(one), boxAround(other), acrossM);
    expect(apart).toBeGreaterThan(3);
    expect(apart).toBeLessThanOrEqual(closestApproach(one, moved)?.distanceM ?? 0);
  }
});
