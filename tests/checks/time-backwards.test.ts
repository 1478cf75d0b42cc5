import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { timeBackwards } from "../../server/checks/time-backwards.ts";
import { applyEdits } from "../harness/apply-edits.ts";
import { checkDay, checkFixOf, fixTitles } from "./check-day.ts";

test.each([
  `
  05:00 depart
  05:10 weather sky clear
  05:10 birds some
  `,
  `
  05:00 depart
  birds some
  05:10 weather sky clear
  `,
  // An approximate time may stand a quarter of an hour from its place.
  `
  05:30 depart
  ~05:20 weather sky clear
  05:40 birds some
  `,
  `
  05:30 depart
  ~05:50 weather sky clear
  05:40 birds some
  `,
  // A dated line is where it says.
  `
  2031-06-20 23:50 depart
  00:10 weather sky clear
  2031-06-22 00:05 birds some
  `,
  "05:44 depart\n05:34 weather sky clear sure",
  `
  05:44 depart
  05:34 weather sky clear
  ^^^^^ time-backwards 05:34 comes before 05:44, the line above.
  05:46 birds some
  `,
  `
  05:44 depart
  ~05:14 weather sky clear
  ^^^^^^ time-backwards 05:14 comes before 05:44, the line above.
  `,
  // The dock's lines too.
  `
  11:20 return
  11:10 box coho 1
  ^^^^^ time-backwards
  `,
  // The one that runs ahead is wrong, not all below it.
  `
  05:10 depart
  07:12 weather sky clear
  ^^^^^ time-backwards 07:12 comes after 05:14, the line below.
  05:14 birds some
  05:16 fleas some
  05:18 weeds some
  `,
  // The later of two that are swapped.
  `
  05:10 depart
  05:20 weather sky clear
  05:15 birds some
  ^^^^^ time-backwards 05:15 comes before 05:20, the line above.
  05:30 fleas some
  `,
  // One message for lines that belong together.
  `
  05:10 depart
  05:20 weather sky clear
  05:30 birds some
  05:40 birds none
  05:12 fleas some
  ^^^^^ time-backwards 05:12 comes before 05:40, the line above, and so does the 1 line after it.
  05:14 fleas none
  05:50 weeds some
  `,
  `
  23:40 depart
  23:50 weather sky clear
  00:10 birds some
  ^^^^^ time-backwards 00:10 comes before 23:50, the line above, and so does the 1 line after it; a time past midnight carries its date.
  00:20 fleas some
  `,
])("%s", (source) => {
  checkDay(source);
});

describe("fixes", () => {
  test("the line goes to its place, with the text of its note; comments stay", () => {
    const before = `
      05:10 depart
      # A remark.
      05:30 birds some
      05:20 note
        Gulls.
      05:40 fleas some
    `;
    const after = `
      05:10 depart
      05:20 note
        Gulls.
      # A remark.
      05:30 birds some
      05:40 fleas some
    `;
    checkFixOf("time-backwards", "opener", before, after, "Move it to its place");
  });

  test("a line that belongs before all others", () => {
    checkFixOf(
      "time-backwards",
      "opener",
      "05:10 depart\n05:00 birds some",
      "05:00 birds some\n05:10 depart",
    );
  });

  test("tomorrow's date on all lines past midnight, or yesterday's above", () => {
    const night = "23:40 depart\n00:10 birds some\n~00:20 fleas some\n";
    const later = "23:40 depart\n2031-06-22 00:10 birds some\n2031-06-22 ~00:20 fleas some\n";
    const sooner = "2031-06-20 23:40 depart\n00:10 birds some\n~00:20 fleas some\n";
    checkFixOf("time-backwards", "opener", night, later);
    checkFixOf("time-backwards", "opener", night, sooner, "2031-06-20");
  });

  test("several at once are one fix, since each would move the others' lines", () => {
    const before = "05:00 depart\n05:30 birds some\n05:10 fleas some\n05:40 birds none\n05:20 fleas none";
    const after = "05:00 depart\n05:10 fleas some\n05:20 fleas none\n05:30 birds some\n05:40 birds none";
    expect(fixTitles("time-backwards", "opener", before)).toEqual([
      "Move it to its place",
      "Move all 2 lines that are out of order to their places",
    ]);
    checkFixOf("time-backwards", "opener", before, after, "Move all 2");
  });
});

describe("a long file with a jump every few lines", () => {
  /** A day of that many lines; every tenth is written after the one it comes before. */
  const day = (count: number): string[] =>
    Array.from({ length: count }, (_, n) => {
      const seconds = 3600 + (n % 10 === 5 ? n - 2.5 : n) * 4;
      const clock = new Date(seconds * 1000).toISOString().slice(11, 19);
      return `${clock} weather "${n}"`;
    });

  /** Reads of lines: by the checks, and by making the fixes of every finding. */
  function readsOf(lines: readonly string[]): { checking: number; fixing: number; fixed: string[] } {
    const text = `trip 2031-06-21 "Bright Penny"\n  zone UTC\n${lines.join("\n")}\n`;
    const read = parse(text);
    let reads = 0;
    const counted = new Proxy(read.journal.lines, {
      get: (target, key, receiver) => {
        if (typeof key === "string" && /^\d+$/u.test(key)) reads++;
        return Reflect.get(target, key, receiver) as unknown;
      },
    });
    const file = { ...read, journal: { ...read.journal, lines: counted } };
    const analysis = analyzeJournal({ uri: "file:///day.trip", parse: file }, []);
    const start = reads;
    const findings = runChecks(analysis, { rules: [timeBackwards] });
    const checking = reads - start;
    const sorted = findings.map((finding) => finding.fixes.find(({ title }) => title.includes("Move all")));
    expect(new Set(sorted).size).toBe(1);
    const fixed = applyEdits(text, sorted[0]?.edits ?? []).split("\n");
    return { checking, fixing: reads - start - checking, fixed };
  }

  test("no fix is made before it is asked for, then one for all, with work that grows with the lines", () => {
    const [short, long] = [readsOf(day(1000)), readsOf(day(2000))];
    expect(long.fixed.slice(2, -1)).toEqual(day(2000).sort());
    // One look at each of the 200 lines told of, whether it says sure.
    expect(long.checking).toBe(200);
    expect(long.fixing).toBeGreaterThan(2000);
    expect(long.fixing / short.fixing).toBeLessThan(2.2);
  });
});
