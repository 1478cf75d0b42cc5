/** Depths of lines on no downrigger, as a journal states them: what is counted how, and what is refused. */
import { describe, expect, test } from "vitest";
import { dayOf, depthOf, lureFtOf } from "./depth-of.ts";

const SD = "2031-06-01 calibrate SD lift-area 165 cm2 drag-area 105 cm2";

describe("leadcore", () => {
  test("is counted in colors of 30 ft, from the lure's end", () => {
    expect(lureFtOf("06:00 set PB out 5 colors lure glow-spoon")).toBe(
      lureFtOf("06:00 set PB out 150 ft lure glow-spoon"),
    );
    expect(depthOf("06:00 set PB out 5 colors lure glow-spoon").backingM).toBe(0);
  });

  test("goes on with backing beyond what the rig holds, or beyond the colors counted", () => {
    expect(depthOf("06:00 set PB out 12 colors lure glow-spoon").backingM).toBeCloseTo(18.288, 6);
    const counted = depthOf("06:00 set PB out 5 colors 50 ft lure glow-spoon");
    expect(counted.backingM).toBeCloseTo(15.24, 6);
    const five = lureFtOf("06:00 set PB out 5 colors lure glow-spoon");
    const lure = lureFtOf("06:00 set PB out 5 colors 50 ft lure glow-spoon");
    expect(lure).toBeGreaterThan(five);
    expect(lure).toBeLessThan(lureFtOf("06:00 set PB out 200 ft lure glow-spoon"));
  });

  test("has no length where a number could be colors or the book's feet", () => {
    expect(depthOf("06:00 set PB out 5 lure glow-spoon").setting.outM).toBeUndefined();
    expect(depthOf("06:00 set PB out 150 lure glow-spoon").setting.outM).toBeCloseTo(45.72, 6);
  });

  test("keeps its colors until another length is said", () => {
    const lines = "06:00 set PB out 5 colors lure glow-spoon\n06:30 strike PB\n06:40 again PB";
    expect(depthOf(lines).setting.outColorsM).toBeCloseTo(45.72, 6);
    expect(depthOf(`${lines} out 140 ft`).setting.outColorsM).toBeUndefined();
  });

  test("goes deeper when it was weighed heavier", () => {
    const light = lureFtOf("06:00 set PB out 5 colors lure glow-spoon");
    const heavy = "2031-06-01 calibrate lead-27 weight 2.8 g/m";
    expect(lureFtOf("06:00 set PB out 5 colors lure glow-spoon", heavy)).toBeGreaterThan(light);
    // The weighing was of the line before.
    const replaced = `${heavy}\n2031-06-10 cable lead-27 leadcore diameter 0.85 mm`;
    expect(lureFtOf("06:00 set PB out 5 colors lure glow-spoon", replaced)).toBe(light);
  });

  test("is narrower known when it was weighed", () => {
    const width = (gear?: string): number => {
      const { lure } = depthOf("06:00 set PB out 5 colors lure glow-spoon", gear);
      return (lure?.highM ?? 0) - (lure?.lowM ?? 0);
    };
    expect(width("2031-06-01 calibrate lead-27 weight 2.2 g/m")).toBeLessThan(width());
  });
});

test("a planer board takes a line to the side and leaves its depth as it is", () => {
  const board = depthOf("06:00 set LB out 5 colors lure glow-spoon");
  const rod = depthOf("06:00 set PB out 5 colors lure glow-spoon");
  expect(board.lure).toEqual(rod.lure);
  expect(board.sideM).toBeCloseTo(27.432, 6);
  expect(rod.sideM).toBeNull();
  expect(depthOf("06:00 set LB out 5 colors board 60 ft lure glow-spoon").sideM).toBeCloseTo(18.288, 6);
});

test("a line without a ball says so, and has a depth all the same", () => {
  const depth = depthOf("06:00 set CU out 200 ft lure glow-spoon");
  expect([depth.ball, depth.why, depth.whyNoBall]).toEqual([
    null,
    null,
    "CU is no downrigger and has no ball",
  ]);
  expect(depth.lure?.depthM).toBeGreaterThan(8);
});

describe("flat lines", () => {
  test("go deeper with a sinker, whose place is told", () => {
    const depth = depthOf("06:00 set FW out 100 ft lure glow-spoon");
    expect(depth.weightIs).toBe("weight");
    expect(depth.weight?.depthM).toBeGreaterThan(0);
    expect(depth.lure?.depthM).toBeGreaterThan(
      depthOf("06:00 set FL out 100 ft lure glow-spoon").lure?.depthM ?? 0,
    );
  });

  test("with a lure that dives run about as deep as it is said to dive", () => {
    const depth = lureFtOf("06:00 set FL out 60 ft lure night-plug");
    expect(depth).toBeGreaterThan(4);
    expect(depth).toBeLessThan(9);
  });
});

describe("divers", () => {
  test("have no depth until they were measured on this boat", () => {
    const { lure, weight, why } = depthOf("06:00 set SD out 140 ft lure glow-spoon");
    expect([lure, weight]).toEqual([null, null]);
    expect(why).toMatch(
      /^SD's diver was never measured; touch bottom with it at two lengths .*deepwake calibrate gives the line/u,
    );
  });

  test("have one from their calibrate line, with the diver's own", () => {
    const { lure, weight, weightIs } = depthOf("06:00 set SD out 140 ft lure glow-spoon", SD);
    expect(weightIs).toBe("diver");
    expect(lure?.depthM).toBeGreaterThan(weight?.depthM ?? 0);
    expect(lure?.behindM).toBeGreaterThan(weight?.behindM ?? 0);
  });

  test("need both areas, of a day before, for the dial that is set and the wire that is on", () => {
    for (const gear of [
      "2031-06-01 calibrate SD lift-area 165 cm2",
      "2031-07-01 calibrate SD lift-area 165 cm2 drag-area 105 cm2",
      `${SD}\n2031-06-10 cable diver-wire steel diameter 0.4 mm`,
    ])
      expect(depthOf("06:00 set SD out 140 ft lure glow-spoon", gear).why).toMatch(/never measured/u);
    expect(depthOf("06:00 set SD out 140 ft dial 3 lure glow-spoon", SD).why).toBe(
      "SD's diver was measured at dial 2, and 3 is set",
    );
  });

  test("have none once a fish has tripped them, until they are put back", () => {
    const set = "06:00 set SD out 140 ft lure glow-spoon\n06:20 strike SD\n";
    expect(depthOf(`${set}06:30 move SD out 150 ft`, SD).why).toMatch(/tripped by a fish/u);
    expect(depthOf(`${set}06:30 again SD out 150 ft`, SD).why).toBeNull();
    expect(depthOf(`${set}06:30 again SD\n06:40 move SD out 150 ft`, SD).why).toBeNull();
  });

  test("pull a flasher, which costs some depth", () => {
    const bare = lureFtOf("06:00 set SD out 140 ft lure glow-spoon", SD);
    const flasher = lureFtOf("06:00 set SD out 140 ft flasher green-paddle lure glow-spoon leader 22 in", SD);
    expect(flasher).toBeLessThan(bare);
  });
});

describe("no depth, with a plain reason", () => {
  test.each([
    ["06:00 set X9 out 100 ft", "X9 isn't in the gear book"],
    ["06:00 set J1 out 100 ft", "J1 is cast or jigged, and hangs where it is let down"],
    ["06:00 set CU lure glow-spoon", "how much line CU has out isn't stated"],
    ["set CU out 200 ft", "the line has no clock time, so no speed to go by"],
    ["12:30 set CU out 200 ft", "no speed reading within reach (probe, surface or gps)"],
    ["06:00 set CU out 0 ft", "no line is out"],
    ["06:00 set CU out 900000 ft", /^the line out is 900000 ft, above the 6560 ft/u],
    ["05:59 surface speed 0 mph\n06:00 probe P1 speed 0 mph\n06:00 set CU out 200 ft", /hardly moves/u],
  ])("%s", (lines, why) => {
    const depth = depthOf(lines);
    expect(depth.lure).toBeNull();
    expect(depth.why).toMatch(why);
  });

  test.each([
    ["rig Q copper", "Q has no line in the gear book (cable NAME on its rig line)"],
    ["rig Q copper cable gone", "line gone isn't in the gear book"],
    [
      "cable thin copper\nrig Q copper cable thin",
      "the diameter of cable thin isn't in the gear book (diameter 0.9 mm)",
    ],
    [
      "cable odd diameter 1 mm\nrig Q copper cable odd",
      "what cable odd is made of isn't in the gear book (steel, braid or the like)",
    ],
    [
      "cable wire weighted diameter 1 mm\nrig Q weighted-wire cable wire",
      "the weight of weighted line wire isn't in the gear book (weight 2.1 g/m)",
    ],
    [
      "rig Q copper cable copper-45 holds 100 ft",
      "more is out than Q holds, and the gear book names no backing (backing NAME on its rig line)",
    ],
    ["rig Q stacked CU", "Q is stacked on CU, which is no downrigger in the gear book"],
  ])("%s", (gear, why) => {
    expect(depthOf("06:00 set Q out 200 ft lure glow-spoon", gear).why).toBe(why);
  });
});

test("what the book or the line doesn't say is taken, and told", () => {
  expect(depthOf("06:00 set Q out 5 colors", "rig Q leadcore").assumed).toEqual([
    "Q's leadcore is taken as ordinary, since the gear book names none",
    "Q's lure isn't stated and is taken as a spoon",
  ]);
});

test("the bottom stops a line", () => {
  const { lure } = depthOf("05:59 sonar bottom 30 ft\n06:00 set CU out 250 ft lure glow-spoon");
  expect(lure?.onBottom).toBe(true);
  expect(lure?.depthM).toBeCloseTo(9.144, 6);
});

describe("other gear of the book", () => {
  test("says what the next heavier ball and the other cable would do to a downrigger's", () => {
    const { day, depth } = dayOf("06:00 set P1 out 150 ft setback 20 ft lure glow-spoon");
    const [ball, cable] = day.gearChanges(depth);
    expect([ball?.kind, ball?.name, ball?.instead]).toEqual(["ball", "round-15", "round-12"]);
    expect(ball?.deeperM).toBeGreaterThan(0.5);
    expect([cable?.kind, cable?.name, cable?.instead]).toEqual(["cable", "rigger-braid", "rigger-wire"]);
  });

  test("says nothing of lines without a ball or a depth", () => {
    for (const line of ["06:00 set CU out 200 ft", "12:30 set P1 out 100 ft"]) {
      const { day, depth } = dayOf(line);
      expect(day.gearChanges(depth)).toEqual([]);
    }
  });
});

describe("sliders", () => {
  test("pinned have a depth, free ones a range", () => {
    const set = "06:00 set P1 out 80 ft setback 20 ft lure glow-spoon slider mini-spoon";
    const [free, pinned] = [depthOf(set).slider, depthOf(`${set} fixed 15 ft`).slider];
    expect([free?.isFree, pinned?.isFree]).toEqual([true, false]);
    const ball = depthOf(set).ball?.depthM ?? 0;
    expect(pinned?.depthM).toBeLessThan(ball);
    expect((free?.highM ?? 0) - (free?.lowM ?? 0)).toBeGreaterThan(3);
  });
});
