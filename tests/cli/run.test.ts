/** Verbs, options, help: what is asked for, and what is said of what can't be. */
import { describe, expect, test } from "vitest";
import { VERBS } from "../../client/cli/verbs.ts";
import { BOOK, deepwake, GOOD_DAY } from "./fake-world.ts";

const files = { "penny.gear": BOOK, "day.trip": GOOD_DAY };

/** Runs and compares the one line of complaint; nothing may be printed. */
async function checkRefusal(args: string, complaint: string): Promise<void> {
  expect(await deepwake(args, { files })).toMatchObject({
    code: 2,
    out: "",
    err: `deepwake: ${complaint}\n`,
  });
}

test.each([
  ["chekc day.trip", 'there is no verb "chekc"; did you mean check? See deepwake --help'],
  ["fromat", 'there is no verb "fromat"; did you mean format? See deepwake --help'],
  ["sail", 'there is no verb "sail". See deepwake --help'],
  ["__proto__", 'there is no verb "__proto__". See deepwake --help'],
  ["--rig C1 depth", "--rig stands before the verb; the verb comes first. See deepwake --help"],
  ["--json sail", 'there is no verb "sail". See deepwake --help'],
  ["check --jsn", "there is no option --jsn; did you mean --json? See deepwake check --help"],
  ["check --constructor", "there is no option --constructor. See deepwake check --help"],
  ["check --rig C1", "there is no option --rig. See deepwake check --help"],
  ["check --json=yes", "--json takes no value. See deepwake check --help"],
  ["check -x", "there is no option -x. See deepwake check --help"],
  ["depth --rig", "--rig needs a value: --rig RIG. See deepwake depth --help"],
  ["depth --rig --out 90ft", "--rig needs a value: --rig RIG. See deepwake depth --help"],
  ["depth --rig= --out 90ft", "--rig needs a value: --rig RIG. See deepwake depth --help"],
  ["depth --rig C1 --rig S1", "--rig is given twice. See deepwake depth --help"],
  ["help sail", 'there is no verb "sail". See deepwake --help'],
])("%s", checkRefusal);

test.each(["--version", "-V", "--no-color --version"])("%s", async (args) => {
  expect(await deepwake(args)).toMatchObject({ code: 0, out: "0.0.0\n", err: "" });
});

test.each([
  ["--json check .", "check --json ."],
  ["--color check .", "check --color ."],
  ["--no-color --json summary day.trip", "summary --no-color --json day.trip"],
  ["--help check", "check --help"],
  ["--color --help check", "check --help"],
])("%s is %s", async (early, usual) => {
  const world = { files, env: { NO_COLOR: "1" } };
  expect(await deepwake(early, world)).toEqual(await deepwake(usual, world));
});

test.each([
  ["--help", 0],
  ["--no-color --help", 0],
  ["--json", 2],
])("%s without a verb shows the help and ends with %i", async (args, code) => {
  expect(await deepwake(args)).toMatchObject({ code, out: (await deepwake("--help")).out });
});

test("--help lists every verb with an example", async () => {
  const { code, out } = await deepwake("--help");
  expect(code).toBe(0);
  expect(out).toMatchInlineSnapshot(`
    "deepwake: trip journals and gear books, checked, with the true depth of every line.

      check      find mistakes in journals and gear books
      format     write journals and gear books the one canonical way
      summary    each trip in figures: hours, fish, catch per rod-hour
      calibrate  what the readings say of each rig's counter and line
      depth      the true depth of ball and lure on every line
      letout     how much to let out for a depth, rig by rig: the cable to set
      serve      the language server, for any editor that can start one

    Examples:
      deepwake check trips
      deepwake format trips/2031-06-21.trip
      deepwake summary trips/2031-06-21.trip
      deepwake calibrate trips
      deepwake depth trips/2031-06-21.trip
      deepwake letout --speed 2.5mph --rigs C1,P1,PB
      deepwake serve --stdio

    deepwake VERB --help says more, deepwake --version which one this is.
    Exit codes: 0 fine, 1 errors found by check or a --check, 2 arguments or a file could not be used.
    "
  `);
});

test("no verb at all shows the help and is no success", async () => {
  const { code, out } = await deepwake([]);
  expect(code).toBe(2);
  expect(out).toBe((await deepwake("--help")).out);
});

describe.each([...VERBS.keys()])("%s --help", (name) => {
  test("says what it does, its options and examples, however it is asked for", async () => {
    const asked = await deepwake(`${name} --help`);
    expect(asked).toMatchObject({ code: 0, err: "" });
    expect(asked.out).toMatch(
      new RegExp(
        `^deepwake ${name}: [\\s\\S]*\\nOptions:\\n[\\s\\S]*--json[\\s\\S]*\\nExamples:\\n  .*deepwake ${name}`,
        "u",
      ),
    );
    expect((await deepwake(`${name} -h`)).out).toBe(asked.out);
    expect((await deepwake(`help ${name}`)).out).toBe(asked.out);
  });

  test("fits a narrow screen", async () => {
    const { out } = await deepwake(`${name} --help`, { columns: 40 });
    const wide = out.split("\n").filter((line) => line.length > 40);
    expect(wide).toEqual([]);
  });
});

test("every option of every verb says what it does", async () => {
  for (const load of VERBS.values()) {
    const verb = await load();
    expect(verb.examples.length, verb.name).toBeGreaterThan(1);
    for (const [name, row] of Object.entries(verb.options)) expect(row.doc, name).toMatch(/^[A-Z].*\.$/u);
  }
});

test("a bug is one line, and a stack only where it is asked for", async () => {
  const breaks = () => {
    throw new Error("the mast\nfell");
  };
  const plain = await deepwake("check day.trip", { files, onRead: breaks });
  expect(plain.code).toBe(2);
  expect(plain.err).toBe(
    "deepwake: this is a bug in deepwake: the mast\n" +
      "Please report it with the command you gave (DEEPWAKE_DEBUG=1 shows where it happened).\n",
  );
  const debugged = await deepwake("check day.trip", { files, onRead: breaks, env: { DEEPWAKE_DEBUG: "1" } });
  expect(debugged.err).toMatch(
    /^deepwake: this is a bug in deepwake: the mast\nError: the mast\nfell\n {4}at /u,
  );
});
