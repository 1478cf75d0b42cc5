/** Boats, gear and trips found by some of their letters. */
import { expect, test } from "vitest";
import { MOST_SYMBOLS } from "../../server/service/workspace-symbols.ts";
import { openWorkspace, pathOf, type Texts } from "./open-workspace.ts";

const SEASON: Texts = {
  "book.gear": `boat "Bright Penny"
cable rigger-wire steel
ball round-12 12 lb
lure glow-spoon spoon
lure green-spoon spoon
lure "caf\u00e9 fly" fly
rig C1 downrigger
2031-08-09 rig C1 downrigger
spot "Anvil Bank" at 44.1 -86.2
boat Heron
rig C1 downrigger`,
  "trips/june.trip": 'trip 2031-06-21 "Bright Penny"\n  harbor "Hollis Point"\n05:14 set C1 lure glow-spoon',
  "trips/july.trip": 'trip 2031-07-19 "Bright Penny"\n  harbor "Cutter Bay"\ntrip 2031-07-20 Heron',
};

/** The symbols for a query, as `name (container) path:line`, in order. */
function symbolsFor(query: string, texts = SEASON): string[] {
  return openWorkspace(texts, [])
    .workspaceSymbols(query)
    .map(({ name, containerName, location }) => {
      const line = "range" in location ? location.range.start.line : -1;
      return `${name} (${containerName ?? ""}) ${pathOf(location.uri)}:${line}`;
    });
}

test.each([
  // A rig is listed once for each boat, however often it changed.
  ["c1", ["C1 (rig, Bright Penny) book.gear:6", "C1 (rig, Heron) book.gear:10"]],
  // Letters that stand closer together come first.
  [
    "glsp",
    [
      "glow-spoon (lure, Bright Penny) book.gear:3",
      "2031-06-21 Bright Penny, Hollis Point (trip) trips/june.trip:0",
    ],
  ],
  ["spoon", ["glow-spoon (lure, Bright Penny) book.gear:3", "green-spoon (lure, Bright Penny) book.gear:4"]],
  ["cafe", ["caf\u00e9 fly (lure, Bright Penny) book.gear:5"]],
  ["anvil bank", ["Anvil Bank (spot, Bright Penny) book.gear:8"]],
  ["rigger", ["rigger-wire (cable, Bright Penny) book.gear:1"]],
  ["2031-07-19", ["2031-07-19 Bright Penny, Cutter Bay (trip) trips/july.trip:0"]],
  ["hollis", ["2031-06-21 Bright Penny, Hollis Point (trip) trips/june.trip:0"]],
  // A whole match before one with letters between, newer trips before older.
  [
    "penny",
    [
      "Bright Penny (boat) book.gear:0",
      "2031-07-19 Bright Penny, Cutter Bay (trip) trips/july.trip:0",
      "2031-06-21 Bright Penny, Hollis Point (trip) trips/june.trip:0",
    ],
  ],
  ["spoom", []],
])("%s", (query, wanted) => {
  expect(symbolsFor(query)).toEqual(wanted);
});

test("without a letter everything is there, trips the newest first", () => {
  expect(
    symbolsFor("")
      .slice(0, 3)
      .map((line) => line.slice(0, 10)),
  ).toEqual(["2031-07-20", "2031-07-19", "2031-06-21"]);
  expect(symbolsFor("")).toHaveLength(13);
});

test("a trip that says nothing of itself yet", () => {
  expect(symbolsFor("", { "june.trip": "trip" })).toEqual(["trip (trip) june.trip:0"]);
});

test("never more than can be read, and the best of them", () => {
  const lures = Array.from({ length: 1000 }, (_, n) => `lure a-${String(n).padStart(4, "0")}-b spoon`);
  const many = { "book.gear": ["boat Heron", ...lures, "lure ab spoon"].join("\n") };
  expect(symbolsFor("ab", many)).toHaveLength(MOST_SYMBOLS);
  expect(symbolsFor("ab", many)[0]).toBe("ab (lure, Heron) book.gear:1001");
});

test("typed and not saved", () => {
  const service = openWorkspace(SEASON, ["book.gear"]);
  const uri = "file:///season/book.gear";
  service.update(uri, 2, "boat Heron\nrig New1 downrigger");
  expect(service.workspaceSymbols("new1").map(({ name }) => name)).toEqual(["New1"]);
  expect(service.workspaceSymbols("glow")).toEqual([]);
});
