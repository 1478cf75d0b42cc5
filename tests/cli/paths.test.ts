/** Which journals the named paths lead to. */
import { expect, test } from "vitest";
import { checkOutput } from "../../client/cli/output-schemas.ts";
import { BOOK, type Circumstances, deepwake, GOOD_DAY } from "./fake-world.ts";

const files = {
  "penny.gear": BOOK,
  "b.trip": GOOD_DAY,
  "a.trip": GOOD_DAY,
  "notes.txt": "no journal",
  "2031/june/day one.trip": GOOD_DAY,
  "2031/july/été.TRIP": GOOD_DAY,
  ".git/c.trip": GOOD_DAY,
  ".cache/c.trip": GOOD_DAY,
  "node_modules/d.trip": GOOD_DAY,
  "empty/readme.md": "",
};

async function checkPaths(
  args: readonly string[],
  expected: readonly string[],
  given: Circumstances = { files },
) {
  const { out } = await deepwake(["check", "--json", ...args], given);
  expect(checkOutput.parse(JSON.parse(out)).files.map((file) => file.path)).toEqual(expected);
}

const EVERYTHING = ["2031/july/été.TRIP", "2031/june/day one.trip", "a.trip", "b.trip", "penny.gear"];

test.each([
  ["the folder one is in", [], EVERYTHING],
  ["the same by name", ["."], EVERYTHING],
  ["a folder below, with a slash or not", ["2031/"], ["2031/july/été.TRIP", "2031/june/day one.trip"]],
  ["from the root", ["/boat/2031/june"], ["/boat/2031/june/day one.trip"]],
  [
    "files in the order named, none twice",
    ["b.trip", "a.trip", "./b.trip", "/boat/a.trip"],
    ["b.trip", "a.trip"],
  ],
  ["a file and its folder", ["b.trip", "."], ["b.trip", ...EVERYTHING.filter((path) => path !== "b.trip")]],
  [
    "a name with blanks and one with accents",
    ["2031/june/day one.trip", "2031/july/été.TRIP"],
    ["2031/june/day one.trip", "2031/july/été.TRIP"],
  ],
  ["a hidden folder that is named", [".git"], [".git/c.trip"]],
  ["a file of another ending that is named", ["notes.txt"], ["notes.txt"]],
  ["after --", ["--", "b.trip"], ["b.trip"]],
])("%s", async (_, args, expected) => checkPaths(args, expected));

test("a folder without journals is an error; the rest goes on", async () => {
  const { err, code, out } = await deepwake("check empty penny.gear", { files });
  expect([code, err]).toEqual([2, "deepwake: empty can't be used: there is no .trip or .gear file in it\n"]);
  expect(out).toContain("1 file checked");
});

test("a progress line on a terminal where there are many files, and none elsewhere", async () => {
  const many = Object.fromEntries(Array.from({ length: 30 }, (_, index) => [`${index}.trip`, "# quiet\n"]));
  const watched = await deepwake("check", { files: many, isWatched: true });
  expect(watched.err).toMatch(/^\rreading 1 of 30\r[\s\S]*\rreading 30 of 30\r +\r$/u);
  expect(watched.out).toBe("30 files checked, nothing found.\n");
  expect((await deepwake("check", { files: many })).err).toBe("");
  expect((await deepwake("check 1.trip", { files: many, isWatched: true })).err).toBe("");
});
