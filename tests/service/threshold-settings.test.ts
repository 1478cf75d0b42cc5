/** Thresholds from an editor's settings: what is taken, what is told, and who goes before whom. */
import { describe, expect, test } from "vitest";
import { THRESHOLDS } from "../../server/model/thresholds.ts";
import { readThresholdSettings } from "../../server/service/threshold-settings.ts";
import { BOOK, openService, URI } from "./open-service.ts";

describe("what is taken", () => {
  test.each([
    ["reading-stale", "45 min", ["45", "min"]],
    ["reading-stale", " 45min ", ["45", "min"]],
    ["touching-bottom", "1 m", ["1", "m"]],
    ["coldest-water", "-1 C", ["-1", "C"]],
    ["no-deeper", 0.2, ["0.2"]],
    ["no-deeper", "0.2", ["0.2"]],
  ])("%s %j", (name, value, words) => {
    expect(readThresholdSettings({ [name]: value })).toEqual({
      chosen: new Map([[name, words]]),
      problems: [],
    });
  });

  test("every default spelled out is no choice", () => {
    const all = Object.values(THRESHOLDS).map(({ name, written }) => [name, written]);
    expect(readThresholdSettings(Object.fromEntries(all))).toEqual({ chosen: new Map(), problems: [] });
  });
});

describe("what can't be used is told", () => {
  const LIKE = 'Write it like "30 min". Until then 30 min holds.';
  test.each([
    [
      "reading-stale",
      "45",
      `The setting deepwake.thresholds.reading-stale is "45", which can't be used. ${LIKE}`,
    ],
    [
      "reading-stale",
      "45 ft",
      `The setting deepwake.thresholds.reading-stale is "45 ft", which can't be used. ${LIKE}`,
    ],
    [
      "reading-stale",
      45,
      `The setting deepwake.thresholds.reading-stale is 45, which can't be used. ${LIKE}`,
    ],
    [
      "reading-stale",
      "-5 min",
      `The setting deepwake.thresholds.reading-stale is "-5 min", which can't be used. ${LIKE}`,
    ],
    [
      "reading-stale",
      null,
      `The setting deepwake.thresholds.reading-stale is null, which can't be used. ${LIKE}`,
    ],
    [
      "reading-stael",
      "45 min",
      'There is no threshold called "reading-stael" to set in deepwake.thresholds. Did you mean reading-stale?',
    ],
    ["x", "45 min", 'There is no threshold called "x" to set in deepwake.thresholds.'],
  ])("%s %j", (name, value, message) => {
    expect(readThresholdSettings({ [name]: value })).toEqual({ chosen: new Map(), problems: [message] });
  });
});

describe("who goes before whom", () => {
  const DAY = `trip 2031-06-21 "Bright Penny"
05:00 probe C1 depth 20 ft speed 2.4 mph
05:45 set C1 out 60 ft
`;
  /** True when the reading of 45 minutes before is called stale. */
  function isStale(inBook: string | undefined, chosen: string | undefined): boolean {
    const line = inBook === undefined ? "" : `  threshold reading-stale ${inBook}\n`;
    const book = BOOK.replace("  units", `${line}  units`);
    const thresholds = new Map(chosen === undefined ? [] : [["reading-stale", chosen.split(" ")] as const]);
    const service = openService(DAY, { book, thresholds: () => thresholds });
    return service.diagnostics(URI).some(({ code }) => code === "reading-stale");
  }
  test.each([
    ["the default", undefined, undefined, true],
    ["the setting before the default", undefined, "60 min", false],
    ["the book before the setting", "30 min", "60 min", true],
    ["the book before the setting, the other way", "60 min", "10 min", false],
    ["the setting where the book can't be read", "60 parsecs", "60 min", false],
  ])("%s", (_, inBook, chosen, wanted) => expect(isStale(inBook, chosen)).toBe(wanted));
});
