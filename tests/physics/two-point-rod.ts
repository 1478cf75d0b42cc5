import { climbLine, type LineProperties } from "../../server/physics/climb-line.ts";
import { journalDrag } from "../../server/physics/drag.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import type { Pull, RodLine } from "../../server/physics/rod-line.ts";
import { WATER } from "./line-maker.ts";

/**
 * The pull of a rod's line by the full equations: the line's weight, drag along it and a coefficient that follows
 * the local slope, integrated from the release up. Angle and tension at the release and the length of line in
 * the water are found by Newton's method, so that it ends at the water line, with the tip's tension, on the
 * straight line to the tip.
 */
export function fullRodPull(
  rod: RodLine,
  behindM: number,
  depthM: number,
  stream: number | FlowProfile,
): Pull {
  const flow = typeof stream === "number" ? uniformFlow(stream) : stream;
  const line: LineProperties = {
    diameterM: rod.diameterM,
    weightNPerM: 0.000172897,
    normalDrag: journalDrag(rod.dragMultiplier),
    tangentialCoefficient: 0.01,
  };
  const misses = ([angle = 0, tensionN = 0, lengthM = 0]: readonly number[]): number[] => {
    const state = {
      xM: 0,
      zM: depthM,
      forceXN: tensionN * Math.sin(angle),
      forceZN: tensionN * Math.cos(angle),
      leastZM: depthM,
    };
    const why = climbLine(state, line, lengthM, WATER, flow, lengthM, 1e-10);
    if (why !== undefined) throw new Error(why);
    return [
      -state.zM,
      -state.xM + (rod.tipHeightM * state.forceXN) / state.forceZN - behindM + rod.tipBehindM,
      Math.hypot(state.forceXN, state.forceZN) - rod.tipTensionN,
    ];
  };
  const [angle = 0, tensionN = 0] = newton(misses, [0, rod.tipTensionN, Math.hypot(behindM, depthM) * 1.02]);
  return { forceXN: -tensionN * Math.sin(angle), forceZN: -tensionN * Math.cos(angle) };
}

function newton(misses: (point: readonly number[]) => number[], start: readonly number[]): readonly number[] {
  let point = start;
  for (let round = 0; round < 200; round++) {
    const miss = misses(point);
    const columns = point.map((value, j) => {
      const step = 1e-6 * Math.max(1, Math.abs(value));
      const moved = misses(point.with(j, value + step));
      return moved.map((entry, i) => (entry - (miss[i] ?? 0)) / step);
    });
    const whole = determinant(columns);
    const step = point.map((_, j) => determinant(columns.with(j, miss)) / whole);
    const size = Math.max(
      ...step.map((entry, j) => Math.abs(entry) / (j === 0 ? 0.3 : 0.3 * Math.abs(point[j] ?? 1))),
    );
    point = point.map((value, j) => value - (step[j] ?? 0) / Math.max(1, size));
    if (size < 1e-8) return point;
  }
  throw new Error("the two-point solution was not found");
}

function determinant(columns: readonly (readonly number[])[]): number {
  const [[a = 0, b = 0, c = 0] = [], [d = 0, e = 0, f = 0] = [], [g = 0, h = 0, i = 0] = []] = columns;
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}
