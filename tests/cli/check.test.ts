/** `deepwake check` for people and for programs. */
import { expect, test } from "vitest";
import { checkOutput, explainOutput } from "../../client/cli/output-schemas.ts";
import { BAD_DAY, BOOK, type Circumstances, deepwake, GOOD_DAY } from "./fake-world.ts";

const files = { "penny.gear": BOOK, "trips/good.trip": GOOD_DAY, "trips/bad.trip": BAD_DAY };

async function checkText(args: string, given: Circumstances = { files }): Promise<string> {
  const { out, err, code } = await deepwake(args, given);
  return `${out}${err === "" ? "" : `errors:\n${err}`}ends with ${code}`;
}

async function checkJson(args: string, given: Circumstances = { files }) {
  const { out, code } = await deepwake(args, given);
  return { code, ...checkOutput.parse(JSON.parse(out)) };
}

test("a folder: place, severity, message, name; related places indented; counts", async () => {
  expect(await checkText("check")).toMatchInlineSnapshot(`
    "trips/bad.trip:5:18  error  Write 72.5 for "72,5": a number has digits and a point, nothing else.  [number-format]
    trips/bad.trip:6:14  error  No rig "D9" in the gear of "Bright Penny".  [unknown-rig]
        penny.gear:1:6  the gear of "Bright Penny"
    trips/bad.trip:7:7  information  1 line assumed pulled at return, 06:00: C1.  [never-pulled]
        trips/bad.trip:5:11  put in here
    trips/good.trip:10:13  information  The speed to go by is 2.5 mph on C1's probe, read at 05:45, 33 min old; past 30 min it is only a guess.  [reading-stale]
        trips/good.trip:7:28  read here
    2 errors, 2 for information in 3 files.
    ends with 1"
  `);
});

test("nothing found", async () => {
  expect(await checkText("check penny.gear")).toBe("1 file checked, nothing found.\nends with 0");
});

test("findings that are no errors end with 0", async () => {
  expect((await deepwake("check trips/good.trip", { files })).code).toBe(0);
});

test("on a terminal lines are wrapped and colored, narrow ones too", async () => {
  expect(
    await checkText("check trips/bad.trip", { files, columns: 60, env: { NO_COLOR: "1" } }),
  ).toMatchInlineSnapshot(`
    "trips/bad.trip:5:18  error  Write 72.5 for "72,5": a number
        has digits and a point, nothing else.  [number-format]
    trips/bad.trip:6:14  error  No rig "D9" in the gear of
        "Bright Penny".  [unknown-rig]
        penny.gear:1:6  the gear of "Bright Penny"
    trips/bad.trip:7:7  information  1 line assumed pulled at
        return, 06:00: C1.  [never-pulled]
        trips/bad.trip:5:11  put in here

    2 errors, 1 for information in 1 file.
    ends with 1"
  `);
});

test.each([
  ["piped", {}, "", false],
  ["a terminal", { columns: 100 }, "", true],
  ["a terminal with NO_COLOR", { columns: 100, env: { NO_COLOR: "1" } }, "", false],
  ["an empty NO_COLOR counts for nothing", { columns: 100, env: { NO_COLOR: "" } }, "", true],
  ["piped with FORCE_COLOR", { env: { FORCE_COLOR: "1" } }, "", true],
  ["FORCE_COLOR=0", { columns: 100, env: { FORCE_COLOR: "0" } }, "", false],
  ["a dumb terminal", { columns: 100, env: { TERM: "dumb" } }, "", false],
  ["--color", { env: { NO_COLOR: "1" } }, " --color", true],
  ["--no-color", { columns: 100 }, " --no-color", false],
])("color: %s", async (_, given, option, isColored) => {
  const { out } = await deepwake(`check trips/bad.trip${option}`, { files, ...given });
  expect(out.includes("\u001b[31merror")).toBe(isColored);
});

test("--json: ranges and severities as in the LSP", async () => {
  const {
    code,
    format,
    version,
    files: entries,
  } = await checkJson("check --json trips/bad.trip trips/good.trip");
  expect([code, format, version]).toEqual([1, "deepwake-check/1", "0.0.0"]);
  expect(entries.map((entry) => entry.path)).toEqual(["trips/bad.trip", "trips/good.trip"]);
  expect(entries[0]?.diagnostics.find((one) => one.code === "number-format")).toEqual({
    code: "number-format",
    severity: "error",
    message: 'Write 72.5 for "72,5": a number has digits and a point, nothing else.',
    range: { start: { line: 4, character: 17 }, end: { line: 4, character: 21 } },
  });
});

test("--json: a file that can't be used has its reason; the others are checked", async () => {
  const given = { files: { ...files, "locked.trip": { why: "reading it is not permitted" } } };
  const { code, files: entries } = await checkJson(
    "check --json locked.trip none.trip trips/bad.trip",
    given,
  );
  expect(code).toBe(2);
  expect(entries.map(({ path, error, diagnostics }) => [path, error, diagnostics.length > 0])).toEqual([
    ["trips/bad.trip", undefined, true],
    ["none.trip", "there is no such file", false],
    ["locked.trip", "reading it is not permitted", false],
  ]);
});

test("standard input stands for a file, and finds its gear book", async () => {
  const given = { files: { "penny.gear": BOOK }, input: BAD_DAY };
  expect(await checkText("check - --stdin-path trips/new.trip", given)).toMatchInlineSnapshot(`
    "trips/new.trip:5:18  error  Write 72.5 for "72,5": a number has digits and a point, nothing else.  [number-format]
    trips/new.trip:6:14  error  No rig "D9" in the gear of "Bright Penny".  [unknown-rig]
        penny.gear:1:6  the gear of "Bright Penny"
    trips/new.trip:7:7  information  1 line assumed pulled at return, 06:00: C1.  [never-pulled]
        trips/new.trip:5:11  put in here
    2 errors, 1 for information in 1 file.
    ends with 1"
  `);
  const alone = await checkJson("check --json -", { input: GOOD_DAY });
  expect(alone.files[0]?.path).toBe("-");
  expect(alone.files[0]?.diagnostics.map((one) => one.code)).toContain("unknown-boat");
});

test("standard input that is no text", async () => {
  expect(await checkText("check -", { input: new Uint8Array([0x74, 0xff]) })).toBe(
    "errors:\ndeepwake: - can't be used: it is not valid UTF-8 (line 1); save it as UTF-8\nends with 2",
  );
});

test("--json and --sarif together are refused", async () => {
  expect(await checkText("check --json --sarif")).toBe(
    "errors:\ndeepwake: --json and --sarif can't both go to the output; give one.\nends with 2",
  );
});

test("--explain says what a check means", async () => {
  expect(await checkText("check --explain touching-bottom")).toMatchInlineSnapshot(`
    "touching-bottom (warning)
    The computed depth of a ball or lure comes within the margin of the bottom, as it goes out or as the bottom comes up.
    Keeps quiet when the line says on-bottom or the trip says method deep and the cable is no longer than 1.5 times the water and 30 ft, no bottom was read within the hour, the boat ran since, a lure may as well run clear, or a line that is out is moved or pulled within 5 minutes of the reading.
    Silenced by the word sure on the line, or "quiet touching-bottom" under the boat in the gear book.
    The editor has a fix for it.
    Wrong:
      05:21 set P1 out 135 ft setback 12 ft lure glow-spoon
    Right:
      05:21 set P1 out 100 ft setback 12 ft lure glow-spoon
    ends with 0"
  `);
  expect(await checkText("check --explain tuoching-bottom")).toBe(
    'errors:\ndeepwake: there is no check "tuoching-bottom"; did you mean touching-bottom? deepwake check names them at the end of each finding.\nends with 2',
  );
  const { out } = await deepwake("check --explain touching-bottom --json");
  expect(explainOutput.parse(JSON.parse(out)).check).toMatchObject({ code: "touching-bottom", hasFix: true });
});

test("--explain offers no way to silence a line that can't be read", async () => {
  expect(await checkText("check --explain unknown-word")).toMatchInlineSnapshot(`
    "unknown-word (error)
    A word is none of those that can stand there.
    The editor has a fix for it.
    Wrong:
      06:50 sonar botom 165 ft
    Right:
      06:50 sonar bottom 165 ft
    ends with 0"
  `);
});

test("--explain shows the line that is missing", async () => {
  const { out } = await deepwake("check --explain reading-missing --json");
  expect(explainOutput.parse(JSON.parse(out)).check).toMatchObject({
    silencedBy: ["sure", "quiet reading-missing"],
    wrong: null,
    right: "05:15 gps speed 2.4 mph",
  });
});
