/** `deepwake format`: what is written, what is listed, and what is never touched. */
import { expect, test } from "vitest";
import { formatOutput } from "../../client/cli/output-schemas.ts";
import { type Circumstances, deepwake, GOOD_DAY } from "./fake-world.ts";

const LOOSE = GOOD_DAY.replace("out 90 ft", "OUT 90ft").replace("04:45", "4:45");

async function checkJson(args: string, given: Circumstances) {
  const { out, code } = await deepwake(args, given);
  return { code, ...formatOutput.parse(JSON.parse(out)) };
}

test("writes the canonical form and says which files changed", async () => {
  const done = await deepwake("format", { files: { "a.trip": GOOD_DAY, "b/c.trip": LOOSE } });
  expect(done).toMatchObject({
    code: 0,
    out: "b/c.trip\n1 of 2 files changed.\n",
    err: "",
    written: ["b/c.trip"],
  });
  expect(done.files.get("b/c.trip")).toBe(GOOD_DAY);
});

test("a file without change is not written", async () => {
  const done = await deepwake("format a.trip", { files: { "a.trip": GOOD_DAY } });
  expect(done).toMatchObject({ code: 0, out: "none of 1 file changed.\n", written: [] });
});

test("--check writes nothing and ends with 1 where something would change", async () => {
  const files = { "a.trip": GOOD_DAY, "b.trip": LOOSE };
  expect(await deepwake("format --check", { files })).toMatchObject({
    code: 1,
    out: "b.trip\n1 of 2 files would change.\n",
    written: [],
  });
  expect(await deepwake("format --check a.trip", { files })).toMatchObject({ code: 0 });
});

test("- is a filter", async () => {
  expect(await deepwake("format -", { input: LOOSE })).toMatchObject({ code: 0, out: GOOD_DAY, err: "" });
  expect(await deepwake("format --check -", { input: LOOSE })).toMatchObject({
    code: 1,
    out: "-\n1 of 1 file would change.\n",
  });
});

test("- beside files is refused, since one is printed and the others are written", async () => {
  expect(await deepwake("format - a.trip", { files: { "a.trip": LOOSE } })).toMatchObject({
    code: 2,
    out: "",
    err: "deepwake: - stands alone: standard input is printed, files are changed in place.\n",
    written: [],
  });
});

test("--json", async () => {
  const files = { "a.trip": GOOD_DAY, "b.trip": LOOSE };
  expect(await checkJson("format --json --check", { files })).toMatchObject({
    code: 1,
    files: [
      { path: "a.trip", isChanged: false, isWritten: false },
      { path: "b.trip", isChanged: true, isWritten: false },
    ],
  });
  expect((await checkJson("format --json b.trip", { files })).files).toEqual([
    { path: "b.trip", isChanged: true, isWritten: true },
  ]);
  expect((await checkJson("format --json -", { input: LOOSE })).files[0]?.text).toBe(GOOD_DAY);
});

test.each([
  ["CRLF", LOOSE.replaceAll("\n", "\r\n"), GOOD_DAY.replaceAll("\n", "\r\n")],
  ["CR", LOOSE.replaceAll("\n", "\r"), GOOD_DAY.replaceAll("\n", "\r")],
  ["mixed line ends", "4:45 depart\r\n5:00 return\n# a\r", "04:45 depart\r\n05:00 return\n# a\r"],
  ["a byte order mark", `\ufeff${LOOSE}`, `\ufeff${GOOD_DAY}`],
  ["no final newline", "4:45 depart", "04:45 depart"],
  ["a line with a mistake", "4:45 depart\n05:00   sett C1\n", "04:45 depart\n05:00   sett C1\n"],
  ["any Unicode", '4:45 depart "日本 🎣 e\u0301"', '04:45 depart "日本 🎣 e\u0301"'],
])("keeps %s", async (_, before, after) => {
  const { files } = await deepwake("format a.trip", { files: { "a.trip": before } });
  expect(files.get("a.trip")).toBe(after);
});

test.each([
  ["NUL bytes", "it is not text: line 1 holds a NUL byte", new Uint8Array([0x34, 0x3a, 0])],
  [
    "bytes that are no UTF-8",
    "it is not valid UTF-8 (line 1); save it as UTF-8",
    new Uint8Array([0x34, 0xff]),
  ],
  [
    "a lone surrogate",
    "it is not valid UTF-8 (line 1); save it as UTF-8",
    new Uint8Array([0xed, 0xa0, 0x80]),
  ],
  ["no permission", "reading it is not permitted", { why: "reading it is not permitted" }],
])("leaves a file with %s alone, and formats the rest", async (_, why, held) => {
  const done = await deepwake("format", { files: { "a.trip": held, "b.trip": LOOSE } });
  expect(done).toMatchObject({
    code: 2,
    err: `deepwake: a.trip is left as it is: ${why}\n`,
    written: ["b.trip"],
  });
  expect(done.files.get("a.trip")).toBe(held);
});

test("a file that someone else changes meanwhile is left alone", async () => {
  const given: Circumstances = {
    files: { "a.trip": LOOSE },
    onRead: (path, files) => queueMicrotask(() => files.set(path, "# changed\n")),
  };
  const done = await deepwake("format a.trip", given);
  expect(done).toMatchObject({ code: 2, written: [] });
  expect(done.err).toBe("deepwake: a.trip is left as it is: it was changed by someone else meanwhile\n");
});
