/** The trip's summary on its first line: how figures are rounded and counted. */
import { expect, test } from "vitest";
import type { Hover } from "vscode-languageserver-types";
import { BOOK, openService, URI } from "./open-service.ts";

function summaryOf(lines: string, book = BOOK): string {
  const hover: Hover | null = openService(`trip 2031-06-21 "Bright Penny"\n${lines}`, { book }).hover(URI, {
    line: 0,
    character: 2,
  });
  return hover === null ? "" : (hover.contents as { value: string }).value;
}

test.each([
  ["05:00 set P1\n06:00 catch P1 king kept", "One landed per rod-hour; "],
  ["05:00 set P1\n05:30 catch P1 king kept", "One landed per ½ rod-hour; "],
  ["05:00 set P1\n07:00 catch P1 king kept", "One landed per 2 rod-hours; "],
  ["05:00 set P1\n06:00 pull P1", "Nothing landed in 1 rod-hour; "],
])("%j", (lines, words) => {
  expect(summaryOf(lines)).toContain(words);
});

const JIGS = `${BOOK}rig J1 jig\nrig J2 jig\n`;

test.each([
  ["05:00 set J1 anglers 4\n06:00 pull J1", "4 angler-hours fishing, 4 wet, on 1 rig."],
  ["05:00 set J1 anglers 4\n06:00 pull J1", "Nothing landed in 4 angler-hours; "],
  ["05:00 set J1 anglers 2\n05:30 catch J1 king kept", "One landed per angler-hour; "],
  ["05:00 set J1 anglers 2\n05:30 catch J1 king kept", "from 05:00 1 in 1 angler-hours"],
  [
    "05:00 set P1\n05:00 set J1 anglers 3\n06:00 pull P1\n06:00 pull J1",
    "4 rod-hours fishing (3 of them angler-hours on J1), 4 wet, on 2 rigs.",
  ],
  [
    "05:00 set P1\n05:00 set J1\n05:00 set J2\n06:00 pull all",
    "3 rod-hours fishing (2 of them angler-hours on J1 and J2), 3 wet, on 3 rigs.",
  ],
])("effort by hand is its anglers': %j", (lines, words) => {
  expect(summaryOf(lines, JIGS)).toContain(words);
});

test("hours that come to nothing have no rate", () => {
  expect(summaryOf("05:00 set P1\n05:02 weather sky clear")).not.toContain("Nothing landed");
});

test("Celsius and meters in halves", () => {
  const metric = BOOK.replace("units ft mph F lb in", "units m km/h C kg cm");
  expect(summaryOf("05:00 set P1 out 60 ft\n05:10 probe P1 temp 8.5 C", metric)).toContain(
    "Water at the probe 8.5 C.",
  );
  expect(summaryOf("05:10 probe P1 temp 47.3 F")).toContain("Water at the probe 47 F.");
});
