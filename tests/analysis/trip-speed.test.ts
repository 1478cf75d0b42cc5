/**
 * The stream where only one of its two speeds was read: the other comes from the current that courses across each other
 * tell. Over ground the boat makes 2.5 mph on each course; on top the water sets 090 at 0.6 mph, at 80 ft 270 at 0.4 mph.
 * So northward it goes sqrt(2.5² + 0.6²) = 2.571 and sqrt(2.5² + 0.4²) = 2.532 mph through the water, eastward 1.9 and
 * 2.9, westward 3.1 and 2.1.
 */
import { describe, expect, test } from "vitest";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip } from "../../server/analysis/journal-analysis.ts";
import { streamOf } from "../../server/analysis/stream-used.ts";
import { tripSpeed } from "../../server/analysis/trip-speed.ts";
import { READING_AGES } from "../../server/model/readings.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";
import { readTrip } from "../model/read-trip.ts";

const MPH = 0.44704;
const FT = 0.3048;

const read = (clock: string, course: string, top: number, deep: number): string =>
  [
    `${clock} surface speed ${top} mph`,
    `${clock} probe P1 depth 80 ft speed ${deep} mph`,
    `${clock} gps speed 2.5 mph course ${course}`,
  ].join("\n");

const ACROSS = [read("05:00", "000", 2.571, 2.532), read("05:20", "090", 1.9, 2.9)].join("\n");
const WEST = "05:30 turn left to 270";

function speedOf(lines: string, clock: string) {
  const at = tripSpeed(readTrip(`${lines}\n`), READING_AGES);
  return at(Date.parse(`2031-06-21T${clock}:00-04:00`));
}

const mph = (ms: number | undefined): number => (ms ?? Number.NaN) / MPH;

describe("the speed that wasn't read on this course", () => {
  test("on top, beside the probe's", () => {
    const speed = speedOf(`${ACROSS}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph`, "05:45");
    expect(mph(speed?.value)).toBeCloseTo(2.1, 6);
    expect(mph(speed?.onTop?.value)).toBeCloseTo(3.1, 1);
    expect(speed?.onTop?.byCurrent?.timesMs).toHaveLength(2);
    expect(speed?.onTop?.sdMS).toBeGreaterThan(speed?.sdMS ?? Number.NaN);
  });
  test("at the probe's depth, beside the one on top", () => {
    const speed = speedOf(`${ACROSS}\n${WEST}\n05:40 surface speed 3.1 mph`, "05:45");
    expect(mph(speed?.value)).toBeCloseTo(2.1, 1);
    expect((speed?.depthM ?? 0) / FT).toBeCloseTo(80, 6);
    expect(mph(speed?.onTop?.value)).toBeCloseTo(3.1, 6);
  });
  test("a probe half as deep sees half of the difference", () => {
    const speed = speedOf(`${ACROSS}\n${WEST}\n05:40 probe P1 depth 40 ft speed 2.6 mph`, "05:45");
    expect(mph(speed?.onTop?.value)).toBeCloseTo(3.1, 1);
  });
});

test("under a thermocline a shallower probe sees all of the difference, above it none", () => {
  const PROFILE =
    "05:10 profile 0 ft 65 F, 20 ft 64 F, 30 ft 62 F, 35 ft 54 F, 40 ft 47 F, 50 ft 46 F, 120 ft 44 F";
  const topOver = (probeFt: number, profile = PROFILE) =>
    mph(
      speedOf(`${ACROSS}\n${profile}\n${WEST}\n05:40 probe P1 depth ${probeFt} ft speed 2.1 mph`, "05:45")
        ?.onTop?.value,
    );
  expect(topOver(80)).toBeCloseTo(3.1, 1);
  expect(topOver(60)).toBeCloseTo(3.1, 1);
  expect(topOver(15)).toBeCloseTo(2.1, 2);
  // Without the profile it changes evenly.
  expect(topOver(60, "05:10 surface temp 65 F")).toBeCloseTo(2.85, 1);
});

describe("left as it was read", () => {
  const derived = (lines: string, clock = "05:45") => {
    const speed = speedOf(lines, clock);
    return speed?.byCurrent ?? speed?.onTop?.byCurrent;
  };
  test("a control: the same lines, with the currents told", () => {
    expect(derived(`${ACROSS}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph`)).toBeDefined();
  });
  test.each([
    ["both speeds of this course", `${ACROSS}\n${WEST}\n${read("05:40", "270", 3.1, 2.1)}`],
    ["one course only, there and back", `${ACROSS.replace("course 090", "course 180")}\n${WEST}`],
    ["no course on this leg", `${ACROSS}\n05:30 turn left\n05:40 probe P1 depth 80 ft speed 2.1 mph`],
    [
      "a probe that shows no depth",
      `${ACROSS.replaceAll(" depth 80 ft", "")}\n${WEST}\n05:40 probe P1 speed 2.1 mph`,
    ],
    ["speeds over ground alone", `05:00 gps speed 2.5 mph course 000\n${WEST}`],
    [
      "no difference to speak of",
      `${read("05:00", "000", 2.5, 2.5)}\n${read("05:20", "090", 2.5, 2.45)}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.5 mph`,
    ],
    [
      "a wheel that stands still",
      `${ACROSS.replace("1.9", "0")}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph`,
    ],
    [
      "a speed that no current makes",
      `${ACROSS.replace("1.9", "6.9")}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph`,
    ],
  ])("%s", (_, lines) => {
    expect(derived(lines)).toBeUndefined();
  });
  test("an hour and more later", () => {
    const later = `${ACROSS}\n${WEST}\n06:40 probe P1 depth 80 ft speed 2.1 mph`;
    expect(derived(later, "06:45")).toBeUndefined();
  });
});

test("the line's model takes it, and the line says where it comes from", () => {
  const lines = `${ACROSS}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph\n05:45 set P1 out 120 ft`;
  const day = analyzeTrip(readTrip(`${lines}\n`), createDepthMemo());
  const [depth] = day.depths;
  expect(depth?.speed && streamOf(depth.speed).kind).toBe("straight");
  // Fast water on top drags the cable more than 2.1 mph all the way down would.
  const alone = analyzeTrip(
    readTrip("05:40 probe P1 depth 80 ft speed 2.1 mph\n05:45 set P1 out 120 ft\n"),
    createDepthMemo(),
  ).depths[0];
  expect(depth?.ball?.depthM).toBeLessThan((alone?.ball?.depthM ?? Number.NaN) - FT);
  expect(depth && depthSentences(day, depth).join(" ")).toContain(
    "Speeds used: 3.1 mph on top, by the current that the courses of 05:00, 05:20 tell, and 2.1 mph at P1's probe, read 05:40, 5 min old.",
  );
});

test("is found once for a trip, however many lines lean on it", () => {
  const lines = `${ACROSS}\n${WEST}\n05:40 probe P1 depth 80 ft speed 2.1 mph\n`;
  const trip = readTrip(lines);
  let asked = 0;
  const counted = new Proxy(trip, {
    get: (target, key) => {
      if (key === "events") asked++;
      return Reflect.get(target, key);
    },
  });
  const at = tripSpeed(counted, READING_AGES);
  const minute = Date.parse("2031-06-21T05:45:00-04:00");
  at(minute);
  const first = asked;
  for (let i = 1; i <= 50; i++) at(minute + i * 1000);
  expect(asked).toBe(first);
});
