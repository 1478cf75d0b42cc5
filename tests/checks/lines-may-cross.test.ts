import { expect, test } from "vitest";
import { checkDay } from "./check-day.ts";
import { findingsIn } from "./check-findings.ts";

const GEAR = `rig CF downrigger center cable rigger-wire ball round-12
rig CFU stacked CF
rig OD diver starboard cable diver-wire dial 2 leader 8 ft
calibrate OD lift-area 165 cm2 drag-area 105 cm2
cable lead-27 leadcore diameter 0.85 mm
rig PB leadcore port cable lead-27 board 90 ft leader 30 ft
rig PC leadcore port cable lead-27 board 90 ft leader 30 ft
rig SB leadcore starboard cable lead-27 board 90 ft leader 30 ft
05:00 surface temp 50 F speed 2.4 mph
`;
const LONG_LEAD = `${GEAR}05:10 set CF out 30 ft setback 120 ft lure glow-spoon sure
05:12 set OD out 120 ft dial 2 lure glow-spoon
`;
const BOARDS = `${GEAR}05:10 set PB out 5 colors lure glow-spoon
`;

test("an outside diver lies across a long lead in the turn, once", () => {
  checkDay(`${LONG_LEAD}05:25 turn left to 310
      ^^^^ lines-may-cross
05:50 turn left to 130`);
});

test("two boards at one distance cross on top", () => {
  checkDay(`${BOARDS}05:15 set PC out 6 colors lure glow-spoon
          ^^ lines-may-cross PC's line comes within 1 ft of PB's line, where both go into the water; less than 3 ft is too near.`);
});

test.each([
  // The diver is on the inside.
  `${LONG_LEAD}05:25 turn right to 130`,
  // To which side isn't said.
  `${LONG_LEAD}05:25 turn to 130`,
  `${LONG_LEAD}05:25 turn left to 310 sure`,
  `${LONG_LEAD}05:20 pull OD
05:25 turn left to 310`,
  `${LONG_LEAD}05:20 move CF out 30 ft on-bottom
05:25 turn left to 310`,
  // The lead is short.
  `${GEAR}05:10 set CF out 30 ft setback 20 ft lure glow-spoon
05:12 set OD out 120 ft dial 2 lure glow-spoon
05:25 turn left to 310`,
  // On one cable.
  `${GEAR}05:10 set CF out 90 ft setback 20 ft lure glow-spoon
05:12 set CFU above 3 ft setback 20 ft lure glow-spoon
05:25 turn left to 310`,
  // Where on its side each stands isn't known.
  `${GEAR}05:10 set P1 out 60 ft setback 20 ft lure glow-spoon
05:12 set C1 out 60 ft setback 20 ft lure glow-spoon
05:14 set CF out 60 ft setback 20 ft lure glow-spoon`,
  `${BOARDS}05:14 set PC out 5 colors lure glow-spoon board 60 ft`,
  `${BOARDS}05:14 set SB out 5 colors lure glow-spoon`,
  `${BOARDS}05:14 set PC out 5 colors lure glow-spoon sure`,
])("keeps quiet: %#", (lines) => {
  checkDay(lines);
});

test("two boards at one distance on one side, once", () => {
  checkDay(`${BOARDS}05:14 set PC out 5 colors lure glow-spoon
          ^^ lines-may-cross
05:30 again PC`);
});

test("the captain may set the margin", () => {
  checkDay(`${LONG_LEAD}05:25 turn left to 310`, { boat: "threshold crossing-margin 1 ft" });
});

test("a wide turn keeps them apart, and so does a beam that no such boat has", () => {
  for (const boat of ["turn-radius 2500 ft", "beam 50 ft"])
    checkDay(`${LONG_LEAD}05:25 turn left to 310`, { boat });
});

test("points to the lines that put both in, and says where they meet", () => {
  const book = `boat "Bright Penny"\n  units ft mph F lb in\n  zone America/Detroit\n  quiet reading-stale\n
cable rigger-wire steel diameter 0.9 mm\ncable diver-wire steel diameter 0.53 mm\nball round-12 sphere 12 lb\nlure glow-spoon spoon 4 in\n`;
  const text = `trip 2031-06-21 "Bright Penny"\n${LONG_LEAD}05:25 turn left to 310`;
  const found = findingsIn(text, { books: { "file:///season/b.gear": book } });
  const crossing = found.find((one) => one.slug === "lines-may-cross");
  expect(crossing?.message).toMatch(
    /^CF's lure line comes within 3 ft of OD's line, (29|30|31) ft down, (49|50|51) ft back, in the turn at 05:25; less than 3 ft is too near\.$/u,
  );
  expect(crossing?.related.map((place) => place.message)).toEqual(["CF as it is out", "OD as it is out"]);
});
