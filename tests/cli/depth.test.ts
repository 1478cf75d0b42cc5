/** `deepwake depth TRIP`: every set, move and again line. How deep they are is tests/analysis' business. */
import { expect, test } from "vitest";
import { depthOutput } from "../../client/cli/output-schemas.ts";
import { BOOK, type Circumstances, deepwake, GOOD_DAY } from "./fake-world.ts";

const files = { "penny.gear": BOOK, "trips/good.trip": GOOD_DAY };

/** Digits are left to the solver's tests. */
function shape(out: string): string {
  return out
    .replaceAll(/\d+ (ft|m) \(\d+ to \d+\)/gu, "NN $1 (NN to NN)")
    .replaceAll(/\d+ (ft|m)(?= {2,}NN| behind)/gu, "NN $1");
}

async function depthJson(args: string, given: Circumstances = { files }) {
  const { out, code } = await deepwake(args, given);
  return { code, ...depthOutput.parse(JSON.parse(out)) };
}

test("piped: a table", async () => {
  const { out, err, code } = await deepwake("depth trips/good.trip", { files });
  expect([code, err]).toEqual([0, ""]);
  expect(shape(out)).toMatchInlineSnapshot(`
    "2031-06-21, Bright Penny (trips/good.trip)
    line  time    rig       out  ball down         behind  lure down
       5  05:14   C1      NN ft  NN ft (NN to NN)   NN ft  NN ft (NN to NN)
       6  05:20   PB   5 colors                    NN ft  NN ft (NN to NN)
      10  06:18   C1      NN ft  NN ft (NN to NN)   NN ft  NN ft (NN to NN)
      11  ~06:40  C1     NN ft  NN ft (NN to NN)   NN ft  NN ft (NN to NN)

    Depths are estimates: not for navigation, not for clearing the bottom.
    "
  `);
});

test("a change that alters the depth stands among them, another does not", async () => {
  const trip = `${GOOD_DAY}07:00 change C1 out 120 ft\n07:10 change C1 down 4 min\n`;
  const { out } = await deepwake("depth trips/good.trip", { files: { ...files, "trips/good.trip": trip } });
  expect(out.match(/^ *\d+ +~?[\d:]+ +\S+ +.{8}/gmu)?.at(-1)).toBe("  14  07:00   C1     120 ft  ");
  const { files: found } = await depthJson("depth trips/good.trip --json", {
    files: { ...files, "trips/good.trip": trip },
  });
  expect(found[0]?.lines.map(({ verb }) => verb)).toEqual(["set", "set", "again", "move", "change"]);
});

test("on a narrow terminal: a block a line", async () => {
  const { out } = await deepwake("depth trips/good.trip", { files, columns: 40, env: { NO_COLOR: "1" } });
  expect(out.split("\n").filter((line) => line.length > 40)).toEqual([]);
  expect(shape(out)).toMatchInlineSnapshot(`
    "2031-06-21, Bright Penny
      (trips/good.trip)
    05:14  C1  90 ft out  line 5
      ball NN ft (NN to NN), NN ft behind
      lure NN ft (NN to NN)
    05:20  PB  5 colors out  line 6
      lure NN ft (NN to NN), NN ft behind
    06:18  C1  90 ft out  line 10
      ball NN ft (NN to NN), NN ft behind
      lure NN ft (NN to NN)
    ~06:40  C1  100 ft out  line 11
      ball NN ft (NN to NN), NN ft behind
      lure NN ft (NN to NN)

    Depths are estimates: not for
    navigation, not for clearing the bottom.
    "
  `);
});

test("what the bottom stops has neither range nor distance behind", async () => {
  const input = `trip 2031-06-21 "Bright Penny"
05:00 probe C1 speed 2.4 mph
05:01 sonar bottom 60 ft
05:02 set C1 out 400 ft
`;
  const { out } = await deepwake("depth - --stdin-path day.trip", { files, input });
  expect(out).toMatch(/ 400 ft {2}60 ft, on the bottom +no lure is stated/u);
  const [entry] = (await depthJson("depth --json - --stdin-path day.trip", { files, input })).files;
  expect(entry?.lines[0]?.changes).toBeNull();
});

test("a metric gear book gives meters, and no feet", async () => {
  const metric = BOOK.replace("units ft mph F lb in", "units m km/h C kg cm");
  const { out } = await deepwake("depth trips/good.trip", { files: { ...files, "penny.gear": metric } });
  expect(out).toMatch(/ 27\.5 m {2,}2\d(\.5)? m \(2\d(\.5)? to 2\d(\.5)?\)/u);
  expect(out).not.toMatch(/\bft\b/u);
});

test("--json: every set, move and again line, with lines from 0", async () => {
  const { code, files: entries } = await depthJson("depth --json trips");
  expect(code).toBe(0);
  expect(entries.map((entry) => entry.path)).toEqual(["trips/good.trip"]);
  expect(
    entries[0]?.lines.map(({ line, verb, time, instant, rig }) => [line, verb, time, instant, rig]),
  ).toEqual([
    [4, "set", "05:14", "2031-06-21T09:14:00.000Z", "C1"],
    [5, "set", "05:20", "2031-06-21T09:20:00.000Z", "PB"],
    [9, "again", "06:18", "2031-06-21T10:18:00.000Z", "C1"],
    [10, "move", "06:40", "2031-06-21T10:40:00.000Z", "C1"],
  ]);
  const [first, leadcore] = entries[0]?.lines ?? [];
  expect(first?.why).toBeNull();
  for (const place of [first?.ball, first?.lure]) {
    expect(Object.keys(place ?? {})).toEqual(["depthM", "lowM", "highM", "behindM"]);
    expect(place?.lowM).toBeLessThan(place?.depthM ?? 0);
    expect(place?.highM).toBeGreaterThan(place?.depthM ?? 0);
  }
  expect(leadcore).toMatchObject({ ball: null, why: "PB is no downrigger and has no ball" });
  expect(leadcore?.lure?.depthM).toBeGreaterThan(0);
});

test.each([
  ["a line without a clock", "set C1 out 90 ft", null, null],
  ["an offset on the line", "01:30-05:00 set C1 out 90 ft", "02:30", "2031-06-21T06:30:00.000Z"],
  ["the next day", "2031-06-22 00:20 set C1 out 90 ft", "00:20", "2031-06-22T04:20:00.000Z"],
  ["seconds", "05:14:30 set C1 out 90 ft", "05:14", "2031-06-21T09:14:30.000Z"],
])("time and instant of %s", async (_, line, time, instant) => {
  const given = { files: { "penny.gear": BOOK }, input: `trip 2031-06-21 "Bright Penny"\n${line}\n` };
  const { files: entries } = await depthJson("depth --json - --stdin-path day.trip", given);
  expect(entries[0]?.lines).toMatchObject([{ time, instant }]);
});

test("without a gear book there is a reason on every line, and no instant", async () => {
  const { code, files: entries } = await depthJson("depth --json day.trip", {
    files: { "day.trip": GOOD_DAY },
  });
  expect(code).toBe(0);
  expect(entries[0]?.lines[0]).toMatchObject({
    time: "05:14",
    instant: null,
    ball: null,
    why: "C1 isn't in the gear book",
  });
});

test.each([
  ["depth", "which trip? Name one, or ask --rig RIG --out LENGTH --speed SPEED. See deepwake depth --help"],
  ["depth trips --rig C1", "--rig: trips, a what-if and cases don't go together; ask for one."],
  ["depth trips --case a.json", "--case: trips, a what-if and cases don't go together; ask for one."],
  [
    "depth --case a.json --rig C1 --out 9m",
    "--rig, --out, --case: trips, a what-if and cases don't go together; ask for one.",
  ],
])("%s is refused", async (args, complaint) => {
  expect(await deepwake(args, { files })).toMatchObject({
    code: 2,
    out: "",
    err: `deepwake: ${complaint}\n`,
  });
});

test("a case file is no trip: one line says how it is asked for", async () => {
  const { code, out, err } = await deepwake("depth Cases.JSON", { files: { "Cases.JSON": "{}" } });
  expect([code, out]).toEqual([2, ""]);
  expect(err).toBe(
    "deepwake: Cases.JSON is no trip; towed-line cases are asked for with --case Cases.JSON\n",
  );
});
