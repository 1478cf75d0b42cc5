/** What speeds say of the current: along one course, as a vector from several, and how deep water differs from the top. */
import { describe, expect, test } from "vitest";
import { currentLooks, currentVector, shears } from "../../server/analysis/current-looks.ts";
import { readTrip } from "../model/read-trip.ts";

const MPH = 0.44704;
const BOOK = (extra: string) => `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
${extra}`;

const looksOf = (lines: string, extra = "") =>
  currentLooks(readTrip(`${lines}\n`, "2031-06-21", BOOK(extra)));

const bearingOn = (date: string, lines: string) =>
  currentLooks(readTrip(`${lines}\n`, date, BOOK("")))[0]?.course;

const at = (clock: string): number => Date.parse(`2031-06-21T${clock}:00-04:00`);

describe("along the course", () => {
  test("the speed over ground less that through the water", () => {
    const [look] = looksOf("05:45 probe P1 depth 82 ft speed 2.6 mph\n05:46 gps speed 2.1 mph course 310");
    expect(look?.alongMS).toBeCloseTo(-0.5 * MPH, 9);
    expect(look?.where).toBe("probe");
    expect(look?.depthM).toBeCloseTo(82 * 0.3048, 9);
  });
  test.each([
    ["no speed through the water near it", "05:45 surface speed 2.3 mph\n05:51 gps speed 2.1 mph", 0],
    [
      "the nearest of two",
      "05:42 surface speed 2.3 mph\n05:46 surface speed 2.5 mph\n05:47 gps speed 2.1 mph",
      1,
    ],
    [
      "both instruments",
      "05:45 surface speed 2.3 mph\n05:45 probe P1 speed 2.6 mph\n05:45 gps speed 2.1 mph",
      2,
    ],
    ["no speed over ground", "05:45 surface speed 2.3 mph\n05:45 gps course 310", 0],
    ["no clock", "surface speed 2.3 mph\ngps speed 2.1 mph", 0],
  ])("%s", (_, lines, count) => {
    expect(looksOf(lines)).toHaveLength(count);
  });
  test("a turn within three minutes makes it doubtful", () => {
    const doubt = (turn: string) =>
      looksOf(`05:45 surface speed 2.3 mph\n05:45 gps speed 2.1 mph course 310\n${turn} turn right to 130`)[0]
        ?.isNearTurn;
    expect([doubt("05:48"), doubt("05:49")]).toEqual([true, false]);
  });
});

describe("the captain's own times", () => {
  const SPEEDS = "05:45 surface speed 2.3 mph\n05:49 gps speed 2.1 mph course 310";
  test.each([
    ["speeds-together 3 min", SPEEDS, []],
    ["speeds-together 4 min", SPEEDS, [false]],
    ["turn-settles 5 min", `${SPEEDS}\n05:54 turn right to 130`, [true]],
    ["turn-settles 4 min", `${SPEEDS}\n05:54 turn right to 130`, [false]],
  ])("threshold %s", (threshold, lines, near) => {
    expect(looksOf(lines, `  threshold ${threshold}\n`).map(({ isNearTurn }) => isNearTurn)).toEqual(near);
  });
  test("threshold current-holds: looks that are farther away tell nothing of a minute", () => {
    const vector = (threshold: string) =>
      currentVector(looksOf(SQUARE, `  threshold current-holds ${threshold}\n`), "surface", at("05:20"));
    expect(vector("15 min")).toBeUndefined();
    expect(vector("20 min")?.looks).toHaveLength(3);
  });
});

/** Through the water at 2.5 mph on four headings, with a current setting 090 at 0.5 mph, rounded as instruments do. */
const SQUARE = `05:00 surface speed 2.5 mph
05:00 gps speed 2.55 mph course 011.3
05:20 surface speed 2.5 mph
05:20 gps speed 3.0 mph course 090
05:40 surface speed 2.5 mph
05:40 gps speed 2.55 mph course 168.7`;

describe("from several courses", () => {
  test("set and drift", () => {
    const vector = currentVector(looksOf(SQUARE), "surface", at("05:20"));
    expect(vector?.setDeg).toBeGreaterThan(80);
    expect(vector?.setDeg).toBeLessThan(100);
    expect(vector?.driftMS).toBeCloseTo(0.5 * MPH, 1);
    expect(vector?.looks).toHaveLength(3);
  });
  test.each([
    ["one course", SQUARE.replaceAll(/course \S+/gu, "course 310")],
    ["there and back", SQUARE.replace("011.3", "350").replace("090", "170").replace("168.7", "350")],
    ["looks an hour and more away", SQUARE.replaceAll("05:", "02:")],
    [
      "one true and one magnetic, the variation not stated",
      SQUARE.replace("course 090", "course 090 magnetic"),
    ],
  ])("none from %s", (_, lines) => {
    expect(currentVector(looksOf(lines), "surface", at("05:20"))).toBeUndefined();
  });
  test("magnetic throughout: so is the set; with the boat's variation it is true", () => {
    const magnetic = SQUARE.replaceAll(/course (\S+)/gu, "course $1 magnetic");
    const unstated = currentVector(looksOf(magnetic), "surface", at("05:20"));
    const stated = currentVector(looksOf(magnetic, "  variation -7 deg\n"), "surface", at("05:20"));
    expect([unstated?.isMagnetic, stated?.isMagnetic]).toEqual([true, false]);
    expect((unstated?.setDeg ?? 0) - (stated?.setDeg ?? 0)).toBeCloseTo(7, 6);
  });
  test("with a position and no variation in the book the world's model turns it, in its years", () => {
    const at = "04:50 gps at 44.76 -85.6\n";
    const magnetic = at + SQUARE.replaceAll(/course (\S+)/gu, "course $1 magnetic");
    const variation = (date: string) => bearingOn(date, magnetic)?.turnedBy;
    expect(variation("2026-07-01")?.from).toBe("model");
    // An independent program has -6.07 there in mid-2026.
    expect(variation("2026-07-01")?.deg).toBeCloseTo(-6.07, 1);
    expect(variation("2031-07-01")).toBeUndefined();
    expect(bearingOn("2026-07-01", magnetic)?.deg).toBeCloseTo(11.3 - 6.07, 1);
  });
});

test("shear: the deep water against that on top", () => {
  const [shear] = shears(
    looksOf("05:45 surface speed 2.3 mph\n05:45 probe P1 depth 82 ft speed 2.6 mph\n05:45 gps speed 2.1 mph"),
  );
  expect(shear?.alongMS).toBeCloseTo(-0.3 * MPH, 9);
});
