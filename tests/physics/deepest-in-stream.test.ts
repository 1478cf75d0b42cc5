/** How deep a line can hang at most in another stream, beside what solving it there finds. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { deepestInM } from "../../server/physics/deepest-in-stream.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { type LongLine, solveLongLine } from "../../server/physics/long-line.ts";
import { lineInUse, longLine } from "./long-line-maker.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const WEIGHT = { weightN: 1.2, liftAreaM2: 0, dragAreaM2: 2e-4 };
const lines: fc.Arbitrary<LongLine> = fc
  .tuple(
    fc.constantFrom(
      lineInUse("leadcore", 0.85),
      lineInUse("copper", 1.1),
      lineInUse("steel", 0.53),
      lineInUse("mono", 0.4),
      lineInUse("braid", 0.3),
    ),
    between(40, 400),
    fc.constantFrom({}, { joint: WEIGHT }),
  )
  .map(([main, outFt, change]) => longLine(main, outFt, 2, change));
const stream: fc.Arbitrary<FlowProfile> = fc.oneof(
  between(0.5, 1.6).map(uniformFlow),
  fc.tuple(between(10, 40), between(0.6, 1.5), between(0.6, 1.5)).map(
    ([toM, topMS, deepMS]): FlowProfile => ({
      type: "piecewise",
      depthsM: [0, toM],
      speedsMS: [topMS, deepMS],
    }),
  ),
);

test("no line that only its weights take down hangs deeper than that, and it says something of most", () => {
  const counts = { of: 0, near: 0 };
  fc.assert(
    fc.property(lines, stream, stream, between(4, 20), (line, before, now, temperatureC) => {
      const [was, is] = [
        solveLongLine({ ...line, flow: before }),
        solveLongLine({ ...line, flow: now, waterTemperatureC: temperatureC }),
      ];
      if (!was.ok || !is.ok) return;
      const deepest = (one: typeof was): number => Math.max(one.joint.depthM, one.lure.depthM);
      const mostM = deepestInM(deepest(was), before, now);
      expect(deepest(is)).toBeLessThanOrEqual(mostM);
      counts.of++;
      if (mostM < 2 * deepest(is)) counts.near++;
    }),
    { seed: 20310621, numRuns: 1000 },
  );
  expect(counts.of).toBeGreaterThan(800);
  expect(counts.near).toBeGreaterThan(0.4 * counts.of);
});

test("of a stream that stands still somewhere it knows nothing", () => {
  expect(deepestInM(10, uniformFlow(1), uniformFlow(0))).toBe(Number.POSITIVE_INFINITY);
});
