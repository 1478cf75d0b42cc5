import { describe, expect, test } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { createDepthMemo, solveTask } from "../../server/analysis/depth-memo.ts";
import { downriggerTask, type WaterAndSpeed } from "../../server/analysis/downrigger-input.ts";
import { analyzeJournal, analyzeTrip, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../server/analysis/line-depth.ts";
import { spanOf, streamOf } from "../../server/analysis/stream-used.ts";
import { widenedByAgeM } from "../../server/analysis/widened-by-age.ts";
import { inStream } from "../../server/analysis/without-depth.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";
import { bookFile, readTrip } from "../model/read-trip.ts";

const FOOT_M = 0.3048;
const BOOKS = [
  bookFile(
    "file:///boat.gear",
    `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
rig P1 downrigger port cable rigger-wire ball round-12
`,
  ),
];

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
  const { flow } = streamOf(speed);
  if (flow.type !== "piecewise") throw new Error(flow.type);
  expect(flow.depthsM.map((m) => (m / FOOT_M).toFixed(1))).toEqual(["0.0", "80.0"]);
  expect(flow.speedsMS.map((one) => (one / 0.44704).toFixed(2))).toEqual(["2.20", "2.60"]);
  // The ball hangs deeper than in the probe's speed all the way, and not so deep as in the one on top.
  expect(ballFt(both)).toBeGreaterThan(ballFt(dayOf(`${PROBE}\n${SET}`)));
  expect(ballFt(both)).toBeLessThan(ballFt(dayOf(`${TOP}\n${SET}`)));
  expect(both.depth.conditioning).toBeLessThan(3);
});

describe("where a profile shows a thermocline", () => {
  // The temperature falls from 64 to 47 F between 20 and 35 ft.
  const PROFILE =
    "05:40 profile 0 ft 66 F, 15 ft 65 F, 20 ft 64 F, 25 ft 58 F, 30 ft 50 F, 35 ft 47 F, 45 ft 46 F, 120 ft 44 F";
  const streamAt = (lines: string) => {
    const { day, depth } = dayOf(lines);
    const { speed } = depth;
    const stream = speed && streamOf(speed);
    if (speed === undefined || stream === undefined || stream.kind === "uniform")
      throw new Error("one speed");
    const feet = (m: number): number => Math.round(m / FOOT_M);
    const water = day.water.profileAt(Date.parse("2031-06-21T06:00:00-04:00"));
    const layers = water && day.water.layersOf(water);
    return {
      ...stream,
      span: [feet(stream.fromM), feet(stream.toM)],
      layers,
      said: streamSaid(day, depth),
      depth,
    };
  };
  const streamSaid = (day: TripAnalysis, depth: LineDepth): string =>
    depthSentences(day, depth).find((one) => /taken as/iu.test(one)) ?? "";

  test("one speed down to the metalimnion, the other below it, straight in between, to a tenth of a meter", () => {
    const { kind, layers, flow, fromM, toM, said } = streamAt(`${PROFILE}\n${PROBE}\n${TOP}\n${SET}`);
    if (layers?.kind !== "layers" || flow.type !== "piecewise") throw new Error("no layers");
    expect(kind).toBe("two-layers");
    expect(Math.abs(fromM - layers.topM)).toBeLessThan(0.0501);
    expect(Math.abs(toM - layers.bottomM)).toBeLessThan(0.0501);
    expect(flow).toMatchObject({ depthsM: [fromM, toM] });
    expect(flow.speedsMS.map((one) => (one / 0.44704).toFixed(2))).toEqual(["2.20", "2.60"]);
    expect(said).toMatch(
      /^Taken as 2\.2 mph above the thermocline at 2\d ft, 2\.6 mph below; it changes between 1\d ft and 3\d ft\.$/u,
    );
  });

  test("the ball then hangs elsewhere than by the straight line, which the range holds", () => {
    const straight = dayOf(`${PROBE}\n${TOP}\n${SET}`).depth.ball;
    const layered = dayOf(`${PROFILE}\n${PROBE}\n${TOP}\n${SET}`).depth.ball;
    if (straight === null || layered === null) throw new Error("no depth");
    expect(Math.abs(layered.depthM - straight.depthM)).toBeGreaterThan(0.1);
    expect(layered.lowM).toBeLessThan(straight.depthM);
    expect(layered.highM).toBeGreaterThan(straight.depthM);
  });

  test("a probe in the layer ends the change, one above it leaves it straight; both are said", () => {
    const at = (depthFt: number) =>
      streamAt(`${PROFILE}\n05:50 probe P1 depth ${depthFt} ft speed 2.6 mph\n${TOP}\n${SET}`);
    const inside = at(26);
    expect(inside.kind).toBe("in-layer");
    expect(inside.span[1]).toBe(26);
    expect(inside.fromM).toBeGreaterThan(4);
    expect(inside.said).toMatch(
      /^P1's probe hung in the layer of the thermocline at 2\d ft, so it is taken as 2\.2 mph down to 1\d ft, changing to 2\.6 mph at the probe, and the same below, where nothing was read\.$/u,
    );
    const above = at(12);
    expect([above.kind, ...above.span]).toEqual(["above-layer", 0, 12]);
    expect(above.said).toMatch(
      /^P1's probe hung above the thermocline at 2\d ft, so it is taken as straight/u,
    );
  });

  test.each([
    ["no profile", ""],
    ["one out of reach", PROFILE.replace("05:40", "2031-06-20 20:00")],
    ["one with too few depths", "05:40 profile 0 ft 65 F, 100 ft 45 F"],
    ["water of one kind", "05:40 profile 0 ft 45 F, 50 ft 45 F, 120 ft 44.9 F"],
    ["water that changes slowly all the way down", "05:40 profile 0 ft 46 F, 60 ft 45 F, 120 ft 44 F"],
    ["a gap where it cools most", "05:40 profile 0 ft 65 F, 30 ft 64 F, 100 ft 45 F"],
  ])("straight with %s", (_, profile) => {
    const { kind, said } = streamAt(`${profile}\n${PROBE}\n${TOP}\n${SET}`);
    expect(kind).toBe("straight");
    expect(said).toBe("Taken as straight from one to the other and the same below: no thermocline is known.");
  });

  test("no layer is thinner than a meter, nor reaches below the probe or out of the water", () => {
    const span = (depthM: number, topM: number, bottomM: number) => {
      const { fromM, toM } = spanOf(depthM, { topM, bottomM, thermoclineM: topM });
      return [fromM, toM].map((m) => Number(m.toFixed(2)));
    };
    expect(span(20, 10, 10.2)).toEqual([9.6, 10.6]);
    expect(span(10.3, 10, 10.2)).toEqual([9.3, 10.3]);
    expect(span(10.1, 10, 15)).toEqual([9.1, 10.1]);
    expect(span(20, 0, 0.2)).toEqual([0, 1]);
    expect(span(20, 0, 8)).toEqual([0, 8]);
  });

  test.each([
    ["two layers", `${PROFILE}\n`],
    ["a straight line", ""],
  ])("the range of a depth in %s is wider for the shape", (_, profile) => {
    const { day, depth } = dayOf(`${profile}${PROBE}\n05:50 surface speed 1.2 mph\n${SET}`);
    const { speed } = depth;
    const rig = day.trip.gear.rigs.get("P1");
    const rods = day.timeline.spreadAfter.get(depth.event.lineIndex);
    if (speed === undefined || rig === undefined || rods === undefined) throw new Error("nothing to solve");
    const widthM = (water: WaterAndSpeed): number => {
      const task = downriggerTask(day.trip.gear, rig, rods, water);
      const answer = task.ok ? solveTask(task, createDepthMemo()) : task;
      return answer.ok ? answer.ball.highM - answer.ball.lowM : Number.NaN;
    };
    const { shape, ...known } = inStream(speed, 10);
    expect(shape).toBeDefined();
    expect(widthM(inStream(speed, 10))).toBeGreaterThan(1.01 * widthM(known));
  });

  test("an edit that moves the layer computes the depth anew, one that leaves it doesn't", () => {
    const memo = createDepthMemo();
    // Whole degrees C, so that the two means below are the same to the last digit.
    const profile = "05:40 profile 0 m 18 C, 6 m 17 C, 8 m 14 C, 9 m 10 C, 11 m 8 C, 14 m 7 C, 36 m 6 C";
    const text = `trip 2031-06-21 "Bright Penny"\n${profile}\n${PROBE}\n${TOP}\n${SET}\n`;
    const depthIn = (read: Parse) => {
      const before = memo.solved;
      const { trips } = analyzeJournal({ uri: "file:///day.trip", parse: read }, BOOKS, memo);
      const depthM = trips[0]?.depths[0]?.ball?.depthM;
      return { depthM, solved: memo.solved - before };
    };
    const first = parse(text);
    const one = depthIn(first);
    expect(one.solved).toBe(1);
    const noted = reparse(first, text.replace(PROBE, `05:45 note "calm"\n${PROBE}`));
    expect(depthIn(noted)).toEqual({ ...one, solved: 0 });
    // A steeper step with the same mean temperature, which is all else of the profile that a depth leans on.
    const steeper = reparse(noted, text.replace("8 m 14 C, 9 m 10 C", "8 m 16 C, 9 m 8 C"));
    const other = depthIn(steeper);
    expect(other.solved).toBe(1);
    expect(other.depthM).not.toBe(one.depthM);
  });
});

describe("a stale speed widens the range as its spread grows, and is said to only where it shows", () => {
  const at = (outFt: number, clock: string, lines = "05:10 probe P1 depth 60 ft speed 2.4 mph") => {
    const one = dayOf(`${lines}\n${clock} set P1 out ${outFt} ft`);
    const { ball, speed } = one.depth;
    if (ball === null || speed === undefined) throw new Error("no depth");
    const widthFt = (ball.highM - ball.lowM) / FOOT_M;
    return { widthFt, widenedFt: widenedByAgeM(ball, speed) / FOOT_M, said: speedSaid(one) };
  };
  test("a long line's", () => {
    const [fresh, stale] = [at(150, "05:10"), at(150, "05:55")];
    expect(fresh.said).not.toContain("stale");
    expect(fresh.widenedFt).toBe(0);
    expect(stale.said).toMatch(/45 min old\. That is stale, so the range is wider\.$/u);
    expect(stale.widthFt).toBeGreaterThan(fresh.widthFt + 1);
    expect(stale.widenedFt).toBeGreaterThan(0.5 * (stale.widthFt - fresh.widthFt));
    expect(stale.widenedFt).toBeLessThan(1.5 * (stale.widthFt - fresh.widthFt));
  });
  test("a short line's", () => {
    const [fresh, stale] = [at(65, "05:10"), at(65, "05:55")];
    expect(stale.widthFt - fresh.widthFt).toBeLessThan(1);
    expect(stale.said).toMatch(/That is stale, which hardly matters to this depth\.$/u);
  });
  test("by a speed on top that is the older of the two", () => {
    const top = "05:05 surface speed 2 mph\n06:10 probe P1 depth 100 ft speed 2.4 mph";
    expect(at(150, "06:15", top).said).toMatch(/That is stale, so the range is wider\.$/u);
  });
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
