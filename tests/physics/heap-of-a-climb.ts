/**
 * Run by itself: prints how many bytes a loose and a close climb of one line put on the heap, and how many steps more the
 * close one took. The least of many batches, so that what is compiled meanwhile does not count.
 */
import { climbLine, type LineState } from "../../server/physics/climb-line.ts";
import { journalDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";

const water = { densityKgM3: 999.7, kinematicViscosityM2S: 1.307e-6 };
const line = {
  diameterM: 9e-4,
  weightNPerM: 0.0336,
  normalDrag: journalDrag(1.2),
  tangentialCoefficient: 0.01,
};
const flow = uniformFlow(1.1);
const state: LineState = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };

function climb(tolerance: number): void {
  state.xM = 0;
  state.zM = 0;
  state.forceXN = 0.4;
  state.forceZN = 0.3;
  climbLine(state, line, 45, water, flow, 45, tolerance);
}

function bytesOf(tolerance: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let batch = 0; batch < 15; batch++) {
    globalThis.gc?.();
    const before = process.memoryUsage().heapUsed;
    for (let i = 0; i < 1000; i++) climb(tolerance);
    least = Math.min(least, (process.memoryUsage().heapUsed - before) / 1000);
  }
  return Math.max(0, least);
}

/** Steps of a climb, counted by how often a law of drag is asked: six times for each. */
function stepsOf(tolerance: number): number {
  let asked = 0;
  const normalDrag = {
    law: "constant" as const,
    multiplier: 1.2,
    get coefficient() {
      asked++;
      return 1.3;
    },
  };
  state.forceXN = 0.4;
  state.forceZN = 0.3;
  climbLine(state, { ...line, normalDrag }, 45, water, flow, 45, tolerance);
  return asked / 6;
}

console.log(bytesOf(1e-3), bytesOf(1e-10), stepsOf(1e-10) - stepsOf(1e-3));
