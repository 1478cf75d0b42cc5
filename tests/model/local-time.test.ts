import { describe, expect, test } from "vitest";
import { isKnownZone, localClock, offsetText, resolveInstant } from "../../server/model/local-time.ts";

const ZONE = "America/Detroit";

/** An instant as `05:30Z repeated -240,-300`. */
function instant(date: string, clock: string, offset: string | null = null, zone: string | undefined = ZONE) {
  const { utcMs, problem, offsets } = resolveInstant(date, clock, offset, zone);
  const utc = new Date(utcMs).toISOString();
  return `${utc.slice(5, 10)} ${utc.slice(11, 16)}Z ${problem ?? "sure"} ${offsets.join(",")}`;
}

/** Daylight saving ends on 2031-11-02 and starts on 2031-03-09 at two o'clock (IANA time-zone database). */
describe("clock times become instants", () => {
  test.each([
    ["a summer's day", instant("2031-06-21", "05:00"), "06-21 09:00Z sure -240"],
    ["a winter's day", instant("2031-01-21", "05:00"), "01-21 10:00Z sure -300"],
    ["before the hour that comes twice", instant("2031-11-02", "00:59"), "11-02 04:59Z sure -240"],
    ["in it, the first is taken", instant("2031-11-02", "01:00"), "11-02 05:00Z repeated -240,-300"],
    ["to its end", instant("2031-11-02", "01:59"), "11-02 05:59Z repeated -240,-300"],
    ["after it", instant("2031-11-02", "02:00"), "11-02 07:00Z sure -300"],
    ["its first pass", instant("2031-11-02", "01:30", "-04:00"), "11-02 05:30Z sure -240"],
    ["its second pass", instant("2031-11-02", "01:30", "-05:00"), "11-02 06:30Z sure -300"],
    ["before the hour that is missing", instant("2031-03-09", "01:59"), "03-09 06:59Z sure -300"],
    ["in it, as if it had not jumped", instant("2031-03-09", "02:30"), "03-09 07:30Z missing -300,-240"],
    ["after it", instant("2031-03-09", "03:00"), "03-09 07:00Z sure -240"],
    ["with seconds", instant("2031-06-21", "05:00:59"), "06-21 09:00Z sure -240"],
    ["in UTC", instant("2031-06-21", "05:00", "Z"), "06-21 05:00Z sure 0"],
    ["with half an hour", instant("2031-06-21", "05:00", "+05:30"), "06-20 23:30Z sure 330"],
    [
      "in no zone, as if it were UTC",
      instant("2031-06-21", "05:00", null, "Nowhere/At-All"),
      "06-21 05:00Z sure 0",
    ],
  ])("%s", (_, found, expected) => {
    expect(found).toBe(expected);
  });

  test("no zone stated", () => {
    const { utcMs, problem } = resolveInstant("2031-11-02", "01:30", null, undefined);
    expect([utcMs, problem]).toEqual([Date.UTC(2031, 10, 2, 1, 30), null]);
  });

  test("no day of the calendar gives no instant", () => {
    expect(resolveInstant("2031-02-31x", "05:00", null, ZONE).utcMs).toBeNaN();
  });
});

test.each([
  ["America/Detroit", true],
  ["Nowhere/At-All", false],
  ["", false],
])("the zone %j", (zone, isKnown) => {
  expect(isKnownZone(zone)).toBe(isKnown);
});

test.each([
  [-240, "-04:00"],
  [330, "+05:30"],
  [0, "+00:00"],
  [-210, "-03:30"],
])("%d minutes are written %s", (minutes, text) => {
  expect(offsetText(minutes)).toBe(text);
});

test.each([
  ["2031-11-02T05:30Z", "01:30"],
  ["2031-11-02T06:30Z", "01:30"],
  ["2031-11-02T07:00Z", "02:00"],
  ["2031-03-09T06:59Z", "01:59"],
  ["2031-03-09T07:00Z", "03:00"],
  ["2031-06-22T03:59Z", "23:59"],
])("the clock on board at %s", (utc, clock) => {
  expect(localClock(Date.parse(utc), ZONE)).toBe(clock);
});
