/** The process's clock must tell the same offsets as the platform's formatter. */
import { tzOffset } from "@date-fns/tz";
import { afterAll, expect, test } from "vitest";
import { processOffset } from "../../server/files/process-offset.ts";

const before = process.env.TZ;
afterAll(() => {
  if (before === undefined) delete process.env.TZ;
  else process.env.TZ = before;
});

const HOUR_MS = 3_600_000;
const ZONES = [
  ...["America/Detroit", "America/Chicago", "America/Toronto", "America/Indiana/Indianapolis"],
  ...[
    "America/Argentina/ComodRivadavia",
    "America/Port-au-Prince",
    "Europe/London",
    "Asia/Kolkata",
    "Australia/Lord_Howe",
  ],
];

test.each(ZONES)("%s, around every change of the clocks of three years", (zone) => {
  const wrong: string[] = [];
  for (let ms = Date.UTC(2029, 0, 1); ms < Date.UTC(2032, 0, 1); ms += 7 * HOUR_MS) {
    const at = new Date(ms);
    if (processOffset(process.env, zone, at) !== tzOffset(zone, at)) wrong.push(at.toISOString());
  }
  expect(wrong).toEqual([]);
});

test.each(["America/Detriot", "UTC", "Nowhere/At_All", "", "Europe/../London", "EST5EDT", "Africa/Abidjan"])(
  "%j is left to the formatter",
  (zone) => expect(processOffset(process.env, zone, new Date(Date.UTC(2031, 5, 21)))).toBeUndefined(),
);

test("zones side by side", () => {
  const at = new Date(Date.UTC(2031, 5, 21));
  expect(
    ["America/Detroit", "America/Chicago", "America/Detroit"].map((zone) =>
      processOffset(process.env, zone, at),
    ),
  ).toEqual([-240, -300, -240]);
});
