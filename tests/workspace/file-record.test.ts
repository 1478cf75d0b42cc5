/** The record of a file: its names and the headings of its trips, the same from its text and from its parse. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { fileRecord } from "../../server/workspace/file-record.ts";
import type { FileRecord } from "../../server/workspace/index-view.ts";
import { NameTable } from "../../server/workspace/name-table.ts";
import { RecordReader } from "../../server/workspace/record-reader.ts";
import { makeTrip } from "../bench/make-trip.ts";
import { gearBook } from "../bench/trip-facts.ts";
import { tripText } from "../bench/write-journal.ts";
import { anyText } from "../properties/arbitrary-text.ts";
import { SETTINGS } from "../properties/grammar-settings.ts";

const URI = "file:///season/day.trip";

/** Everything a record says, its lazy parts too. */
function said({ uri, kind, hash, bom, boats, describes, hasLooseGear, trips, places }: FileRecord): object {
  return { uri, kind, hash, bom, boats, describes, hasLooseGear, trips, places };
}

function read(text: string, uri = URI): FileRecord {
  return new RecordReader(new NameTable()).read(uri, text);
}

const DAY = `trip 2031-06-21 "Bright Penny" charter
  harbor "Hollis Point"

04:45 depart
05:14 set C1 out 90 ft lure glow-spoon
06:14 catch C1 chinook 18 lb
07:02 catch C1 whopper
07:30 catch C1 Chinook
13:40 return
trip 2031-06-22 "Bright Penny"
2031-06-22 05:02 depart
`;

describe("headings", () => {
  test("tell a trip's day, boat, port, hours and landed fish", () => {
    expect(read(DAY).trips).toEqual([
      {
        lineIndex: 0,
        date: "2031-06-21",
        boat: "Bright Penny",
        harbor: "Hollis Point",
        departs: "04:45",
        returns: "13:40",
        fish: [
          { species: "chinook", count: 2 },
          { species: "whopper", count: 1 },
        ],
      },
      {
        lineIndex: 9,
        date: "2031-06-22",
        boat: "Bright Penny",
        harbor: null,
        departs: "05:02",
        returns: null,
        fish: [],
      },
    ]);
  });

  test.each([
    ["trip 2031-06-21 A\ntrip 2031-06-22 B\ntrip 2031-06-23 A\n", { boats: ["A", "B"], describes: [] }],
    ["boat A\nrig P1 downrigger\n", { boats: ["A"], describes: ["A"], hasLooseGear: false }],
    ["rig P1 downrigger\nboat A\n", { boats: ["A"], describes: ["A"], hasLooseGear: true }],
    ["\ufeffboat A\n", { bom: true, boats: ["A"] }],
    ["", { boats: [], trips: [], places: [], bom: false }],
  ])("%j", (text, expected) => {
    expect(said(read(text))).toMatchObject(expected);
  });
});

describe("places", () => {
  test("stand where the names stand, whatever the minute", () => {
    const places = read(DAY).places.filter(({ kind }) => kind === "lure" || kind === "rig");
    expect(
      places.map(({ name, role, range }) => [name, role, range.lineIndex, range.start, range.stop]),
    ).toEqual([
      ["C1", "use", 4, 10, 12],
      ["glow-spoon", "use", 4, 28, 38],
      ["C1", "use", 5, 12, 14],
      ["C1", "use", 6, 12, 14],
      ["C1", "use", 7, 12, 14],
    ]);
  });
});

describe("from its text and from its parse", () => {
  const TEXTS = [DAY, gearBook(), ...Array.from({ length: 5 }, (_, n) => tripText(makeTrip(n)))];

  test.each(TEXTS.map((text) => [text.slice(0, 40), text]))("%j is the same", (_, text) => {
    expect(said(read(text))).toEqual(said(fileRecord(URI, parse(text))));
  });

  test("any text is the same, after any others too", () => {
    const reader = new RecordReader(new NameTable());
    fc.assert(
      fc.property(anyText, (text) => {
        expect(said(reader.read(URI, text))).toEqual(said(fileRecord(URI, parse(text))));
      }),
      SETTINGS,
    );
  });

  test.each([
    "24:00 depart\n",
    "23:60 depart\n",
    "05:14: depart\n",
    " 05:14 depart\n",
    "note\n  05:14 depart\n05:14 depart\n  harbor X\n",
    "trip 2031-06-21 A\n  harbor X\n05:14 note\n  harbor Y\n05:15 note\n  harbor Y\n",
    "trip 2031-06-21 A\n05:14 trip 2031-06-21 B\n05:15 trip 2031-06-21 C\r05:16 set\r\n",
  ])("%j is the same", (text) => {
    expect(said(read(`trip 2031-06-20 A\n${text}`))).toEqual(
      said(fileRecord(URI, parse(`trip 2031-06-20 A\n${text}`))),
    );
  });
});

test("lines that were read are not read again, at other minutes and in other files too", () => {
  const reader = new RecordReader(new NameTable());
  reader.read(URI, DAY);
  const before = reader.linesRead;
  reader.read("file:///season/other.trip", DAY.replaceAll("05:14", "06:15"));
  expect(reader.linesRead).toBe(before);
  reader.read("file:///season/other.trip", DAY.replaceAll("90 ft", "95 ft"));
  expect(reader.linesRead).toBe(before + 1);
});

test("equal texts have equal hashes, others others", () => {
  expect(read(DAY).hash).toBe(read(DAY).hash);
  expect(read(DAY).hash).not.toBe(read(`${DAY} `).hash);
  expect(read(DAY).hash).not.toBe(read(`\ufeff${DAY}`).hash);
});
