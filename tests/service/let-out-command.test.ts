/** The let-out table of a trip: its rigs as they are set at the line, at the speed of its minute. */
import { expect, test } from "vitest";
import { MORNING, openService, URI } from "./open-service.ts";

const AT_PROBE = MORNING.split("\n").findIndex((line) => line.includes("probe C1"));
const table = (text: string, line: number): string => openService(text).letOutTable(URI, line) ?? "";

test("columns are the rigs set down to the line, with what is on them", () => {
  const said = table(MORNING, AT_PROBE);
  expect(said).toMatch(
    /^# Cable to set\n\nBright Penny, 2031-06-21, rigged as at 05:45\.\n\n2\.6 mph at C1's probe\.\n/u,
  );
  expect(said).toContain("| depth | C1 | P1 |\n");
  expect(said).toMatch(/^\| 20 ft \| \d+ \| \d+ \|$/mu);
  expect(said).toContain(
    "*Lengths are estimates for a straight tow: not for navigation, not for clearing the bottom.*",
  );
});

test("on the trip's first line none is set yet: all of the book, at the first speed in reach", () => {
  expect(table(MORNING, 0)).toContain("| depth | C1, P1 ball | PB |\n");
});

test("rows end at the bottom", () => {
  const shallow = MORNING.replace("05:45 probe", "05:40 sonar bottom 55 ft\n05:45 probe");
  const depths = [...table(shallow, AT_PROBE + 1).matchAll(/^\| (\d+) ft/gmu)].map(([, depth]) => depth);
  expect(depths).toEqual(["20", "30", "40", "50"]);
});

test("says why there is no table", () => {
  expect(table("# nothing\n", 0)).toContain("There is no trip in this file.");
  expect(table('trip 2031-06-21 "Bright Penny"\n05:00 depart\n', 1)).toContain(
    "No speed is known at this line",
  );
  expect(table('trip 2031-06-21 "Bent Nickel"\n05:00 gps speed 2 mph\n', 1)).toContain(
    "The gear book has no rigs of Bent Nickel.",
  );
  expect(openService(MORNING).letOutTable("file:///elsewhere.trip", 0)).toBeNull();
});
