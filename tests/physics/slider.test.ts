/** Sliders: pinned ones are where they were pinned, free ones only somewhere on the belly of the line. */
import { describe, expect, test } from "vitest";
import { solveDownrigger } from "../../server/physics/downrigger.ts";
import { lureForces } from "../../server/physics/lure.ts";
import { type Slider, solveSlider } from "../../server/physics/slider.ts";
import { waterAt } from "../../server/physics/water.ts";
import { expectNear } from "./line-maker.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";

const ROD = rod("P1", 0, 15);

/** The slider's answer and its release, with 100 ft of cable out. */
function slid(slider: Partial<Slider>, speedMph = 2.4) {
  const solved = solveDownrigger(rig(100, speedMph, [ROD]));
  const water = waterAt(10);
  if (!solved.ok || !water.ok) throw new Error("no downrigger");
  const release = solved.rods[0]?.release ?? { depthM: 0, behindM: 0 };
  const whole = { lure: lureForces("spoon"), leaderM: 6 * FOOT_M, ...slider };
  return { release, slider: solveSlider(whole, ROD, release, speedMph * MPH_MS, water) };
}

function placed(slider: Partial<Slider>, speedMph?: number) {
  const { release, slider: answer } = slid(slider, speedMph);
  if (!answer.ok) throw new Error(answer.why);
  return { release, ...answer };
}

describe("a pinned slider", () => {
  test("at the release hangs from it by its leader", () => {
    const { release, depthM, isFree } = placed({ fixedM: 0 });
    expect(isFree).toBe(false);
    expect(depthM).toBeGreaterThan(release.depthM);
    expect(depthM).toBeLessThan(release.depthM + 6 * FOOT_M);
  });

  test("rises about as far as it is pinned up the line, which runs nearly straight up in slow water", () => {
    const [low, high] = [placed({ fixedM: 0 }, 0.5), placed({ fixedM: 15 * FOOT_M }, 0.5)];
    expectNear("rise", low.depthM - high.depthM, 15 * FOOT_M, 0.2);
  });

  test("can't be pinned farther up than the line is in the water", () => {
    const { slider } = slid({ fixedM: 200 * FOOT_M });
    expect(slider).toEqual({ ok: false, why: expect.stringMatching(/pinned farther above its release/u) });
  });
});

describe("a free slider", () => {
  test("gets a range, above the release and under the water", () => {
    for (const speedMph of [1.8, 2.4, 3]) {
      const { release, isFree, lowM, depthM, highM } = placed({}, speedMph);
      expect(isFree).toBe(true);
      expect(lowM).toBeGreaterThan(0);
      expect(highM - lowM).toBeGreaterThan(3);
      expect(depthM).toBeGreaterThanOrEqual(lowM);
      expect(highM).toBeLessThan(release.depthM + 6 * FOOT_M);
    }
  });
});

test("a rod that doesn't pull, or a release out of the water, has no belly", () => {
  const water = waterAt(10);
  if (!water.ok) throw new Error(water.why);
  const slider = { lure: lureForces("spoon"), leaderM: 2 };
  const { rodLine: _, ...bare } = ROD;
  expect(solveSlider(slider, bare, { depthM: 20, behindM: 3 }, 1, water).ok).toBe(false);
  expect(solveSlider(slider, ROD, { depthM: 0, behindM: 0 }, 1, water).ok).toBe(false);
});
