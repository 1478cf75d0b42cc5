/** The trips and the book that are wrong on purpose, against the list kept beside each; and the good ones. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import type { Finding } from "../../server/checks/check.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import type { BookFile } from "../../server/model/gear-lines.ts";

const BOAT = join(import.meta.dirname, "../../examples/bright-penny");
const WRONG = join(BOAT, "wrong");

function read(folder: string, name: string): BookFile {
  return { uri: `file:///${name}`, parse: parse(readFileSync(join(folder, name), "utf8")) };
}

/** A finding as the lists have it: `line  severity  check  message`. */
function listed({ lineIndex, severity, slug, message }: Finding): string {
  return `${lineIndex + 1}  ${severity}  ${slug}  ${message}`;
}

function found(folder: string, name: string, books: readonly BookFile[]): string[] {
  return runChecks(analyzeJournal(read(folder, name), books)).map(listed);
}

function expected(name: string): string[] {
  const text = readFileSync(join(WRONG, `${name.replace(/\.[^.]+$/u, "")}.expected.txt`), "utf8");
  return text.split(/\r?\n/u).filter((line) => line !== "" && !line.startsWith("#"));
}

const isJournal = (name: string): boolean => /\.(?:trip|gear)$/u.test(name);

describe("wrong on purpose", () => {
  test.each(readdirSync(WRONG).filter(isJournal))("%s gives its list and nothing else", (name) => {
    const books = name.endsWith(".gear") ? [] : [read(WRONG, "wrong.gear")];
    expect(found(WRONG, name, books)).toEqual(expected(name));
  });

  test("every list has its file", () => {
    const lists = readdirSync(WRONG).filter((name) => !isJournal(name));
    const files = readdirSync(WRONG).filter(isJournal);
    expect(lists.sort()).toEqual(files.map((name) => name.replace(/\.[^.]+$/u, ".expected.txt")).sort());
  });
});

describe("good days", () => {
  const trips = join(BOAT, "trips");
  test.each(readdirSync(trips).filter(isJournal))("%s gives nothing", (name) => {
    expect(found(trips, name, [read(BOAT, "bright-penny.gear")])).toEqual([]);
  });

  test("nor does the book", () => {
    expect(found(BOAT, "bright-penny.gear", [])).toEqual([]);
  });
});
