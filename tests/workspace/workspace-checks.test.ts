/** What is checked again when something changes: what hangs on it, and nothing else. */
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import type { Turns } from "../../server/workspace/workspace-files.ts";
import { at, bookOf, dayOf, NO_PAUSE, Season } from "./season.ts";

/** Two boats in one folder, a third in a folder of its own, a boat that no book knows. */
const TEXTS: Readonly<Record<string, string>> = {
  "penny.gear": bookOf("Bright Penny"),
  "gull.gear": bookOf("Grey Gull"),
  "a.trip": dayOf("2031-06-21", "Bright Penny"),
  "b.trip": dayOf("2031-06-22", "Bright Penny"),
  "c.trip": dayOf("2031-06-22", "Grey Gull"),
  "both.trip": dayOf("2031-06-23", "Bright Penny") + dayOf("2031-06-23", "Grey Gull"),
  "lost.trip": dayOf("2031-06-24", "Nobody's Boat"),
  "cove/cove.gear": bookOf("Cove Runner"),
  "cove/d.trip": dayOf("2031-06-24", "Cove Runner"),
  "cove/e.trip": dayOf("2031-06-24", "Bright Penny"),
};

async function settled(): Promise<Season> {
  const season = new Season(TEXTS);
  expect(await season.settle()).toEqual(Object.keys(TEXTS).sort());
  expect(await season.settle()).toEqual([]);
  return season;
}

const PENNY = TEXTS["penny.gear"] ?? "";
const PENNYS = ["a.trip", "b.trip", "both.trip", "cove/e.trip", "lost.trip", "penny.gear"];

describe("checked again", () => {
  test.each<[what: string, changes: Record<string, string | null>, again: string[]]>([
    ["a trip: itself", { "a.trip": `${TEXTS["a.trip"]}06:10 note more\n` }, ["a.trip"]],
    ["a trip saved as it was: nothing", { "a.trip": TEXTS["a.trip"] ?? "" }, []],
    ["a book's gear: the trips of its boat", { "penny.gear": PENNY.replace("12 lb", "10 lb") }, PENNYS],
    ["a book's property: the same", { "penny.gear": PENNY.replace("mph", "kn") }, PENNYS],
    ["a remark below the gear: the book alone", { "penny.gear": `${PENNY}# weighed\n` }, ["penny.gear"]],
    [
      "a remark above the gear, which moves it: the same as gear",
      { "penny.gear": `# mine\n${PENNY}` },
      PENNYS,
    ],
    ["a book gone", { "penny.gear": null }, PENNYS.filter((name) => name !== "penny.gear")],
    [
      "a book for the boat that had none",
      { "nobody.gear": bookOf("Nobody's Boat") },
      ["lost.trip", "nobody.gear"],
    ],
    [
      "a book of the inner folder: its own trips",
      { "cove/cove.gear": bookOf("Cove Runner", "S1") },
      ["cove/cove.gear", "cove/d.trip"],
    ],
    [
      "gear above any boat: everything within reach",
      { "cove/loose.gear": "lure glow-spoon spoon 4 in\n" },
      ["cove/cove.gear", "cove/d.trip", "cove/e.trip", "cove/loose.gear"],
    ],
  ])("%s", async (_, changes, again) => {
    const season = await settled();
    const runs = season.checks.runs;
    for (const [name, text] of Object.entries(changes)) {
      if (text === null) season.files.remove(at(name));
      else season.files.put(at(name), text);
    }
    const checked = await season.settle();
    expect(checked).toEqual(again);
    expect(season.checks.runs - runs).toBe(again.length);
  });

  test("severities chosen anew: everything", async () => {
    const season = await settled();
    season.severities = new Map([["unknown-rig", "off"]]);
    expect(await season.settle()).toEqual(Object.keys(TEXTS).sort());
  });

  test("a book edited in the editor counts as it stands there", async () => {
    const season = await settled();
    season.open.set(at("penny.gear"), parse(bookOf("Bright Penny", "P9")));
    expect(await season.settle()).toEqual(PENNYS.filter((name) => name !== "penny.gear"));
    expect(season.found("a.trip")).toContain("unknown-rig");
    season.open.delete(at("penny.gear"));
    await season.settle();
    expect(season.found("a.trip")).not.toContain("unknown-rig");
  });
});

test("a trip that leans on a book finds what the book changed", async () => {
  const season = await settled();
  expect(season.found("a.trip")).toEqual([]);
  season.files.put(at("penny.gear"), bookOf("Bright Penny", "P9"));
  await season.settle();
  expect(season.found("a.trip")).toEqual(["unknown-rig", "unknown-rig"]);
  expect(season.found("c.trip")).toEqual([]);
});

test("books come first, then the latest trips", async () => {
  const season = new Season(TEXTS);
  await season.index.scan(NO_PAUSE);
  season.checks.ask();
  const order: string[] = [];
  await season.checks.run(NO_PAUSE, (uri) => order.push(uri.slice(at("").length)));
  expect(order.slice(0, 3).sort()).toEqual(["cove/cove.gear", "gull.gear", "penny.gear"]);
  expect(order.slice(-1)).toEqual(["a.trip"]);
});

test("open documents are left to whoever edits them", async () => {
  const season = new Season(TEXTS);
  season.open.set(at("a.trip"), parse(TEXTS["a.trip"] ?? ""));
  expect(await season.settle()).not.toContain("a.trip");
});

describe("overtaken", () => {
  /** Pauses at every step, and does something in the one asked for. */
  const disturbed = (step: number, disturb: () => void): Turns => {
    let steps = 0;
    return {
      pause: async () => {
        if (++steps === step) disturb();
      },
    };
  };

  test("a file asked for again while it is checked is checked again, and the first result is dropped", async () => {
    const season = new Season({ "penny.gear": bookOf("Bright Penny"), "a.trip": TEXTS["a.trip"] ?? "" });
    await season.settle();
    season.files.put(at("a.trip"), dayOf("2031-06-21", "Bright Penny", "P7"));
    await season.index.update(at("a.trip"));
    const looked: string[] = [];
    season.checks.ask([at("a.trip")]);
    const turns = disturbed(1, () => {
      season.files.put(at("penny.gear"), bookOf("Bright Penny", "P7"));
      season.checks.ask([at("a.trip")]);
    });
    const runs = season.checks.runs;
    await season.checks.run(turns, (uri) => looked.push(uri));
    expect(season.checks.runs - runs).toBe(2);
    expect(looked).toEqual([at("a.trip")]);
    expect(season.found("a.trip")).toEqual([]);
  });

  test("a text that changed on disk since it was indexed is not checked as if it hadn't", async () => {
    const season = new Season({ "a.trip": TEXTS["a.trip"] ?? "" });
    await season.index.scan(NO_PAUSE);
    season.files.put(at("a.trip"), dayOf("2031-06-21", "Bright Penny", "P7"));
    season.checks.ask();
    await season.checks.run(NO_PAUSE, () => undefined);
    expect(season.found("a.trip")).toBeUndefined();
    expect(await season.settle()).toEqual(["a.trip"]);
  });

  test("given up, what waits is dropped, and can be asked for again", async () => {
    const season = new Season(TEXTS);
    const turns = disturbed(16, () => season.checks.giveUp());
    const first = await season.settle(turns);
    expect(first.length).toBeLessThan(Object.keys(TEXTS).length);
    await season.settle();
    expect(season.checks.checked().size).toBe(Object.keys(TEXTS).length);
  });
});

test("one file that can't be checked costs none of the others", async () => {
  const season = new Season(TEXTS);
  const read = season.files.read.bind(season.files);
  season.files.read = (uri) => {
    if (season.index.kept().size === Object.keys(TEXTS).length && uri === at("b.trip"))
      throw new Error("bang");
    return read(uri);
  };
  await season.settle();
  expect(season.failures).toHaveLength(1);
  expect(season.checks.checked().size).toBe(Object.keys(TEXTS).length - 1);
});

test("less than a warning is for who has the file open", async () => {
  const guest = TEXTS["a.trip"]?.replace("out 40 ft", "out 40 ft lure nothing-known") ?? "";
  const season = new Season({ "a.trip": guest, "penny.gear": `${PENNY}lure glow-spoon spoon 4 in\n` });
  await season.settle();
  expect(season.found("a.trip")).toEqual([]);
  season.severities = new Map([["unknown-lure", "warning"]]);
  await season.settle();
  expect(season.found("a.trip")).toEqual(["unknown-lure"]);
});
