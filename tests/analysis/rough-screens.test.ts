/** What spares solving never hides a finding: on trips drawn at random, everything that rough answers leave out is quiet. */
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { calibrateRig, groupReadings } from "../../server/analysis/calibration.ts";
import { calibrationReadings } from "../../server/analysis/calibration-readings.ts";
import { counterDrifts, driftTold, mayDrift } from "../../server/analysis/counter-drift.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { expectedReading } from "../../server/analysis/expected-reading.ts";
import { analyzeJournal, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import { drawWetRig, nearness } from "../../server/analysis/rig-nearness.ts";
import { isClear, roughRig } from "../../server/analysis/rough-rigs.ts";
import { tripWater, waterAround, wetRigsAfter, wetTaskOf } from "../../server/analysis/spread-at.ts";
import { shiftRange } from "../../server/analysis/spread-geometry.ts";
import { notSurelyExpected } from "../../server/analysis/surely-expected.ts";
import { normalDraws } from "../physics/random-normal.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
cable diver-wire steel diameter 0.53 mm
cable lead-27 leadcore diameter 0.85 mm
ball round-12 sphere 12 lb
ball round-10 sphere 10 lb
lure glow-spoon spoon 4 in
lure barred-plug plug 4.5 in
rig P1 downrigger port cable rigger-wire ball round-12
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig C1U stacked C1
rig S1 downrigger starboard cable rigger-wire ball round-10
rig S2 downrigger starboard cable rigger-wire ball round-12
rig OD diver starboard cable diver-wire dial 2 leader 8 ft
calibrate OD lift-area 165 cm2 drag-area 105 cm2
rig PB leadcore port cable lead-27 board 90 ft leader 30 ft
`;

const TRIPS = 30;

/** Trips with settings, speeds and readings of all kinds; some of their counters are off, some readings slips. */
function trips(seed: number): TripAnalysis[] {
  const normal = normalDraws(seed);
  const whole = (mean: number, sd: number): number => Math.max(5, Math.round(mean + sd * normal()));
  const lure = (): string => (normal() > 0.8 ? "barred-plug" : "glow-spoon");
  return Array.from({ length: TRIPS }, (_, n) => {
    const lines: string[] = [`trip 2031-06-21 "Bright Penny"`];
    let minute = 300;
    const write = (line: string): void => {
      const clock = `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
      lines.push(`${clock} ${line}`);
      minute += 3;
    };
    const mph = (): string => (2.3 + 0.1 * normal()).toFixed(1);
    write(`surface temp 62 F speed ${mph()} mph`);
    for (const rig of ["P1", "S1", "S2"])
      if (normal() > -0.7)
        write(`set ${rig} out ${whole(60, 25)} ft setback ${whole(25, 25)} ft lure ${lure()}`);
    if (normal() > 0) write(`set OD out ${whole(120, 30)} ft dial 2 lure glow-spoon`);
    if (normal() > 0) write(`set PB out ${whole(150, 50)} ft lure glow-spoon`);
    const scale = n % 2 === 0 ? 1 : 1 + 0.06 * normal();
    for (let i = 0; i < 4; i++) {
      const out = whole(90, 40);
      write(`${i === 0 ? "set" : "move"} C1 out ${out} ft setback ${whole(30, 30)} ft lure ${lure()}`);
      if (i === 0 && n % 4 === 1) write("set C1U above 15 ft setback 12 ft lure glow-spoon");
      for (let k = 0; k < 3; k++) {
        const slip = normal() > 2.5 ? whole(0, 12) : 0;
        const depth = Math.round(0.92 * out * scale + normal() - slip);
        write(`probe C1 depth ${Math.max(3, depth)} ft temp 48 F speed ${mph()} mph`);
      }
      if (normal() > 0.3) write(`surface temp 62 F speed ${mph()} mph`);
      write(`turn ${normal() > 0 ? "left" : "right"} to 090`);
    }
    const calibrated = `calibrate C1 drag ${(1.2 + 0.2 * normal()).toFixed(2)} drag-error 0.1 counter-scale ${(1 + 0.03 * normal()).toFixed(3)} counter-scale-error 0.012 counter-offset -1 ft counter-offset-error 1 ft drag-scale-link 0.5 drag-offset-link -0.4 scale-offset-link -0.8\n`;
    const book = { uri: "file:///b.gear", parse: parse(n % 3 === 2 ? BOOK + calibrated : BOOK) };
    const file = { uri: "file:///a.trip", parse: parse(`${lines.join("\n")}\n`) };
    const [day] = analyzeJournal(file, [book]).trips;
    if (day === undefined) throw new Error("no trip");
    return day;
  });
}

const DAYS = trips(11);

test("pairs that are clear by rough drawings have no place where they come near", () => {
  const memo = createDepthMemo();
  const counts = { clear: 0, near: 0 };
  for (const day of DAYS)
    for (const event of day.timeline.ordered.filter(({ line }) => line.verb === "turn")) {
      const wet = wetRigsAfter(day.trip, day.timeline, event);
      const around = waterAround(tripWater(day.trip, day.ages), wet, event.instant?.utcMs ?? 0);
      if (around === undefined) continue;
      const radiusM = 60 * (event.line.raw.includes("left") ? -1 : 1);
      const rigs = wet.flatMap((rig, i) => {
        const task = wetTaskOf(day.trip, rig, around.speed, around.temperaturesC[i] ?? Number.NaN);
        return task === undefined ? [] : { rig, task, rough: roughRig(rig, task, radiusM) };
      });
      const drawn = rigs.map(({ rig, task }) => drawWetRig(rig, task, radiusM, memo));
      rigs.forEach((one, i) => {
        rigs.slice(i + 1).forEach((other, k) => {
          const range = shiftRange(one.rig.place, other.rig.place, true);
          const [first, second] = [drawn[i], drawn[i + 1 + k]];
          // A wide margin, so that many come near.
          for (const marginM of [0.9, 3]) {
            const found = first && second ? nearness(first, second, range, marginM, memo) : null;
            if (isClear(one.rough, other.rough, range, marginM)) {
              counts.clear++;
              expect(found).toBeNull();
            } else if (found !== null) counts.near++;
          }
        });
      });
    }
  expect(counts.clear).toBeGreaterThan(500);
  expect(counts.near).toBeGreaterThan(20);
}, 240_000);

test("readings that are surely expected are within their range", () => {
  const counts = { left: 0, told: 0 };
  for (const day of DAYS) {
    const probes = calibrationReadings(day).used;
    for (const leastM of [0.3, 0.9]) {
      const kept = new Set(notSurelyExpected(probes, leastM, 2));
      for (const one of probes) {
        const expected = expectedReading(one);
        if (expected === undefined) continue;
        const { measuredM, depthM, offAtMost } = expected;
        const isTold = offAtMost >= 2 && Math.abs(measuredM - depthM) >= leastM && expected.off >= 2;
        if (isTold) counts.told++;
        if (!kept.has(one)) counts.left++;
        expect(isTold && !kept.has(one)).toBe(false);
      }
    }
  }
  expect(counts.left).toBeGreaterThan(300);
  expect(counts.told).toBeGreaterThan(5);
}, 240_000);

test("counters that rough fits find right are found right", () => {
  const counts = { quiet: 0, told: 0 };
  for (const day of DAYS) {
    const { gear } = day.trip;
    const told = counterDrifts(day, 0.02).map((drift) => drift.calibration.rig);
    for (const group of groupReadings(calibrationReadings(day).used)) {
      if (mayDrift(gear, group.readings, 0.02)) {
        if (told.includes(group.rig)) counts.told++;
        continue;
      }
      counts.quiet++;
      expect(driftTold(gear, calibrateRig(group), 0.02)).toBeUndefined();
    }
  }
  expect(counts.quiet).toBeGreaterThan(5);
  expect(counts.told).toBeGreaterThan(5);
}, 240_000);
