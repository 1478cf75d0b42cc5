/** `deepwake summary`: sentences under a heading, and the figures they are made of. */
import { expect, test } from "vitest";
import { summaryOutput } from "../../client/cli/output-schemas.ts";
import { BOOK, deepwake, GOOD_DAY } from "./fake-world.ts";

const files = { "penny.gear": BOOK, "trips/good.trip": GOOD_DAY };

test("piped: a sentence a line", async () => {
  const { out, err, code } = await deepwake("summary trips", { files });
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatchInlineSnapshot(`
    "2031-06-21, Bright Penny (trips/good.trip)
      6 h 35 min: left 04:45, back 11:20.
      9.8 rod-hours fishing, 10 wet, on 2 rigs.
      Landed: chinook 1 kept.
      Bites: 1 landed.
      One landed per 10 rod-hours; one per 2½ to one per 93 would fit as well.
      Speed at the ball 2.5 mph.
      Caught at about 86 ft (chinook, C1, white-fly).
      True depth known for 4 of 4 lines set or moved.
      Landed hour by hour, as it was that day: from 05:00 1 in 1.4 rod-hours, from 06:00 0 in 1.7, from 07:00 0 in 2, from 08:00 0 in 2, from 09:00 0 in 2, from 10:00 0 in 0.7.

    Depths are estimates: not for navigation, not for clearing the bottom. Limits are as you entered them; the agency's current rules decide.
    "
  `);
});

test("on a narrow terminal: wrapped", async () => {
  const { out } = await deepwake("summary trips", { files, columns: 40, env: { NO_COLOR: "1" } });
  expect(out.split("\n").filter((line) => line.length > 40)).toEqual([]);
  expect(out).toMatchInlineSnapshot(`
    "2031-06-21, Bright Penny
      (trips/good.trip)
      6 h 35 min: left 04:45, back 11:20.
      9.8 rod-hours fishing, 10 wet, on
        2 rigs.
      Landed: chinook 1 kept.
      Bites: 1 landed.
      One landed per 10 rod-hours; one per
        2½ to one per 93 would fit as well.
      Speed at the ball 2.5 mph.
      Caught at about 86 ft (chinook, C1,
        white-fly).
      True depth known for 4 of 4 lines set
        or moved.
      Landed hour by hour, as it was that
        day: from 05:00 1 in 1.4 rod-hours,
        from 06:00 0 in 1.7, from 07:00 0 in
        2, from 08:00 0 in 2, from 09:00
        0 in 2, from 10:00 0 in 0.7.

    Depths are estimates: not for
    navigation, not for clearing the bottom.
    Limits are as you entered them; the
    agency's current rules decide.
    "
  `);
});

test("says what the figures leave out, and what they take otherwise than written", async () => {
  const input = `trip 2031-06-21 "Bright Penny"
05:00 set C1 out 90 ft
05:30 wibble C1
12:30 miss C1
1:05 pull all
`;
  const { out } = await deepwake("summary - --stdin-path day.trip", { files, input });
  expect(out).toMatch(/ 8\.1 rod-hours fishing/u);
  expect(out).toContain("1 line of this trip can't be read, or only in part; the figures leave that out.");
  expect(out).toContain(
    "The time of 1 line of this trip is in doubt; the figures take it half a day or a day later, where it fits.",
  );
});

test("--json: SI, clocks on board and instants", async () => {
  const { out, code } = await deepwake("summary --json trips", { files });
  expect(code).toBe(0);
  const [trip] = summaryOutput.parse(JSON.parse(out)).files[0]?.trips ?? [];
  expect(trip).toMatchObject({
    line: 0,
    date: "2031-06-21",
    boat: "Bright Penny",
    depart: "04:45",
    departInstant: "2031-06-21T08:45:00.000Z",
    return: "11:20",
    hours: 395 / 60,
    landed: 1,
    species: [{ species: "chinook", kept: 1, released: 0, unsaid: 0 }],
    caughtAt: [{ line: 8, rig: "C1", species: "chinook", lure: "white-fly" }],
  });
});

test("without a gear book the instants are not known, the clocks are", async () => {
  const { out } = await deepwake("summary --json -", { input: GOOD_DAY });
  const [trip] = summaryOutput.parse(JSON.parse(out)).files[0]?.trips ?? [];
  expect(trip).toMatchObject({ depart: "04:45", departInstant: null });
});

test("a file without a trip, and one that can't be used", async () => {
  const { out, err, code } = await deepwake("summary penny.gear none.trip", { files });
  expect(out).toMatch(/^penny.gear: no trip in it.\n/u);
  expect([code, err]).toEqual([2, "deepwake: none.trip can't be used: there is no such file\n"]);
});

test("a folder is searched for trips only", async () => {
  const { out } = await deepwake("summary --json", { files });
  expect(summaryOutput.parse(JSON.parse(out)).files.map((file) => file.path)).toEqual(["trips/good.trip"]);
});
