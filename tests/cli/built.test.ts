/** The built program as a process: on this Node, and on the one that started npm. */
import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { checkOutput, depthOutput } from "../../client/cli/output-schemas.ts";

const PROJECT = join(import.meta.dirname, "../..");
const BUILT = join(PROJECT, "dist/deepwake.mjs");
const STARTER = process.env.npm_node_execpath;
const BUNDLING_MS = 120_000;

let boat = "";

function run(
  node: string,
  args: readonly string[],
  more: { cwd?: string; input?: string; env?: NodeJS.ProcessEnv } = {},
): SpawnSyncReturns<string> {
  const env = { ...process.env, ...more.env };
  delete env.FORCE_COLOR;
  return spawnSync(node, args, { cwd: more.cwd ?? boat, encoding: "utf8", input: more.input ?? "", env });
}

beforeAll(() => {
  boat = mkdtempSync(join(tmpdir(), "deepwake boat é-"));
  cpSync(join(PROJECT, "examples/bright-penny"), boat, { recursive: true });
  run(process.execPath, [join(PROJECT, "client/cli/from-clone.ts"), "--version"]);
}, BUNDLING_MS);

afterAll(() => rmSync(boat, { recursive: true, force: true }));

const nodes = [
  ["this Node", process.execPath],
  ["the Node that started npm", STARTER],
] as const;

describe.each(nodes)("on %s", (_, node) => {
  const skipped =
    node === undefined ? " (skipped: npm_node_execpath is not set, start the tests with npm or npx)" : "";

  test.skipIf(node === undefined)(`checks, computes and formats${skipped}`, () => {
    const path = node ?? "";
    const check = run(path, [BUILT, "check", "--json", "trips", "wrong/clocks.trip"]);
    expect([check.status, check.stderr]).toEqual([1, ""]);
    const codes = checkOutput.parse(JSON.parse(check.stdout)).files.flatMap((file) => file.diagnostics);
    expect(codes.filter((one) => one.severity === "error").map((one) => one.code)).toEqual([
      "clock-missing",
      "clock-repeated",
    ]);

    const depth = run(path, [BUILT, "depth", "--json", "trips/2031-06-21.trip"]);
    expect(depth.status).toBe(0);
    const { lines = [] } = depthOutput.parse(JSON.parse(depth.stdout)).files[0] ?? {};
    expect(lines[0]).toMatchObject({
      line: 20,
      time: "05:14",
      instant: "2031-06-21T09:14:00.000Z",
      rig: "C1",
      why: null,
    });

    const cases = run(path, [
      BUILT,
      "depth",
      "--json",
      "--case",
      join(PROJECT, "tests/reference/towed-line-cases.json"),
    ]);
    expect(cases.status).toBe(0);
    expect(JSON.parse(cases.stdout)).toHaveLength(44);

    const filter = run(path, [BUILT, "format", "-"], { input: "4:45 depart\r\n" });
    expect([filter.status, filter.stdout]).toEqual([0, "04:45 depart\r\n"]);
  });

  test.skipIf(node === undefined)(
    `writes nothing but the output, and a bad file is one line${skipped}`,
    () => {
      writeFileSync(join(boat, "bad one.trip"), new Uint8Array([0x74, 0]));
      const { status, stdout, stderr } = run(node ?? "", [
        BUILT,
        "check",
        "bad one.trip",
        "none.trip",
        "trips/2031-04-26.trip",
      ]);
      expect(status).toBe(2);
      expect(stdout).toMatch(/^1 file checked, nothing found\.\n$/u);
      expect(stderr).toBe(
        "deepwake: none.trip can't be used: there is no such file\n" +
          "deepwake: bad one.trip can't be used: it is not text: line 1 holds a NUL byte\n",
      );
    },
  );
});

describe("what it reads from the disk", () => {
  const dist = join(PROJECT, "dist");
  const BARE = `trip 2031-06-21 "Bright Penny"\n05:00 set C1 out 60 ft\n05:10 gps speed 2 mph course 310\n05:20 pull C1\n05:30 return\n`;

  /** Runs a copy of the program that has only these of its late files. */
  function runWith(late: readonly string[], args: readonly string[], input = ""): SpawnSyncReturns<string> {
    const folder = mkdtempSync(join(tmpdir(), "deepwake dist-"));
    for (const name of ["deepwake.mjs", "deepwake.cjs", ...late])
      cpSync(join(dist, name), join(folder, name));
    const ran = run(process.execPath, [join(folder, "deepwake.mjs"), ...args], { input });
    rmSync(folder, { recursive: true, force: true });
    return ran;
  }

  test("no check needs sun or moon, and one position needs no distances", () => {
    const whole = runWith(["deepwake-geodesic.cjs"], ["check", "trips"]);
    expect([whole.status, whole.stdout, whole.stderr]).toEqual([0, "5 files checked, nothing found.\n", ""]);
    const bare = runWith([], ["check", "-", "--stdin-path", "trips/day.trip"], BARE);
    expect([bare.status, bare.stderr]).toEqual([0, ""]);
    expect(runWith(["deepwake-depth.cjs"], ["depth", "--json", "trips/2031-06-21.trip"]).status).toBe(0);
  });

  test("the summary of a day with positions needs both, and says so by failing here", () => {
    const [verb, ...late] = ["summary", "geodesic", "light"].map((name) => `deepwake-${name}.cjs`);
    expect(runWith([verb ?? ""], ["summary", "trips"]).status).not.toBe(0);
    expect(runWith([verb ?? "", ...late], ["summary", "trips/2031-06-21.trip"]).stdout).toContain(
      "Sunrise 05:59",
    );
  });

  test("only a line that is not of plain letters needs the parser's library", () => {
    const args = ["check", "-", "--stdin-path", "trips/day.trip"];
    const dashed = BARE.replace("05:20 pull C1", "05:20 pull C1 # off the shelf\n05:21 strike \u2013");
    expect(
      runWith([], args, BARE.replace("05:20", "05:20 ").replace("C1\n05:30", "C1 # \u2013\n05:30")).status,
    ).toBe(0);
    expect(runWith([], args, dashed).status).not.toBe(1);
    expect(runWith(["deepwake-grammar.cjs"], args, dashed).status).toBe(1);
  });
});

test("formatting in place changes the file and nothing else", () => {
  const path = join(boat, "trips/2031-04-26.trip");
  const before = readFileSync(path, "utf8");
  writeFileSync(path, before.replace("05:55 depart", "5:55   DEPART"));
  const { status, stdout } = run(process.execPath, [BUILT, "format", "trips"]);
  expect([status, stdout]).toEqual([0, "trips/2031-04-26.trip\n1 of 5 files changed.\n"]);
  expect(readFileSync(path, "utf8")).toBe(before);
});

test("under npm's script paths are relative to where the user was; in other scripts to where it runs", () => {
  const script = { npm_lifecycle_event: "deepwake", INIT_CWD: boat };
  const clone = join(PROJECT, "client/cli/from-clone.ts");
  const called = run(process.execPath, [clone, "check", "trips"], { cwd: PROJECT, env: script });
  expect([called.status, called.stdout, called.stderr]).toEqual([0, "5 files checked, nothing found.\n", ""]);
  const nested = run(process.execPath, [BUILT, "check", "trips"], {
    env: { npm_lifecycle_event: "test", INIT_CWD: PROJECT },
  });
  expect(nested.stdout).toBe("5 files checked, nothing found.\n");
});

test("a reader that stops early ends it quietly", () => {
  const command = `"${process.execPath}" "${BUILT}" depth --json trips | head -c 10`;
  const { stdout, stderr } = spawnSync("sh", ["-c", command], { cwd: boat, encoding: "utf8" });
  expect([stdout, stderr]).toEqual(['{\n  "forma', ""]);
});
