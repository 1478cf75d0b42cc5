/**
 * Numbers no boat has: each is answered on the line that causes it, by a finding or by the reason why there is no
 * depth, and no sentence, band or length that comes of it is no number.
 */
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";

const CABLE = "cable wire steel diameter 0.9 mm";
const BALL = "ball round-12 sphere 12 lb";
const RIG = "rig C1 downrigger center cable wire ball round-12 probe 1.25 ft";
const LEAD = "cable lead-27 leadcore diameter 0.85 mm\nrig PB leadcore cable lead-27";
const SPEED = "05:00 surface speed 2.3 mph";
const SET = "05:00 set C1 out 90 ft setback 15 ft lure glow-spoon";
const COLORS = "05:00 set PB out 5 colors lure glow-spoon";

interface Said {
  /** `line text: slug` of each finding. */
  readonly findings: readonly string[];
  readonly whys: readonly string[];
}

/** What is said of a day with this gear; throws where any of it holds a number that is none. */
function said(gear: readonly string[], day: readonly string[]): Said {
  const book = ['boat "Bright Penny"', "  units ft mph F lb in", "lure glow-spoon spoon 4 in", ...gear];
  const lines = [...book, 'trip 2031-06-21 "Bright Penny"', ...day].join("\n").split("\n");
  const analysis = analyzeJournal({ uri: "file:///t.trip", parse: parse(`${lines.join("\n")}\n`) }, []);
  const found = runChecks(analysis);
  const depths = analysis.trips.flatMap((trip) => trip.depths.map((depth) => ({ trip, depth })));
  const texts = [
    ...found.map((one) => one.message),
    ...depths.flatMap(({ trip, depth }) => depthSentences(trip, depth)),
  ];
  for (const text of texts) expect(text).not.toMatch(/NaN|Infinity|undefined|null/u);
  for (const { depth } of depths) {
    for (const place of [depth.ball, depth.lure, depth.weight]) {
      if (place === null) continue;
      const outM = depth.setting.outM ?? 0;
      expect([place.depthM, place.lowM, place.highM, place.behindM].every(Number.isFinite)).toBe(true);
      expect(place.highM).toBeLessThan(1.5 * outM + 10);
    }
  }
  return {
    findings: found.map(({ lineIndex, slug }) => `${(lines[lineIndex] ?? "").slice(0, 60)}: ${slug}`),
    whys: depths.map(({ depth }) => depth.why ?? ""),
  };
}

test.each([
  // Gear that is missing: the line says what, and where it goes.
  [[CABLE, "rig C1 downrigger cable wire"], [SPEED, SET], /no ball in the gear book \(ball NAME/u],
  [[BALL, "rig C1 downrigger ball round-12"], [SPEED, SET], /no cable in the gear book \(cable NAME/u],
  [["cable wire steel", BALL, RIG], [SPEED, SET], /the diameter of cable wire isn't in the gear book/u],
  [
    ["rig PB leadcore backing none-30"],
    [SPEED, "05:00 set PB out 10 colors 50 ft"],
    /backing none-30 isn't in/u,
  ],
  // A boat that stands, or goes astern.
  [[LEAD], ["05:00 surface speed 0 mph", COLORS], /the boat hardly moves/u],
  [[CABLE, BALL, RIG], ["05:00 surface speed -2 mph", SET], /no speed reading within reach/u],
  // Two speeds of one minute.
  [
    [CABLE, BALL, RIG],
    [SPEED, "05:00 surface speed 4.8 mph", SET],
    /^the speeds read within reach contradict each other$/u,
  ],
  // Lengths nobody has.
  [[CABLE, BALL, RIG], [SPEED, "05:00 set C1 out 99999999999 ft"], /above the 6560 ft/u],
  [[CABLE, BALL, RIG], [SPEED, `05:00 set C1 out ${"9".repeat(400)} ft`], /isn't stated/u],
  // Balls that float, and calibrations that can't be.
  [[CABLE, "ball round-12 sphere 0 lb", RIG], [SPEED, SET], /the ball has no mass/u],
  [[CABLE, "ball round-12 sphere -3 lb", RIG], [SPEED, SET], /the ball's mass is -3 lb, below zero/u],
  [[LEAD, "2031-01-01 calibrate PB drag 0"], [SPEED, COLORS], /the drag on PB's calibrate line is 0/u],
  [
    [CABLE, "rig SD diver cable wire", "2031-01-01 calibrate SD lift-area 0 cm2 drag-area 0 cm2"],
    [SPEED, "05:00 set SD out 100 ft"],
    /areas on SD's calibrate line must be above zero/u,
  ],
  [
    [CABLE, BALL, RIG, "2031-01-01 calibrate C1 drag 1.2 counter-scale 0"],
    [SPEED, SET],
    /the counter's scale is 0/u,
  ],
])("no depth, and why %#", (gear, day, why) => {
  const { whys } = said(gear, day);
  expect(whys.at(-1)).toMatch(why);
});

const GOOD = [CABLE, BALL, RIG];

test.each([
  [GOOD, ["05:00 surface speed -2 mph", SET], "05:00 surface speed -2 mph: speed-implausible"],
  [GOOD, ["05:00 surface speed 900 mph", SET], "05:00 surface speed 900 mph: speed-implausible"],
  [GOOD, [SPEED, "05:00 set C1 out 99999 ft"], "05:00 set C1 out 99999 ft: line-too-long"],
  [
    [CABLE, "ball round-12 sphere 0.2 oz", RIG],
    [SPEED, SET],
    "ball round-12 sphere 0.2 oz: gear-implausible",
  ],
  [[CABLE, "ball round-12 sphere 0.2 oz", RIG], [SPEED, SET], `${SET}: above-surface`],
  [
    GOOD,
    [SPEED, SET, "05:01 probe C1 depth 82 ft speed 2.3 mph", "05:02 probe C1 depth 50 ft speed 2.3 mph"],
    "05:02 probe C1 depth 50 ft speed 2.3 mph: depth-disagrees",
  ],
])("a finding on the line that causes it %#", (gear, day, finding) => {
  expect(said(gear, day).findings).toContain(finding);
});

test.each([
  [GOOD, [SPEED, "04:59 profile 10 ft 60 F 30 ft 52 F 30 ft 48 F 20 ft 55 F", SET]],
  [
    [
      LEAD,
      "2031-01-01 calibrate PB drag 1.2 drag-error -9 counter-scale-error 9 counter-offset-error 900 ft",
    ],
    [SPEED, COLORS.replace("5 colors", "150 ft")],
  ],
  [
    [
      CABLE,
      "rig SD diver cable wire",
      "2031-01-01 calibrate SD lift-area 165 cm2 lift-area-error 9999 cm2 drag-area 105 cm2 drag-area-error 0 cm2 area-link 9",
    ],
    [SPEED, "05:00 set SD out 100 ft"],
  ],
])("a depth all the same, in a finite range %#", (gear, day) => {
  expect(said(gear, day).whys.at(-1)).toBe("");
});
