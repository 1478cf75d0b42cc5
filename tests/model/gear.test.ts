import { describe, expect, test } from "vitest";
import { calibrationOf } from "../../server/analysis/calibration-used.ts";
import { resolveGear } from "../../server/model/gear.ts";
import type { Gear } from "../../server/model/gear-types.ts";
import { gearResolver } from "../../server/model/trip.ts";
import { bookFile } from "./read-trip.ts";

const BOAT = 'boat "Bright Penny"\n';

/** The gear on a day from books, nearest first. */
function gearOn(date: string, ...books: readonly string[]): Gear {
  const files = books.map((text, i) => bookFile(`file:///${i}.gear`, text));
  return resolveGear(files, "Bright Penny", date);
}

/** The cable of a rig and the ball on it, as a day has them. */
const rigOn = (date: string, ...books: readonly string[]): string => {
  const rig = gearOn(date, ...books).rigs.get("C1");
  return `${rig?.cable} ${rig?.ball}`;
};

const DATED = `${BOAT}rig C1 downrigger cable wire ball old
2031-08-09 rig C1 downrigger cable braid
2031-07-01 rig C1 downrigger cable wire ball new
`;

describe("a dated line holds from its day on, whole", () => {
  test.each([
    ["2031-06-30", "wire old"],
    ["2031-07-01", "wire new"],
    ["2031-08-08", "wire new"],
    // What the latest line doesn't say is not said: no merging.
    ["2031-08-09", "braid undefined"],
  ])("%s", (date, expected) => {
    expect(rigOn(date, DATED)).toBe(expected);
  });

  test("a boat's own properties too", () => {
    const book = `${BOAT}  sounder 2 ft\n  2031-07-01 sounder 3 ft\n`;
    expect(gearOn("2031-06-30", book).sounderBelowM).toBeCloseTo(2 * 0.3048, 12);
    expect(gearOn("2031-07-01", book).sounderBelowM).toBeCloseTo(3 * 0.3048, 12);
  });
});

test("days between two changes of the books have the very same gear, so that a season's trips share it", () => {
  const book = bookFile("file:///0.gear", `${DATED}boat "Grey Gull"\n  2031-07-04 zone America/Chicago\n`);
  const on = gearResolver([bookFile("file:///day.trip", ""), book]);
  const days = [
    "2031-06-30",
    "2031-07-01",
    "2031-07-03",
    "2031-07-04",
    "2031-08-08",
    "2031-08-09",
    "2032-01-01",
  ];
  for (const day of days) expect(on("Bright Penny", day)).toEqual(resolveGear([book], "Bright Penny", day));
  expect(new Set(days.map((day) => on("Bright Penny", day))).size).toBe(4);
  expect(on("Bright Penny", "2031-07-01")).toBe(on("Bright Penny", "2031-07-03"));
});

test("a line is a cable by another word", () => {
  const book = `${BOAT}line thin mono diameter 0.3 mm\n2031-07-01 cable thin braid diameter 0.2 mm\n`;
  expect(gearOn("2031-06-30", book).cables.get("thin")).toMatchObject({
    material: "mono",
    diameterM: 0.0003,
  });
  expect(gearOn("2031-07-01", book).cables.get("thin")).toMatchObject({
    material: "braid",
    diameterM: 0.0002,
  });
});

describe("the nearest folder wins", () => {
  test.each([
    ["undated lines", `${BOAT}rig C1 downrigger cable near`, `${BOAT}rig C1 downrigger cable far`, "near"],
    [
      "but a later day goes before a nearer folder",
      `${BOAT}rig C1 downrigger cable near`,
      `${BOAT}2031-06-01 rig C1 downrigger cable far`,
      "far",
    ],
    [
      "the first of two alike",
      `${BOAT}rig C1 downrigger cable near\nrig C1 downrigger cable twice`,
      "",
      "near",
    ],
  ])("%s", (_, near, far, cable) => {
    expect(gearOn("2031-06-21", near, far).rigs.get("C1")?.cable).toBe(cable);
  });
});

test("another boat's gear is not this boat's; what stands above any boat is everyone's", () => {
  const book = `lure shared spoon 4 in\nboat "Other"\nlure theirs spoon 4 in\n${BOAT}lure ours spoon 4 in\n`;
  expect([...gearOn("2031-06-21", book).lures.keys()]).toEqual(["shared", "ours"]);
});

describe("a calibration ends where what it measured was replaced", () => {
  const gear = `${BOAT}cable wire steel diameter 0.9 mm
ball b sphere 12 lb
rig C1 downrigger cable wire ball b
2031-06-08 calibrate C1 drag 1.31 counter-scale 1.02
`;
  test.each([
    ["before its day", gear, "2031-06-07", undefined],
    ["from its day on", gear, "2031-06-08", 1.31],
    ["a later rig line", `${gear}2031-08-09 rig C1 downrigger cable wire ball b`, "2031-08-09", undefined],
    ["until then", `${gear}2031-08-09 rig C1 downrigger cable wire ball b`, "2031-08-08", 1.31],
    ["a later cable line", `${gear}2031-07-01 cable wire steel diameter 1 mm`, "2031-07-02", undefined],
    ["a later ball line", `${gear}2031-07-01 ball b sphere 15 lb`, "2031-07-02", undefined],
    ["an older one does not", `${gear}2031-06-01 cable wire steel diameter 1 mm`, "2031-07-02", 1.31],
    ["a newer calibration", `${gear}2031-07-01 calibrate C1 drag 1.1`, "2031-07-01", 1.1],
  ])("%s", (_, book, date, drag) => {
    const resolved = gearOn(date, book);
    const rig = resolved.rigs.get("C1");
    expect(rig === undefined ? null : calibrationOf(resolved, rig)?.dragRatio).toBe(drag);
  });
});

test("numbers come in SI, units by the boat's book where none is written", () => {
  const gear = gearOn(
    "2031-06-21",
    `${BOAT}  units ft mph F lb in\n  zone America/Detroit\ncable wire steel diameter 0.9 mm\nball b sphere 12 lb 8 oz\nlure l plug length 4.5 pulls-down 4 to 8\nrig C1 downrigger boom 4 probe 1.25 ft\nband chinook 45 to 52\n`,
  );
  expect(gear.cables.get("wire")?.diameterM).toBeCloseTo(0.0009, 12);
  expect(gear.balls.get("b")?.massKg).toBeCloseTo(12.5 * 0.45359237, 12);
  expect(gear.lures.get("l")?.lengthM).toBeCloseTo(4.5 * 0.0254, 12);
  expect(gear.lures.get("l")?.pullsDownM?.high).toBeCloseTo(8 * 0.3048, 12);
  expect(gear.rigs.get("C1")?.boomM).toBeCloseTo(4 * 0.3048, 12);
  expect(gear.bands.get("chinook")?.tempC.low).toBeCloseTo((45 - 32) / 1.8, 12);
});

test("a band of a nickname is its species'; the species' own counts first", () => {
  const book = `${BOAT}nickname steelie steelhead\nnickname king chinook\nband steelie 50 to 60 F\n`;
  const gear = gearOn("2031-06-21", `${book}band king 40 to 50 F\nband chinook 45 to 52 F\n`);
  expect([...gear.bands.keys()].sort()).toEqual(["chinook", "steelhead"]);
  expect(gear.bands.get("chinook")?.tempC.high).toBeCloseTo((52 - 32) / 1.8, 12);
});

test("beam and turn radius are the boat's own; none where they are nothing", () => {
  const facts = (properties: string): unknown[] => {
    const { beamM, turnRadiusM } = gearOn("2031-06-21", `boat "Bright Penny"\n  units ft\n${properties}`);
    return [beamM, turnRadiusM];
  };
  expect(facts("  beam 10 ft\n  turn-radius 200 ft\n")).toEqual([3.048, 60.96]);
  expect(facts("  beam 0 ft\n  turn-radius -5 ft\n")).toEqual([undefined, undefined]);
  expect(facts("")).toEqual([undefined, undefined]);
});
