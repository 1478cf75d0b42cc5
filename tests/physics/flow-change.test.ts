/** A stream with another shape added, so many times over. */
import { expect, test } from "vitest";
import { changeBetween, withFlowChange } from "../../server/physics/flow-change.ts";
import { type FlowProfile, speedAtDepthMS, uniformFlow } from "../../server/physics/flow-profile.ts";

const LAYERS: FlowProfile = { type: "piecewise", depthsM: [10, 14], speedsMS: [1, 0.6] };
const STRAIGHT: FlowProfile = { type: "piecewise", depthsM: [0, 20], speedsMS: [1, 0.6] };
const DEPTHS = [0, 5, 10, 12, 14, 17, 20, 30];

test.each([0, 0.5, 1, -1])("%d times the way from one shape to the other, at every depth", (times) => {
  const moved = withFlowChange(LAYERS, changeBetween(LAYERS, STRAIGHT), times, 0);
  for (const depthM of DEPTHS) {
    const [from, to] = [speedAtDepthMS(LAYERS, depthM), speedAtDepthMS(STRAIGHT, depthM)];
    expect(speedAtDepthMS(moved, depthM)).toBeCloseTo(from + times * (to - from), 12);
  }
});

test("a share of the change, and no speed below the least", () => {
  const half = withFlowChange(LAYERS, changeBetween(LAYERS, STRAIGHT, 0.5), 2, 0);
  expect(speedAtDepthMS(half, 5)).toBeCloseTo(0.9, 12);
  const stopped = withFlowChange(LAYERS, changeBetween(LAYERS, STRAIGHT), 100, 0.02);
  expect(Math.min(...DEPTHS.map((depthM) => speedAtDepthMS(stopped, depthM)))).toBeCloseTo(0.02, 9);
});

test("a change laid over one speed holds outside its depths; a smooth layer keeps its shape", () => {
  const change = { depthsM: [5, 15], byMS: [0, 0.2] };
  const moved = withFlowChange(uniformFlow(1), change, 1, 0);
  expect([0, 10, 15, 40].map((depthM) => speedAtDepthMS(moved, depthM))).toEqual([1, 1.1, 1.2, 1.2]);
  const smooth: FlowProfile = { type: "tanh", upperMS: 1, lowerMS: 0.5, middleM: 10, halfWidthM: 2 };
  expect(withFlowChange(smooth, change, 1, 0)).toBe(smooth);
});

test("depths that all but coincide become one, so that no speed jumps", () => {
  const near: FlowProfile = { type: "piecewise", depthsM: [0, 14.004], speedsMS: [1, 0.6] };
  const moved = withFlowChange(LAYERS, changeBetween(LAYERS, near), 1, 0);
  expect(moved).toMatchObject({ depthsM: [0, 10, 14] });
});
