/** `deepwake depth --rig …`: a line nobody set, from the gear book. */
import { describe, expect, test } from "vitest";
import { depthOutput } from "../../client/cli/output-schemas.ts";
import { BOOK, type Circumstances, deepwake } from "./fake-world.ts";

const files = { "penny.gear": BOOK };
const ASK = ["depth", "--rig", "C1", "--out", "90ft", "--speed", "2.5mph"];

async function answer(args: readonly string[], given: Circumstances = { files }) {
  const { out } = await deepwake([...args, "--json"], given);
  const { files: entries, whatIf } = depthOutput.parse(JSON.parse(out));
  return { whatIf, path: entries[0]?.path, line: entries[0]?.lines[0] };
}

test("agrees with the same line in a trip", async () => {
  const trip = `trip 2031-06-21 "Bright Penny"\n05:00 probe C1 speed 2.5 mph temp 48 F\n05:00 set C1 out 90 ft setback 20 ft lure white-fly\n`;
  const { out } = await deepwake("depth --json day.trip", { files: { ...files, "day.trip": trip } });
  const [written] = depthOutput.parse(JSON.parse(out)).files[0]?.lines ?? [];
  const asked = await answer([...ASK, "--setback", "20ft", "--lure", "white-fly", "--temp", "48F"]);
  expect(asked.line).toEqual({ ...written, line: null, time: null, instant: null, trip: null });
  expect(asked.whatIf).toMatchObject({ boat: "Bright Penny", date: null, lure: "white-fly" });
  expect(asked.whatIf?.speedMS).toBeCloseTo(2.5 * 0.44704, 10);
  expect(asked.path).toBe("penny.gear");
});

test("for people", async () => {
  const { out, code, err } = await deepwake(ASK, { files });
  expect([code, err]).toEqual([0, ""]);
  expect(
    out
      .replaceAll(/about \d+ ft down \(\d+ to \d+\), \d+/gu, "about NN ft down (NN to NN), NN")
      .replaceAll(/about \d+ ft/gu, "about N ft"),
  ).toMatchInlineSnapshot(`
    "C1 with 90 ft out at 2.5 mph in water of 50 F (Bright Penny)
    Ball about NN ft down (NN to NN), NN ft back. 90 ft out. The range reaches past that, for the counter may read short.
    No depth for the lure: no lure is stated.
    10 ft more cable: about N ft deeper. 0.2 mph faster: about N ft shallower.
    C1 was never checked against a probe, so the range is wide.
    No rod is clipped to C1's cable: clipping one lifts the ball.
    For the lure's depth give --setback and --lure.
    Depths are estimates: not for navigation, not for clearing the bottom.
    "
  `);
});

test("answers in the units it is asked in", async () => {
  const { out } = await deepwake(["depth", "--rig", "C1", "--out", "45m", "--speed", "4km/h"], { files });
  expect(out).toMatch(/^C1 with 45 m out at 4 km\/h in water of 50 F/u);
  expect(out).toMatch(/Ball about \d+(\.5)? m down/u);
  expect(out).not.toMatch(/ ft| mph/u);
});

test("says what the rod's pull does, and what is taken for granted of other rods", async () => {
  const rod = ["--setback", "20ft", "--lure", "white-fly"];
  const own = await deepwake(["depth", "--rig", "C1", "--out", "150ft", "--speed", "2.8mph", ...rod], {
    files,
  });
  expect(own.out).toMatch(/\nThe rod's pull lifts the ball about \d+ ft\.\n/u);
  const asked = ["depth", "--rig", "C1U", "--out", "150ft", "--above", "20ft", "--speed", "2.8mph", ...rod];
  const stacked = await deepwake(asked, { files });
  expect(stacked.out).toMatch(/^C1U, 20 ft above the ball, with 150 ft out at 2\.8 mph/u);
  expect(stacked.out).toContain(
    "C1U is taken as the only rod on C1's cable: C1's own rod would lift the ball more.",
  );
  const { line, whatIf } = await answer(asked);
  expect([line?.outM, whatIf?.aboveM]).toEqual([expect.closeTo(45.72, 9), expect.closeTo(6.096, 9)]);
});

test("a stacked rod hangs on its rig's cable", async () => {
  const { line } = await answer([
    ...["depth", "--rig", "C1U", "--out", "90ft", "--above", "20ft"],
    ...["--setback", "10ft", "--lure", "white-fly", "--speed", "2.5mph"],
  ]);
  expect(line).toMatchObject({ rig: "C1U", why: null });
  expect(line?.lure?.depthM).toBeLessThan((line?.ball?.depthM ?? 0) - 4);
});

test("units: the book's where none is written, any that are", async () => {
  const [usual] = [await answer(ASK)];
  const bare = await answer(["depth", "--rig", "C1", "--out", "90", "--speed", "2.5"]);
  const metric = await answer(["depth", "--rig", "C1", "--out", "27.432m", "--speed", "4.02336km/h"]);
  expect(bare.line).toEqual(usual?.line);
  expect(metric.line?.ball?.depthM).toBeCloseTo(usual?.line?.ball?.depthM ?? 0, 6);
});

test("the gear is that of the day asked for, else the latest in the book", async () => {
  const book = `${BOOK}2031-08-09 rig C1 downrigger center cable braid-wire ball round-12\ncable braid-wire braid diameter 0.6 mm\n`;
  const given = { files: { "penny.gear": book } };
  const latest = await answer(ASK, given);
  const june = await answer([...ASK, "--date", "2031-06-21"], given);
  expect([latest.whatIf?.date, june.whatIf?.date]).toEqual(["2031-08-09", "2031-06-21"]);
  expect(latest.line?.ball?.depthM).toBeGreaterThan(june.line?.ball?.depthM ?? 0);
});

test("--book names the gear book", async () => {
  const given = { files: { "boats/my penny.gear": BOOK } };
  expect((await answer([...ASK, "--book", "boats/my penny.gear"], given)).path).toBe("boats/my penny.gear");
  expect(await deepwake(ASK, given)).toMatchObject({
    code: 2,
    err: 'deepwake: there is no gear book in this folder or above. Name one, like --book "boats/my penny.gear"\n',
  });
});

describe("refuses", () => {
  const two = { files: { "a.gear": BOOK, "b.gear": BOOK.replace("Bright Penny", "Bent Nickel") } };
  test.each([
    [["--out", "90ft"], "a what-if needs --speed too."],
    [["--speed", "2mph"], "a what-if needs --out too."],
    [["--out", "90ft", "--speed", "2mph", "--temp", "200F"], "--temp: no water has 200 F."],
    [["--out", "90F", "--speed", "2mph"], '--out: "90F" is no length; write one like 90ft.'],
    [["--out", "72,5ft", "--speed", "2mph"], '--out: "72,5ft" is no length; write one like 90ft.'],
    [["--out", "90 to 95 ft", "--speed", "2mph"], '--out: "90 to 95 ft" is no length; write one like 90ft.'],
    [
      ["--out", "90ft", "--speed", "40mph"],
      "--speed: 40 mph is no speed to troll at; it goes from 0 to 6 mph (threshold fastest-troll in the gear book).",
    ],
    [
      ["--out", "90ft", "--speed=-2mph"],
      "--speed: -2 mph is no speed to troll at; it goes from 0 to 6 mph (threshold fastest-troll in the gear book).",
    ],
    [["--out", "90ft", "--speed", "2ft"], '--speed: "2ft" is no speed; write one like 2.5mph.'],
    [
      ["--out", "90ft", "--speed", "2mph", "--temp", "cold"],
      '--temp: "cold" is no temperature; write one like 50F.',
    ],
    [
      ["--out", "90ft", "--speed", "2mph", "--date", "June"],
      '--date: "June" is no day, write it like 2031-06-21.',
    ],
    [
      ["--out", "90ft", "--speed", "2mph", "--date", "2031-02-30"],
      '--date: "2031-02-30" is no day, write it like 2031-06-21.',
    ],
    [
      ["--out", "90ft", "--speed", "2mph", "--boat", "Bright Peny"],
      '--boat: no gear book describes "Bright Peny"; there is "Bright Penny".',
    ],
    [
      ["--out", "90ft", "--speed", "2mph", "--lure", "white-flie"],
      '--lure: there is no lure "white-flie" in the gear of Bright Penny; did you mean white-fly?',
    ],
    [
      ["--out", "90ft", "--speed", "2mph", "--book", "none.gear"],
      "none.gear can't be used: there is no such file",
    ],
  ])("%j", async (options, complaint) => {
    const { code, out, err } = await deepwake(["depth", "--rig", "C1", ...options], { files });
    expect([code, out, err]).toEqual([2, "", `deepwake: ${complaint}\n`]);
  });

  test("a rig that isn't there, a boat that isn't said", async () => {
    const other = ["depth", "--rig", "C9", "--out", "90ft", "--speed", "2mph"];
    expect((await deepwake(other, { files })).err).toBe(
      'deepwake: --rig: there is no rig "C9" in the gear of Bright Penny; did you mean C1?\n',
    );
    const swapped = ["depth", "--rig", "1C", "--out", "90ft", "--speed", "2mph"];
    expect((await deepwake(swapped, { files })).err).toContain("; did you mean C1?");
    expect((await deepwake(ASK, two)).err).toBe(
      'deepwake: which boat? Say --boat and one of "Bright Penny", "Bent Nickel".\n',
    );
    expect((await deepwake([...ASK, "--boat", "Bent Nickel"], two)).code).toBe(0);
  });

  test.each([
    "90ft setback 20ft",
    "90ft lure x",
    "90ft # and more",
    '90ft "remark"',
    "90ft\n06:00 set C1 out 10ft",
    "90ft\r12:00 pull C1",
    "90ft sure",
    "90ft on-bottom",
    "",
    " ",
    "ft",
  ])("a length that says more than a length: %j", async (text) => {
    const { code, out } = await deepwake(["depth", "--rig", "C1", `--out=${text}`, "--speed", "2mph"], {
      files,
    });
    expect([code, out]).toEqual([2, ""]);
  });

  test("a rig that has no ball: the lure's depth, and why there is none of a ball", async () => {
    const asked = ["depth", "--rig", "PB", "--out", "90ft", "--speed", "2mph"];
    const { line } = await answer(asked);
    expect(line).toMatchObject({ ball: null, why: "PB is no downrigger and has no ball" });
    expect(line?.lure?.depthM).toBeGreaterThan(0);
  });
});

test("names are quoted: what stands in them stays a name", async () => {
  const name = 'odd "one" # out 5 ft';
  const quoted = `"${name.replaceAll('"', '""')}"`;
  const book = `${BOOK}rig ${quoted} downrigger port cable rigger-wire ball round-12\nlure ${quoted} spoon\n`;
  const asked = [
    "depth",
    "--rig",
    name,
    "--lure",
    name,
    "--setback",
    "9ft",
    "--out",
    "90ft",
    "--speed",
    "2mph",
  ];
  const { line, whatIf } = await answer(asked, { files: { "penny.gear": book } });
  expect(line?.rig).toBe(name);
  expect(line?.outM).toBeCloseTo(27.432, 9);
  expect(whatIf?.lure).toBe(name);
});
