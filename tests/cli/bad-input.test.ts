/** Files that are legal though odd are read; what can't be read is said in one line, and the rest goes on. */
import { expect, test } from "vitest";
import { checkOutput } from "../../client/cli/output-schemas.ts";
import { BOOK, type Circumstances, type Content, deepwake, GOOD_DAY } from "./fake-world.ts";

const VERBS = ["check", "summary", "depth"] as const;

test.each([
  ["CRLF", GOOD_DAY.replaceAll("\n", "\r\n")],
  ["CR", GOOD_DAY.replaceAll("\n", "\r")],
  ["mixed line ends", GOOD_DAY.replace("\n", "\r\n").replace("\n\n", "\r\r")],
  ["a byte order mark", `\ufeff${GOOD_DAY}`],
  ["no final newline", GOOD_DAY.trimEnd()],
])("legal: %s", async (_, text) => {
  const plain = await deepwake("check --json a.trip", { files: { "penny.gear": BOOK, "a.trip": GOOD_DAY } });
  const odd = await deepwake("check --json a.trip", { files: { "penny.gear": BOOK, "a.trip": text } });
  expect([odd.code, odd.out, odd.err]).toEqual([plain.code, plain.out, plain.err]);
});

test.each([
  ["any Unicode", `${GOOD_DAY}# 日本 🎣 ﷽ e\u0301 \u200b\n11:30 note "ünï"\n`],
  ["an empty file", ""],
  ["line ends only", "\r\n\n\r"],
])("legal: %s", async (_, text) => {
  for (const verb of VERBS) {
    const { code, err } = await deepwake(`${verb} a.trip`, { files: { "penny.gear": BOOK, "a.trip": text } });
    expect([verb, code, err]).toEqual([verb, 0, ""]);
  }
});

test.each<[string, Content, string]>([
  ["a NUL byte", new Uint8Array([0x23, 10, 0]), "it is not text: line 2 holds a NUL byte"],
  [
    "bytes that are no UTF-8",
    new Uint8Array([0x23, 10, 0xc3, 0x28]),
    "it is not valid UTF-8 (line 2); save it as UTF-8",
  ],
  [
    "a lone surrogate",
    new Uint8Array([0xed, 0xa0, 0x80]),
    "it is not valid UTF-8 (line 1); save it as UTF-8",
  ],
  ["no permission", { why: "reading it is not permitted" }, "reading it is not permitted"],
])("%s", async (_, held, why) => {
  const files = { "penny.gear": BOOK, "bad.trip": held, "good.trip": GOOD_DAY };
  for (const verb of VERBS) {
    const { code, err, out } = await deepwake(`${verb} bad.trip good.trip`, { files });
    expect([verb, code, err]).toEqual([verb, 2, `deepwake: bad.trip can't be used: ${why}\n`]);
    expect(out, verb).toMatch(/good\.trip|1 file/u);
  }
});

test("a gear book that can't be read is said once, whatever leans on it", async () => {
  const files = {
    "penny.gear": { why: "reading it is not permitted" },
    "t/a.trip": GOOD_DAY,
    "t/b.trip": GOOD_DAY,
  };
  for (const verb of VERBS) {
    const { code, err } = await deepwake(`${verb} t`, { files });
    expect([verb, code, err]).toEqual([
      verb,
      2,
      "deepwake: penny.gear can't be used: reading it is not permitted\n",
    ]);
  }
  const both = await deepwake("check", { files });
  expect(both.err).toBe("deepwake: penny.gear can't be used: reading it is not permitted\n");
});

test("a missing gear book is a finding, not a failure", async () => {
  const { code, err, out } = await deepwake("check a.trip", { files: { "a.trip": GOOD_DAY } });
  expect([code, err]).toEqual([1, ""]);
  expect(out).toContain("[unknown-boat]");
});

test("a file that disappears between being found and being read", async () => {
  const given: Circumstances = {
    files: { "penny.gear": BOOK, "a.trip": GOOD_DAY, "b.trip": GOOD_DAY },
    onRead: (path, files) => {
      if (path.endsWith("a.trip")) files.delete("/boat/b.trip");
    },
  };
  const { code, err, out } = await deepwake("check", given);
  expect([code, err]).toEqual([2, "deepwake: b.trip can't be used: there is no such file\n"]);
  expect(out).toContain("in 2 files.");
});

/** Codes that a gear book gets. */
async function codesOf(book: string): Promise<string[]> {
  const { out } = await deepwake("check --json penny.gear", { files: { "penny.gear": book } });
  return checkOutput.parse(JSON.parse(out)).files[0]?.diagnostics.map((one) => one.code) ?? [];
}

test("a boat defined twice, a rig stacked on itself", async () => {
  expect(await codesOf(BOOK)).toEqual([]);
  expect(await codesOf(`${BOOK}boat "Bright Penny"\n  units m\n`)).toContain("duplicate-definition");
  expect(await codesOf(`${BOOK}rig C2 stacked C2\n`)).toContain("stacked-in-a-ring");
  const files = { "penny.gear": `${BOOK}rig C2 stacked C2\n`, "a.trip": GOOD_DAY.replaceAll("C1", "C2") };
  expect(await deepwake("depth a.trip", { files })).toMatchObject({ code: 0, err: "" });
});

test("what would steer a terminal is spelled out", async () => {
  const { out } = await deepwake("check a.trip", { files: { "a.trip": "\u001b[2Jclear the screen\n" } });
  expect(out).toContain('"\\u{1b}[2Jclear"');
  expect(out).not.toContain("\u001b");
});
