/** `deepwake calibrate` on the example season: words, picture, the line that can be pasted, JSON, and what is refused. */
import { join } from "node:path";
import { expect, test } from "vitest";
import { diskFiles } from "../../client/cli/disk.ts";
import { calibrateOutput } from "../../client/cli/output-schemas.ts";
import { run } from "../../client/cli/run.ts";
import type { World } from "../../client/cli/world.ts";
import { parse } from "../../grammar/parse.ts";
import { BOOK, deepwake, GOOD_DAY } from "./fake-world.ts";

const ROOT = join(import.meta.dirname, "../..");
const TRIPS = "examples/bright-penny/trips";

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly written: ReadonlyMap<string, string>;
}

async function calibrate(args: readonly string[], columns?: number): Promise<Ran> {
  const texts = { out: "", err: "" };
  const written = new Map<string, string>();
  const output = (to: "out" | "err"): World["out"] => ({
    isTerminal: columns !== undefined,
    columns,
    write: (text) => {
      texts[to] += text;
    },
  });
  const world: World = {
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    version: "0.0.0",
    today: "2040-01-01",
    out: output("out"),
    err: output("err"),
    files: {
      ...diskFiles(),
      writeText: (path, text) => {
        written.set(path, text);
        return undefined;
      },
    },
    readInput: () => Promise.resolve({ ok: false, why: "nothing comes in" }),
    serve: () => Promise.reject(new Error("nothing is served here")),
  };
  const code = await run(["calibrate", ...args], world);
  return { code, ...texts, written };
}

test("says what the counter and the cable do, what can't be told, and what would settle it", async () => {
  const { code, out, err } = await calibrate([TRIPS]);
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(/^C1 on Bright Penny: 11 readings, 90 to 168 ft, 2031-06-21 to 2031-07-19$/mu);
  expect(out).toMatch(/100 on C1's counter is \d+ ft \(\d+ to \d+\)\./u);
  expect(out).toMatch(
    /C1's cable drags \d+ % more than a smooth cable \(\d+ % (less|more) to \d+ % more\)\./u,
  );
  expect(out).toMatch(/^C1 on Bright Penny, gear of 2031-08-09: 8 readings/mu);
  expect(out).toContain("How the cable drags can't be told yet");
  expect(out).toMatch(/What would tell the most: a probe reading with about 200 ft out on C1/u);
  expect(out).toMatch(/2031-06-21 05:45 +90 ft +2\.6 mph +82 ft +[·│●]{21} +as expected/u);
});

test("prints gear-book lines that read back", async () => {
  const { out } = await calibrate([TRIPS]);
  const lines = out.split("\n").filter((line) => line.includes(" calibrate "));
  expect(lines).toHaveLength(2);
  const { issues } = parse(`boat "Bright Penny"\n${lines.join("\n")}\n`);
  expect(issues.every((issue) => issue === null)).toBe(true);
});

test("fits a narrow terminal; only the line to paste stays whole", async () => {
  const { out } = await calibrate([TRIPS], 40);
  const wide = out.split("\n").filter((line) => line.length > 40);
  expect(wide.every((line) => line.includes(" calibrate "))).toBe(true);
});

test.each([
  [40, /^ {2}2031-06-21 09:23 +98 ft out {2}2\.4 mph\n {4}·+●·*│·+ +89 ft {2}1 ft shallower$/mu],
  [60, /^ {2}2031-06-21 09:54 +128 ft out {2}1\.9 mph\n {4}·{10}│·+●· +124 ft {2}2 ft deeper$/mu],
  [80, /^ {2}2031-06-21 09:23 +98 ft {2}2\.4 mph +89 ft {2}·+●·│·+ {2}1 ft shallower$/mu],
  // Narrower than a strip needs: words only.
  [30, /^ {2}2031-06-21 09:23 {2}98 ft out\n {4}2\.4 mph\n {4}89 ft, 1 ft shallower$/mu],
])("keeps a reading's day, speed and what it is off by at %d columns", async (columns, wanted) => {
  const { out } = await calibrate([TRIPS], columns);
  expect(out).toMatch(wanted);
  for (const when of ["2031-06-21 05:45", "2031-07-19 07:17"]) expect(out).toContain(when);
});

test("gives JSON after its schema", async () => {
  const { code, out } = await calibrate([TRIPS, "--json", "--rig", "C1", "--since", "2031-08-01"]);
  expect(code).toBe(0);
  const { rigs } = calibrateOutput.parse(JSON.parse(out));
  expect(rigs.map((one) => [one.rig, one.gearSince, one.readings.length])).toEqual([["C1", "2031-08-09", 8]]);
});

test("draws the readings against the fit", async () => {
  const { written } = await calibrate([TRIPS, "--svg", "c1.svg"]);
  const svg = written.get(join(ROOT, "c1.svg")) ?? "";
  expect(svg).toMatch(/^<svg [\s\S]*<\/svg>\n$/u);
  expect(svg.split("<circle").length - 1).toBe(19);
  expect(svg).not.toMatch(/NaN|undefined/u);
});

test("never draws over a picture that is there, unless forced", async () => {
  const files = { "c1.svg": "mine", "boat.gear": BOOK, "day.trip": GOOD_DAY };
  const refused = await deepwake("calibrate day.trip --svg c1.svg", { files });
  expect([refused.code, refused.written]).toEqual([2, []]);
  expect(refused.err).toContain("c1.svg is not written: it is there already; --force writes over it");
  const forced = await deepwake("calibrate day.trip --svg c1.svg --force", { files });
  expect([forced.code, forced.written]).toEqual([0, ["c1.svg"]]);
});

test("reads a rig with other capitals as the only one that can be meant", async () => {
  const asked = async (rig: string) => (await calibrate([TRIPS, "--json", "--rig", rig])).out;
  expect(await asked("c1")).toBe(await asked("C1"));
});

test.each([
  [["--rig", "C9"], "there is no rig C9 in the gear books; did you mean C1?"],
  [["--since", "June"], "--since June is no day; write it like 2031-06-01."],
])("refuses %j", async (args, why) => {
  const { code, err } = await calibrate([TRIPS, ...args]);
  expect(code).toBe(2);
  expect(err).toContain(why);
});

test("says so where nothing was read", async () => {
  const { code, out } = await calibrate([`${TRIPS}/2031-04-26.trip`]);
  expect(code).toBe(0);
  expect(out).toMatch(/^No readings to go by/u);
});
