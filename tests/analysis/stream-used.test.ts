import { expect, test } from "vitest";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../server/analysis/line-depth.ts";
import { streamOf } from "../../server/analysis/stream-used.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";
import { readTrip } from "../model/read-trip.ts";

const FOOT_M = 0.3048;

function dayOf(lines: string): { day: TripAnalysis; depth: LineDepth } {
  const day = analyzeTrip(readTrip(lines), createDepthMemo());
  const depth = day.depths.at(-1);
  if (depth === undefined) throw new Error("no depth");
  return { day, depth };
}

const SET = "06:00 set P1 out 120 ft";
const PROBE = "05:50 probe P1 depth 80 ft speed 2.6 mph";
const TOP = "05:50 surface speed 2.2 mph";
const ballFt = ({ depth }: { depth: LineDepth }): number => (depth.ball?.depthM ?? Number.NaN) / FOOT_M;
const speedSaid = ({ day, depth }: { day: TripAnalysis; depth: LineDepth }): string =>
  depthSentences(day, depth).find((one) => one.startsWith("Speed")) ?? "";

test("with a speed on top and one at the probe's depth the stream is straight between them", () => {
  const both = dayOf(`${PROBE}\n${TOP}\n${SET}`);
  const { speed } = both.depth;
  if (speed === undefined) throw new Error("no speed");
  const flow = streamOf(speed);
  if (flow.type !== "piecewise") throw new Error(flow.type);
  expect(flow.depthsM.map((m) => (m / FOOT_M).toFixed(1))).toEqual(["0.0", "80.0"]);
  expect(flow.speedsMS.map((one) => (one / 0.44704).toFixed(2))).toEqual(["2.20", "2.60"]);
  // The ball hangs deeper than in the probe's speed all the way, and not so deep as in the one on top.
  expect(ballFt(both)).toBeGreaterThan(ballFt(dayOf(`${PROBE}\n${SET}`)));
  expect(ballFt(both)).toBeLessThan(ballFt(dayOf(`${TOP}\n${SET}`)));
  expect(both.depth.conditioning).toBeLessThan(3);
});

test("both speeds are said, once with their time where it is the same", () => {
  expect(speedSaid(dayOf(`${PROBE}\n${TOP}\n${SET}`))).toBe(
    "Speeds used: 2.2 mph on top and 2.6 mph at P1's probe, read 05:50, 10 min old.",
  );
  expect(speedSaid(dayOf(`05:40 surface speed 2.2 mph\n${PROBE}\n${SET}`))).toBe(
    "Speeds used: 2.2 mph on top, read 05:40, 20 min old, and 2.6 mph at P1's probe, read 05:50, 10 min old.",
  );
});

test("with one of them only, or a probe whose depth nobody stated, the speed is the same at every depth", () => {
  for (const lines of [PROBE, TOP, "05:50 probe P1 speed 2.6 mph", `05:50 probe P1 speed 2.6 mph\n${TOP}`]) {
    const one = dayOf(`${lines}\n${SET}`);
    expect(one.depth.speed?.onTop).toBeUndefined();
    expect(one.depth.conditioning).toBeNull();
    expect(speedSaid(one)).toMatch(/^Speed used: 2\.[26] mph/);
  }
});

test("two speeds too far apart for any current are not joined: the better known one is used alone", () => {
  const one = dayOf(`${PROBE}\n05:50 surface speed 14 mph\n${SET}`);
  expect(one.depth.speed).toMatchObject({ source: "probe" });
  expect(one.depth.speed?.onTop).toBeUndefined();
});

test("between two readings of the probe its depth goes along with its speed", () => {
  const lines = `${TOP}\n${PROBE}\n06:10 probe P1 depth 100 ft speed 2.4 mph`;
  const one = dayOf(`${lines}\n06:00 set P1 out 120 ft`);
  expect((one.depth.speed?.depthM ?? 0) / FOOT_M).toBeCloseTo(90, 6);
});

test("a stream in which the ball could hang at several depths, or one that makes its depth shaky, is said", () => {
  const { day, depth } = dayOf(`${PROBE}\n${TOP}\n${SET}`);
  const said = (change: Partial<LineDepth>): string => depthSentences(day, { ...depth, ...change }).join(" ");
  expect(said({})).not.toMatch(/current/);
  expect(said({ otherBallDepthsM: [40 * FOOT_M, 60 * FOOT_M] })).toContain(
    "In this current the ball could as well hang at 40 ft or 60 ft; the deepest is given.",
  );
  expect(said({ conditioning: 5.2 })).toContain("This current makes the depth shaky");
});
