import fc from "fast-check";
import type { FlowProfile } from "../../server/physics/flow-profile.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A gentle stream: linear down to a depth, or two to four straight pieces, or a smooth layer of some metres. */
export const gentleFlow: fc.Arbitrary<FlowProfile> = fc.oneof(
  fc.tuple(between(15, 60), between(0.6, 1.6), between(-0.3, 0.3)).map(
    ([toM, topMS, more]): FlowProfile => ({
      type: "piecewise",
      depthsM: [0, toM],
      speedsMS: [topMS, topMS + more],
    }),
  ),
  fc
    .array(fc.tuple(between(3, 15), between(0.7, 1.5)), { minLength: 2, maxLength: 5 })
    .map((rows): FlowProfile => {
      let depthM = 0;
      const depthsM = rows.map(([stepM]) => {
        depthM += stepM;
        return depthM;
      });
      return { type: "piecewise", depthsM, speedsMS: rows.map(([, speedMS]) => speedMS) };
    }),
  fc
    .record({
      upperMS: between(0.7, 1.5),
      lowerMS: between(0.7, 1.5),
      middleM: between(5, 40),
      halfWidthM: between(1, 8),
    })
    .map((layer): FlowProfile => ({ type: "tanh", ...layer })),
);

/** A thin strong layer of slow water under fast: where several steady shapes are to be found. */
export const strongLayer: fc.Arbitrary<FlowProfile> = fc
  .record({
    upperMS: between(1, 2.2),
    lowerMS: between(0.1, 0.8),
    middleM: between(5, 40),
    halfWidthM: between(0.5, 2),
  })
  .map((layer): FlowProfile => ({ type: "tanh", ...layer }));
