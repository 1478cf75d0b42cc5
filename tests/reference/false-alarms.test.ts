/**
 * Honest seasons: boats whose cable, ball, rods and counter are as the model takes them to be, with readings as noisy
 * as it says. How often do `depth-disagrees` and `counter-drift` speak on a trip of theirs? Whole journals go through
 * the checks, so what is counted is what a captain would see.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { withValues } from "../../server/physics/calibration-values.ts";
import { DEFAULTS } from "../../server/physics/defaults.ts";
import { atSpeed, type Downrigger, solveDownrigger } from "../../server/physics/downrigger.ts";
import { withDrawnRods } from "../physics/drawn-rods.ts";
import { normalDraws } from "../physics/random-normal.ts";
import { FOOT_M, MPH_MS, rig, rod } from "../physics/rig-maker.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
`;
const READINGS = 6;
const SPEED_SD = 0.1 * MPH_MS;

/** One boat's truth. */
interface World {
  readonly lnDrag: number;
  readonly lnLines: number;
  readonly ballScale: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
}

/** The probe's depth as it truly is, m; undefined where it would come out of the water. */
function probeM(base: Downrigger, speedMS: number, world: World, normal: () => number): number | undefined {
  const drawn = withDrawnRods(base, world, normal);
  const solved = solveDownrigger(withValues(atSpeed(drawn, speedMS), world));
  return solved.ok ? solved.probe?.depthM : undefined;
}

/** A trip's lines: a set, then probe readings at lengths and speeds of a usual day, in whole feet and tenths of a mph. */
function journalOf(world: World, normal: () => number): string {
  const lines = ['trip 2031-06-21 "Bright Penny"'];
  for (let i = 0; i < READINGS; i++) {
    const outFt = Math.round(60 + 35 * Math.abs(normal() + 1));
    const readMph = Math.round(10 * (2.3 + 0.2 * normal())) / 10;
    const base = rig(outFt, readMph, [rod("C1", 0, 20)], {
      probeAboveBallM: 1.25 * FOOT_M,
    });
    const depthM = probeM(base, readMph * MPH_MS + SPEED_SD * normal(), world, normal);
    if (depthM === undefined) continue;
    const shownFt = Math.round(depthM / FOOT_M + 0.7 * normal());
    const minute = String(10 * i).padStart(2, "0");
    lines.push(
      `05:${minute} ${i === 0 ? "set" : "move"} C1 out ${outFt} ft${i === 0 ? " setback 20 ft lure glow-spoon" : ""}`,
      `05:${minute} probe C1 depth ${shownFt} ft speed ${readMph} mph`,
    );
  }
  return `${lines.join("\n")}\n`;
}

/** The share of trips on which each check speaks. */
function alarms(
  seed: number,
  trips: number,
  worldOf: (normal: () => number) => World,
): (slug: string) => number {
  const normal = normalDraws(seed);
  const counts = new Map<string, number>();
  const book = { uri: "file:///boat.gear", parse: parse(BOOK) };
  for (let i = 0; i < trips; i++) {
    const file = { uri: `file:///${i}.trip`, parse: parse(journalOf(worldOf(normal), normal)) };
    const slugs = new Set(runChecks(analyzeJournal(file, [book])).map((one) => one.slug));
    for (const slug of slugs) counts.set(slug, (counts.get(slug) ?? 0) + 1);
  }
  return (slug) => (counts.get(slug) ?? 0) / trips;
}

/** As the defaults' spreads say; `isTrue` has a counter that tells the truth. */
function drawWorld(normal: () => number, isTrue: boolean): World {
  const lnShared = DEFAULTS.sharedDrag.sd * normal();
  const own = (sd: number): number => lnShared + sd * normal();
  return {
    lnDrag: Math.log(DEFAULTS.cableDragMultiplier.value) + own(DEFAULTS.cableDragMultiplier.sd),
    lnLines: own(DEFAULTS.lineDragMultiplier.sd),
    ballScale: 1 + DEFAULTS.ballMassScale.sd * normal(),
    counterScale: isTrue ? 1 : 1 + DEFAULTS.counterScale.sd * normal(),
    counterOffsetM: isTrue ? 0 : DEFAULTS.counterOffsetM.sd * normal(),
  };
}

describe("on honest trips", () => {
  let anyCounter: (slug: string) => number = () => Number.NaN;
  let trueCounter: (slug: string) => number = () => Number.NaN;
  let badCounter: (slug: string) => number = () => Number.NaN;
  beforeAll(() => {
    anyCounter = alarms(31, 200, (normal) => drawWorld(normal, false));
    trueCounter = alarms(32, 300, (normal) => drawWorld(normal, true));
    badCounter = alarms(33, 60, (normal) => ({ ...drawWorld(normal, true), counterScale: 0.93 }));
  }, 240_000);

  test("depth-disagrees speaks on fewer than 5 in 100, on 2 where the counter tells the truth", () => {
    expect(anyCounter("depth-disagrees")).toBeLessThan(0.05);
    expect(trueCounter("depth-disagrees")).toBeLessThan(0.02);
  });

  test("counter-drift speaks on fewer than 2 in 100 where the counter tells the truth", () => {
    expect(trueCounter("counter-drift")).toBeLessThan(0.02);
  });

  test("and on most trips with a counter that is 7 % off", () => {
    expect(badCounter("counter-drift")).toBeGreaterThan(0.75);
  });
});
