/** The water at any minute: what is used, what is left out and said to be, and where nothing is known. */
import { describe, expect, test } from "vitest";
import { layersOf } from "../../server/analysis/layers-at.ts";
import { bandDepths, temperatureAt } from "../../server/analysis/temperature-at.ts";
import { temperaturePoints } from "../../server/analysis/temperature-points.ts";
import { profileAt, type WaterProfile } from "../../server/analysis/water-profile.ts";
import { READING_AGES } from "../../server/model/readings.ts";
import { readTrip } from "../model/read-trip.ts";

const FT = 0.3048;
const fahrenheit = (c: number): number => c * 1.8 + 32;

/** The profile of a day's lines at a minute of the boat's clock. */
function profile(lines: string, clock: string): WaterProfile | undefined {
  const trip = readTrip(`${lines}\n`);
  const at = Date.parse(`2031-06-21T${clock}:00-04:00`);
  return profileAt(temperaturePoints(trip), at, READING_AGES, "fresh");
}

/** The temperature there in F; what is wrong where there is none. */
function tempF(lines: string, clock: string, depthFt: number): number | string | undefined {
  const water = profile(lines, clock);
  const at = water === undefined ? undefined : temperatureAt(water, depthFt * FT);
  return at?.kind === "known" ? fahrenheit(at.tempC) : at?.kind;
}

const CAST = "05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F, 70 ft 47 F, 100 ft 43 F";

describe("between readings", () => {
  test.each([
    [0, 61],
    [40, 55.2939],
    [50, 52],
    [60, 49.262],
    [100, 43],
  ])("%d ft as an independent routine has it", (depthFt, wanted) => {
    expect(tempF(CAST, "05:30", depthFt)).toBeCloseTo(wanted, 3);
  });
  test("a probe joins the profile at the depth it shows", () => {
    expect(tempF(`${CAST}\n05:45 probe P1 depth 82 ft temp 45.5 F`, "05:50", 82)).toBeCloseTo(45.5, 6);
  });
  test("a probe without a depth has no say", () => {
    expect(profile(`${CAST}\n05:45 probe P1 temp 50 F`, "05:50")?.nodes).toHaveLength(5);
  });
});

describe("never below the deepest reading, never across a gap", () => {
  test.each([
    [CAST, 101, "known"],
    [CAST, 104, "below-readings"],
    ["05:00 surface temp 61 F\n05:05 probe P1 depth 80 ft temp 45 F", 40, "gap"],
    ["05:05 probe P1 depth 80 ft temp 45 F", 40, "gap"],
    ["05:05 probe P1 depth 80 ft temp 45 F", 80, "known"],
    // Water that is nearly of one kind may be told across.
    ["05:00 surface temp 46 F\n05:05 probe P1 depth 80 ft temp 44 F", 40, "known"],
  ])("%s at %d ft", (lines, depthFt, kind) => {
    const water = profile(lines, "05:30");
    expect(water && temperatureAt(water, depthFt * FT)?.kind).toBe(kind);
  });
  test("nothing in reach, nothing known", () => {
    expect(profile(CAST, "03:30")).toBeUndefined();
    expect(profile(CAST, "09:30")).toBeUndefined();
    expect(profile("05:10 set P1 out 60 ft", "05:30")).toBeUndefined();
  });
});

describe("readings of one depth", () => {
  test("are weighted by age: the nearer one counts for more", () => {
    const day = "05:00 probe P1 depth 60 ft temp 50 F\n06:00 probe P1 depth 60 ft temp 51 F";
    const [early, late] = [tempF(day, "05:10", 60), tempF(day, "05:50", 60)];
    expect(early).toBeGreaterThan(50);
    expect(early).toBeLessThan(50.5);
    expect(late).toBeGreaterThan(50.5);
    expect(late).toBeLessThan(51);
    expect(tempF(day, "05:30", 60)).toBeCloseTo(50.5, 6);
  });

  test("that contradict each other are not averaged: the newer holds, the older is named", () => {
    const day = `${CAST}\n06:30 probe P1 depth 70 ft temp 55 F`;
    const water = profile(day, "06:35");
    expect(tempF(day, "06:35", 70)).toBeCloseTo(55, 6);
    expect(water?.leftOut.map(({ why, point }) => [why, Math.round(point.depthM / FT)])).toEqual([
      ["contradicted", 50],
      ["contradicted", 70],
    ]);
    expect(water?.leftOut[0]?.by?.event.line.verb).toBe("probe");
  });

  test("twice in one profile with two temperatures: neither is used", () => {
    const day = "05:10 profile 0 ft 61 F, 50 ft 52 F, 50 ft 48 F, 60 ft 46 F";
    const water = profile(day, "05:12");
    expect(water?.nodes.map((node) => Math.round(node.depthM / FT))).toEqual([0, 60]);
    expect(water?.leftOut.map(({ why }) => why)).toEqual(["repeated", "repeated"]);
  });

  test("written twice alike are one", () => {
    expect(profile("05:10 profile 0 ft 61 F, 50 ft 52 F, 50 ft 52 F", "05:12")?.nodes).toHaveLength(2);
  });

  test("an upside-down profile is kept as it was read", () => {
    const water = profile("05:10 profile 0 ft 61 F, 30 ft 52 F, 45 ft 58 F, 70 ft 47 F", "05:12");
    expect(water?.nodes).toHaveLength(4);
  });

  test("in spring, colder water lies on 39 F and contradicts nothing", () => {
    const day = "05:10 probe P1 depth 60 ft temp 39 F\n05:30 surface temp 36 F";
    expect(profile(day, "05:35")?.leftOut).toEqual([]);
  });

  test("their order in the file doesn't matter", () => {
    const [a, b] = [CAST, "05:45 probe P1 depth 82 ft temp 45.5 F"];
    expect(tempF(`${b}\n${a}`, "06:00", 75)).toBe(tempF(`${a}\n${b}`, "06:00", 75));
  });
});

test("the range grows with age and with what isn't known of the depth", () => {
  const sd = (clock: string, depthSdM: number): number => {
    const water = profile(CAST, clock);
    const at = water === undefined ? undefined : temperatureAt(water, 60 * FT, depthSdM);
    return at?.kind === "known" ? at.sdC : Number.NaN;
  };
  expect(sd("05:10", 0)).toBeLessThan(sd("07:00", 0));
  expect(sd("05:10", 0)).toBeLessThan(sd("05:10", 2));
});

describe("where a band lies", () => {
  const c = (f: number): number => (f - 32) / 1.8;
  const depthsFt = (lowF: number, highF: number) => {
    const water = profile(CAST, "05:12");
    return (water === undefined ? [] : bandDepths(water, c(lowF), c(highF))).map((one) => [
      Math.round(one.topM / FT),
      Math.round(one.bottomM / FT),
      one.isOpenBelow,
    ]);
  };
  test.each([
    [45, 52, [[50, 81, false]]],
    [42, 50, [[57, 100, true]]],
    [60, 70, [[0, 15, false]]],
    [35, 40, []],
  ])("%d to %d F", (lowF, highF, wanted) => {
    const found = depthsFt(lowF, highF);
    expect(found).toHaveLength(wanted.length);
    wanted.forEach(([top, bottom, isOpen], i) => {
      expect(Math.abs(Number(found[i]?.[0]) - Number(top))).toBeLessThanOrEqual(1);
      expect(Math.abs(Number(found[i]?.[1]) - Number(bottom))).toBeLessThanOrEqual(1);
      expect(found[i]?.[2]).toBe(isOpen);
    });
  });
  test("two stretches where an upside-down profile passes it twice", () => {
    const water = profile("05:10 profile 0 ft 50 F, 20 ft 60 F, 40 ft 50 F, 60 ft 44 F", "05:12");
    expect(water && bandDepths(water, c(49), c(52))).toHaveLength(2);
  });
});

describe("layers", () => {
  const layers = (lines: string) => {
    const water = profile(lines, "05:12");
    return water === undefined ? undefined : layersOf(water, "fresh");
  };
  test("a strong thermocline, and where it cools by 1 C per meter", () => {
    const found = layers("05:10 profile 0 m 20 C, 10 m 19.5 C, 15 m 18 C, 18 m 10 C, 25 m 7 C, 40 m 5 C");
    if (found?.kind !== "layers") throw new Error(found?.kind ?? "nothing");
    expect(found.thermoclineM).toBeGreaterThan(15);
    expect(found.thermoclineM).toBeLessThan(18);
    expect(found.steep).toEqual({ topM: 15, bottomM: 18 });
  });
  test.each([
    ["water of one kind", "05:10 profile 0 ft 42 F, 50 ft 42 F, 100 ft 41 F", { kind: "none" }],
    ["two depths", "05:10 profile 0 ft 61 F, 100 ft 43 F", { kind: "too-few" }],
    [
      "readings too far apart to place it",
      "05:10 profile 0 m 20 C, 10 m 19.8 C, 40 m 5 C",
      { kind: "between", topM: 10, bottomM: 40 },
    ],
    ["no profile", "05:10 surface temp 61 F", undefined],
  ])("none: %s", (_, lines, wanted) => {
    expect(layers(lines)).toEqual(wanted);
  });
});
