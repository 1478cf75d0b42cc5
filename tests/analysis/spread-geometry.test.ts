import { expect, test } from "vitest";
import { farthestAcrossM, shiftRange, type TowPlace } from "../../server/analysis/spread-geometry.ts";
import { dayOf } from "./depth-of.ts";

const place = (side: TowPlace["side"], acrossM: number, onBoard = false): TowPlace => ({
  side,
  acrossM,
  onBoard,
});
const PORT = place("port", -1.5);
const CENTER = place("center", 0);
const BOARD = place("port", -27, true);
const NEAR_BOARD = place("port", -18, true);

test.each([
  ["rigs of one side stand in line or two spacings apart", PORT, place("port", -2.7), false, [-2, -1, 2]],
  ["rigs of two sides stand as drawn, each a little off", PORT, CENTER, true, [-1.5, 0, 1.5]],
  ["two boards of one side keep their difference", BOARD, NEAR_BOARD, false, [0, 0, 0]],
  ["in a turn by a share of it", BOARD, NEAR_BOARD, true, [-1.8, 0, 1.8]],
  ["a board against the boat", BOARD, CENTER, true, [-6.15, 0, 6.15]],
] as const)("%s", (_, one, other, isTurn, [fromM, usualM, toM]) => {
  const range = shiftRange(one, other, isTurn);
  expect(range.fromM).toBeCloseTo(fromM, 9);
  expect(range.usualM).toBeCloseTo(usualM, 9);
  expect(range.toM).toBeCloseTo(toM, 9);
});

test("going straight only rigs in one line can meet", () => {
  expect(farthestAcrossM(PORT, CENTER, shiftRange(PORT, CENTER, false))).toBeCloseTo(3, 9);
  expect(farthestAcrossM(BOARD, BOARD, shiftRange(BOARD, BOARD, false))).toBe(0);
});

const GEAR = `rig C2 downrigger center cable rigger-wire ball round-12
rig PL leadcore port cable lead-27 board 90 ft leader 30 ft
rig PM leadcore port cable lead-27 board 90 ft leader 30 ft
rig OD diver starboard cable diver-wire dial 2 leader 8 ft
calibrate OD lift-area 165 cm2 drag-area 105 cm2`;

const crossings = (lines: string) => dayOf(lines, GEAR).day.crossings;

test("two boards at one distance cross whatever the depth", () => {
  const found = crossings(`05:10 set PL out 150 ft lure glow-spoon
05:12 set PM out 200 ft lure glow-spoon`);
  expect(found.map(({ one, other, isTurn }) => [one.rig, other.rig, isTurn])).toEqual([["PM", "PL", false]]);
});

test("each pair of a turn is looked at", () => {
  const lines = `05:10 set C2 out 30 ft setback 120 ft lure glow-spoon
05:12 set OD out 120 ft dial 2 lure glow-spoon
05:25 turn left to 310
05:26 again C2`;
  const [found, ...others] = crossings(lines);
  expect(others).toEqual([]);
  expect(found?.event.line.verb).toBe("turn");
  expect([found?.one, found?.other]).toEqual([
    { rig: "C2", name: "C2", what: "lure line" },
    { rig: "OD", name: "OD", what: "line" },
  ]);
});

test.each([
  ["no side is stated", "05:10 set P1 out 30 ft setback 120 ft lure glow-spoon"],
  ["no length is stated", "05:10 set C2 setback 120 ft lure glow-spoon"],
  ["a fish is on", "05:10 set C2 out 30 ft setback 120 ft lure glow-spoon\n05:20 strike C2"],
])("none where %s", (_, line) => {
  const lines = `${line}\n05:12 set OD out 120 ft dial 2 lure glow-spoon\n05:25 turn left to 310`;
  expect(crossings(lines.split("\n").sort().join("\n"))).toEqual([]);
});
