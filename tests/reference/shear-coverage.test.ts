/**
 * A ball in a stream that changes with depth, its speeds and its shape drawn from the spreads that docs/physics.md lists:
 * the ranges hold as many true depths as they say, which without the shape's share they wouldn't.
 */
import { expect, test } from "vitest";
import { streamOf } from "../../server/analysis/stream-used.ts";
import { type Downrigger, solveDownrigger } from "../../server/physics/downrigger.ts";
import {
  type DownriggerSpreads,
  rigParameters,
  solveDownriggerBand,
} from "../../server/physics/downrigger-band.ts";
import type { FlowProfile } from "../../server/physics/flow-profile.ts";
import { normalDraws } from "../physics/random-normal.ts";
import { FOOT_M, MPH_MS, rig } from "../physics/rig-maker.ts";

const BALLS = 250;
const DEEP_SD = 0.03 * MPH_MS;
const TOP_SD = 0.03 * MPH_MS;
const PROBE_M = 130 * FOOT_M;

/** A boat whose gear is known, so that the stream is what is not. */
const KNOWN_GEAR: DownriggerSpreads = {
  speedMS: DEEP_SD,
  surfaceSpeedMS: TOP_SD,
  lnDragShared: 0,
  lnDragCable: 0.02,
  lnDragLines: 0,
  counterScale: 0,
  counterOffsetM: 0.1,
  rodPullN: 0,
  ballMassShare: 0,
  lureShare: 0,
};

/** Of the change from top to deep, the share that lies above a depth, as it is taken and as it may as well be. */
interface Shape {
  readonly knotsM: readonly number[];
  readonly taken: readonly number[];
  readonly other: readonly number[];
}

const LAYER = { thermoclineM: 10, topM: 8, bottomM: 12 };
const IN_LAYERS: Shape = {
  knotsM: [0, 8, 12, PROBE_M],
  taken: [0, 0, 1, 1],
  other: [0, 8 / PROBE_M, 12 / PROBE_M, 1],
};
const STRAIGHT: Shape = { knotsM: [0, PROBE_M / 2, PROBE_M], taken: [0, 0.5, 1], other: [0, 0, 1] };

function trueStream(shape: Shape, topMS: number, deepMS: number, normal: () => number): FlowProfile {
  const [top, deep] = [topMS + TOP_SD * normal(), deepMS + DEEP_SD * normal()];
  const toward = normal() / 1.2816;
  const speedsMS = shape.taken.map((taken, i) => {
    const share = taken + toward * ((shape.other[i] ?? 0) - taken);
    return Math.max(0, top + share * (deep - top));
  });
  return { type: "piecewise", depthsM: shape.knotsM, speedsMS };
}

test.each([
  ["in two layers", IN_LAYERS, LAYER],
  ["where no layer is known", STRAIGHT, undefined],
] as const)("%s", (_, shape, layer) => {
  const normal = normalDraws(1931);
  const counts = { of: 0, inner: 0, unshaped: 0 };
  for (let i = 0; i < BALLS; i++) {
    const [topMS, deepMS] = [(1.6 + 0.1 * normal()) * MPH_MS, (2.5 + 0.1 * normal()) * MPH_MS];
    const stream = streamOf({ onTop: { value: topMS }, value: deepMS, depthM: PROBE_M, layer });
    const taken: Downrigger = rig(150 + 20 * normal(), 2, [], { flow: stream.flow });
    const real = solveDownrigger({
      ...taken,
      counterOffsetM: 0.1 * normal(),
      cable: { ...taken.cable, dragMultiplier: taken.cable.dragMultiplier * Math.exp(0.02 * normal()) },
      flow: trueStream(shape, topMS, deepMS, normal),
    });
    const isIn = (spreads: DownriggerSpreads): number => {
      const band = solveDownriggerBand(taken, () => rigParameters(spreads));
      if (!band.ok || !real.ok) return Number.NaN;
      return Number(real.ball.depthM >= band.ball.lowM && real.ball.depthM <= band.ball.highM);
    };
    if (stream.shape === undefined) continue;
    counts.of++;
    counts.inner += isIn({ ...KNOWN_GEAR, shape: stream.shape });
    counts.unshaped += isIn(KNOWN_GEAR);
  }
  expect(counts.of).toBe(BALLS);
  expect(counts.inner / BALLS).toBeGreaterThan(0.75);
  expect(counts.inner / BALLS).toBeLessThan(0.85);
  expect(counts.unshaped / BALLS).toBeLessThan(0.7);
});
