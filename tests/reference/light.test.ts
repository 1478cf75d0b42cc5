/**
 * Sun and moon against published times. Published columns: the NREL report TP-560-34302, its calculator, and the
 * U.S. Naval Observatory; the twilights were printed by an independent library (astronomy-engine 2.1.19). Refraction
 * makes a sunrise uncertain by a minute, so a minute is the tolerance.
 */
import { describe, expect, test } from "vitest";
import { minutesFromSunrise, moonAt, type SunDay, sunDay as sunOn } from "../../server/analysis/light.ts";
import type { Place } from "../../server/model/gear-types.ts";
import { calendarDay } from "../../server/model/local-time.ts";

const MINUTE_MS = 60_000;

const sunDay = (place: Place, date: string, zone: string): SunDay => sunOn(place, calendarDay(date, zone));

/** Local standard time in seconds of the day. */
function seconds(ms: number | undefined, offsetHours: number): number {
  return (((ms ?? Number.NaN) + offsetHours * 3_600_000) % 86_400_000) / 1000;
}

function clock(text: string): number {
  const [hours = 0, minutes = 0, rest = 0] = text.split(":").map(Number);
  return hours * 3600 + minutes * 60 + rest;
}

const zoneOf = (offsetHours: number): string => `Etc/GMT+${-offsetHours}`;

const ROWS = [
  {
    date: "2003-10-17",
    at: [39.742476, -105.1786],
    offset: -7,
    rise: "06:12:43",
    set: "17:18:51",
    civil: ["05:45:29", "17:46:04"],
    nautical: ["05:14:08", "18:17:22"],
  },
  {
    date: "2015-08-02",
    at: [39.742476, -105.1786],
    offset: -7,
    rise: "05:00:27",
    set: "19:12:51",
    civil: ["04:30:22", "19:42:52"],
    nautical: ["03:53:23", "20:19:42"],
  },
  {
    date: "2000-01-01",
    at: [40, -80],
    offset: -5,
    rise: "07:41:51",
    set: "17:05:04",
    civil: ["07:11:25", "17:35:29"],
    nautical: ["06:37:28", "18:09:26"],
  },
  {
    date: "2015-01-02",
    at: [39, -105],
    offset: -7,
    rise: "07:19",
    set: "16:49",
    civil: ["06:49:11", "17:19:00"],
    nautical: ["06:15:48", "17:52:24"],
  },
  {
    date: "2015-04-02",
    at: [39, -105],
    offset: -7,
    rise: "05:43",
    set: "18:24",
    civil: ["05:16:25", "18:51:26"],
    nautical: ["04:44:38", "19:23:19"],
  },
  {
    date: "2015-08-02",
    at: [39, -105],
    offset: -7,
    rise: "05:01",
    set: "19:10",
    civil: ["04:31:47", "19:40:03"],
    nautical: ["03:55:24", "20:16:17"],
  },
  {
    date: "2015-12-02",
    at: [39, -105],
    offset: -7,
    rise: "07:01",
    set: "16:38",
    civil: ["06:31:06", "17:07:26"],
    nautical: ["05:57:59", "17:40:33"],
  },
] as const;

function dayOf({ date, at, offset }: (typeof ROWS)[number]): SunDay {
  return sunDay({ latitudeDeg: at[0], longitudeDeg: at[1] }, date, zoneOf(offset));
}

describe.each(ROWS)("$date at $at", (row) => {
  const day = dayOf(row);
  test.each([
    ["sunrise", day.sunriseMs, row.rise],
    ["sunset", day.sunsetMs, row.set],
    ["civil dawn", day.civilDawnMs, row.civil[0]],
    ["civil dusk", day.civilDuskMs, row.civil[1]],
    ["nautical dawn", day.nauticalDawnMs, row.nautical[0]],
    ["nautical dusk", day.nauticalDuskMs, row.nautical[1]],
  ])("%s", (_, ms, wanted) => {
    expect(Math.abs(seconds(ms, row.offset) - clock(wanted))).toBeLessThan(60);
  });
});

describe("traps", () => {
  test("the sunset is that of the day on board, not of the evening before by Greenwich", () => {
    // The report prints 17:20:19, which is the sunset of 16 October; the calculator 19:13:58, that of 1 August.
    for (const [row, printed] of [
      [ROWS[0], "17:20:19"],
      [ROWS[1], "19:13:58"],
    ] as const) {
      const day = dayOf(row);
      expect(Math.abs(seconds(day.sunsetMs, row.offset) - clock(printed))).toBeGreaterThan(55);
      const localDay = new Date((day.sunsetMs ?? 0) + row.offset * 3_600_000).toISOString().slice(0, 10);
      expect(localDay).toBe(row.date);
    }
  });

  test("every event of a day lies in it, whatever the zone", () => {
    for (const zone of ["America/Detroit", "Asia/Tokyo", "Pacific/Auckland", "Pacific/Honolulu", "UTC"]) {
      for (const longitudeDeg of [-179.9, -86, 0, 139, 179.9]) {
        const day = sunDay({ latitudeDeg: 44.7, longitudeDeg }, "2031-06-21", zone);
        const known = Object.values(day).filter((ms) => ms !== undefined);
        expect(Math.max(...known) - Math.min(...known)).toBeLessThan(86_400_000);
      }
    }
  });

  test("days of 23 and 25 hours", () => {
    for (const date of ["2031-03-09", "2031-11-02"]) {
      const day = sunDay({ latitudeDeg: 44.7, longitudeDeg: -86.3 }, date, "America/Detroit");
      expect(day.sunriseMs).toBeDefined();
      expect(day.sunsetMs).toBeDefined();
    }
  });

  test("no sunrise where the sun stays up, or down", () => {
    for (const date of ["2031-06-21", "2031-12-21"]) {
      const day = sunDay({ latitudeDeg: 78, longitudeDeg: 15 }, date, "UTC");
      expect(day.sunriseMs).toBeUndefined();
      expect(minutesFromSunrise(day, Date.parse(`${date}T06:00Z`))).toBeUndefined();
    }
  });
});

/** Quarters printed by astronomy-engine 2.1.19; the phase is told in eighths, so a fiftieth will do. */
describe("moon", () => {
  const place = { latitudeDeg: 44.7, longitudeDeg: -86.3 };
  test.each([
    ["2024-01-04T03:31Z", 0.75],
    ["2024-01-11T11:58Z", 0],
    ["2024-01-18T03:53Z", 0.25],
    ["2024-01-25T17:55Z", 0.5],
    ["2026-07-14T09:44Z", 0],
    ["2026-07-21T11:06Z", 0.25],
    ["2026-07-29T14:36Z", 0.5],
  ])("%s", (at, phase) => {
    const found = moonAt(place, Date.parse(at)).phase;
    expect(Math.abs(((found - phase + 1.5) % 1) - 0.5)).toBeLessThan(0.02);
  });

  test("is above the horizon some of the day and below it the rest", () => {
    const heights = Array.from(
      { length: 25 },
      (_, hour) => moonAt(place, Date.parse("2031-06-21T00:00Z") + hour * 60 * MINUTE_MS).altitudeDeg,
    );
    expect(Math.max(...heights)).toBeGreaterThan(0);
    expect(Math.min(...heights)).toBeLessThan(0);
  });
});

test("minutes from sunrise, before and after", () => {
  const day = sunDay({ latitudeDeg: 39, longitudeDeg: -105 }, "2015-04-02", zoneOf(-7));
  expect(minutesFromSunrise(day, (day.sunriseMs ?? 0) + 14 * MINUTE_MS)).toBe(14);
  expect(minutesFromSunrise(day, (day.sunriseMs ?? 0) - 90 * MINUTE_MS)).toBe(-90);
});
