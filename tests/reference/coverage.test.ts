/**
 * Seasons drawn from the model's own uncertainties: a world with its own drag, counter, ball and rods; readings with
 * noise; a fit; and then depths that the bands should hold as often as they say. What is drawn is what
 * docs/physics.md lists; a season whose truth is drawn otherwise would be held less often.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { bandsOf } from "../../server/physics/band.ts";
import { fitCalibration } from "../../server/physics/calibrate.ts";
import type { CalibrationReading } from "../../server/physics/calibration-reading.ts";
import { spreadOf } from "../../server/physics/calibration-spread.ts";
import { type CalibrationValues, withValues } from "../../server/physics/calibration-values.ts";
import { DEFAULTS } from "../../server/physics/defaults.ts";
import { atSpeed, type Downrigger, solveDownrigger } from "../../server/physics/downrigger.ts";
import {
  type DownriggerSpreads,
  defaultSpreads,
  rigParameters,
  solveDownriggerBand,
} from "../../server/physics/downrigger-band.ts";
import { deepSpeedMS } from "../../server/physics/flow-profile.ts";
import { sharedDragFrom } from "../../server/physics/shared-drag.ts";
import { withDrawnRods } from "../physics/drawn-rods.ts";
import { normalDraws } from "../physics/random-normal.ts";
import { FOOT_M, MPH_MS, rig, rod } from "../physics/rig-maker.ts";

const SEASONS = 160;
const DEPTHS = 5;
const SPEED_SD = 0.1 * MPH_MS;
const normal = normalDraws(2031);
const uniform = (low: number, high: number): number => low + (high - low) * phi(normal());

/** The share of a standard normal below a value, to 1e-5 (Abramowitz & Stegun 26.2.17, first terms). */
function phi(x: number): number {
  const t = 1 / (1 + 0.33267 * Math.abs(x));
  const tail = 0.39894228 * Math.exp(-0.5 * x * x) * t * (0.4361836 + t * (-0.1201676 + t * 0.937298));
  return x < 0 ? tail : 1 - tail;
}

interface World {
  readonly values: CalibrationValues;
  readonly lnLines: number;
  readonly ballScale: number;
}

/** One rig's truth; what all lines share is given. */
function drawWorld(lnShared: number): World {
  return {
    values: {
      lnDrag: Math.log(DEFAULTS.cableDragMultiplier.value) + lnShared + 0.2 * normal(),
      counterScale: 1 + 0.03 * normal(),
      counterOffsetM: 0.6 * normal(),
    },
    lnLines: lnShared + 0.2 * normal(),
    ballScale: 1 + 0.02 * normal(),
  };
}

/** A setting as the journal has it, with a rod half of the time. */
function drawSetting(): Downrigger {
  const rods = normal() > 0 ? [rod("R", 0, 20)] : [];
  return rig(uniform(40, 230), uniform(1.8, 2.8), rods, { probeAboveBallM: 1.25 * FOOT_M });
}

/** The same setting as it truly is: speed, rods' pull, lines and ball drawn; undefined where it has no answer. */
function truth(setting: Downrigger, world: World): { ballM: number; probeM: number } | undefined {
  const drawn = withDrawnRods(setting, world, normal);
  const speedMS = Math.max(0, deepSpeedMS(setting.flow) + SPEED_SD * normal());
  const solved = solveDownrigger(withValues(atSpeed(drawn, speedMS), world.values));
  return solved.ok ? { ballM: solved.ball.depthM, probeM: solved.probe?.depthM ?? 0 } : undefined;
}

interface Counts {
  inside80: number;
  inside95: number;
  widthM: number;
  of: number;
}
const counted = (): Counts => ({ inside80: 0, inside95: 0, widthM: 0, of: 0 });
const probed = counted();
const neverProbed = counted();
const alone = counted();

/** Draws depths of a rig, and counts how many of them its bands hold. */
function count(
  into: Counts,
  world: World,
  known: (rig: Downrigger) => Downrigger,
  spreads: DownriggerSpreads,
): void {
  const parameters = rigParameters(spreads);
  for (let i = 0; i < DEPTHS; i++) {
    const setting = known(drawSetting());
    const true_ = truth(setting, world);
    const band = solveDownriggerBand(setting, parameters);
    if (true_ === undefined || !band.ok) continue;
    const inputs = parameters
      .filter((one) => one.luresOnly !== true)
      .map((one) => ({
        key: one.key,
        at: (deviations: number) => {
          const moved = solveDownrigger(one.moved(setting, deviations));
          return moved.ok ? [moved.ball.depthM] : undefined;
        },
      }));
    const [wide] = bandsOf([band.ball.depthM], inputs, 1.96);
    const isIn = (low = 0, high = 0): number => Number(true_.ballM >= low && true_.ballM <= high);
    into.inside80 += isIn(band.ball.lowM, band.ball.highM);
    into.inside95 += isIn(wide?.low, wide?.high);
    into.widthM += band.ball.highM - band.ball.lowM;
    into.of++;
  }
}

function season(): void {
  const lnShared = 0.22 * normal();
  const [world, other] = [drawWorld(lnShared), drawWorld(lnShared)];
  const readings: CalibrationReading[] = Array.from({ length: 12 }, drawSetting).flatMap((setting) => {
    const seen = truth(setting, world);
    if (seen === undefined) return [];
    const measuredM = Math.max(0, seen.probeM + 0.7 * FOOT_M * normal());
    return [{ rig: setting, as: "probe-depth" as const, measuredM, sdM: 0.7 * FOOT_M, speedSdMS: SPEED_SD }];
  });
  const fitted = fitCalibration(readings);
  if (!fitted.ok) throw new Error(fitted.why);
  const usual = defaultSpreads(SPEED_SD);
  const calibration = spreadOf(fitted.covariance);
  count(probed, world, (one) => withValues(one, fitted.values), {
    ...usual,
    lnDragShared: 0,
    ballMassShare: 0,
    calibration,
  });
  const shared = sharedDragFrom([{ lnDrag: fitted.values.lnDrag, lnDragSd: fitted.lnDragSd }]);
  const dragging = (one: Downrigger): Downrigger => draggedBy(one, Math.exp(shared.lnShift));
  count(neverProbed, other, dragging, { ...usual, lnDragShared: shared.lnSd });
  count(alone, other, (one) => one, usual);
}

function draggedBy(one: Downrigger, times: number): Downrigger {
  const more = <T extends { dragMultiplier: number }>(line: T): T => ({
    ...line,
    dragMultiplier: line.dragMultiplier * times,
  });
  const rods = one.rods.map((rod) => ({
    ...rod,
    lureLine: more(rod.lureLine),
    ...(rod.rodLine === undefined ? {} : { rodLine: more(rod.rodLine) }),
  }));
  return { ...one, cable: more(one.cable), rods };
}

describe("over simulated seasons", () => {
  beforeAll(() => {
    for (let i = 0; i < SEASONS; i++) season();
  }, 120_000);

  test.each([
    ["a calibrated rig", probed],
    ["a never probed rig on a boat with a calibrated one", neverProbed],
    ["a rig on a boat that was never calibrated", alone],
  ])("%s lies in its 80 %% band in 75 to 85 of 100, in the 95 %% one in 92 to 98", (_, counts) => {
    expect(counts.of).toBeGreaterThan(700);
    const [inner, outer] = [counts.inside80 / counts.of, counts.inside95 / counts.of];
    expect(inner).toBeGreaterThan(0.75);
    expect(inner).toBeLessThan(0.85);
    expect(outer).toBeGreaterThan(0.92);
    expect(outer).toBeLessThan(0.98);
  });

  test("readings narrow the band of their rig much, and of the others a little", () => {
    const width = ({ widthM, of }: Counts): number => widthM / of;
    expect(width(probed)).toBeLessThan(0.6 * width(alone));
    expect(width(neverProbed)).toBeLessThan(width(alone));
  });
});
