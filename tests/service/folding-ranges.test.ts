/** What folds: trips and boats to their last line, notes with their text, runs of remarks. */
import { expect, test } from "vitest";
import { dedent } from "../harness/markers.ts";
import { openService, URI } from "./open-service.ts";

/** Folds as `first-last`, with the kind where there is one. */
function checkFolds(text: string, wanted: string[]): void {
  const folds = openService(dedent(text)).foldingRanges(URI);
  const drawn = folds.map(
    ({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind ? ` ${kind}` : ""}`,
  );
  expect(drawn).toEqual(wanted);
}

test("a trip ends with its last line; remarks above the next one stay with that", () => {
  checkFolds(
    `
    trip 2031-06-21 "Bright Penny"
      anglers 4

    05:00 depart
    # between
    05:10 return

    # The second day.
    # It rained.
    trip 2031-06-22 "Bright Penny"
    05:00 depart

    `,
    ["0-5", "7-8 comment", "9-10"],
  );
});

test("a note folds with its text, blanks within it too", () => {
  checkFolds(
    `
    note
      one

      two

    05:00 depart
    note
    `,
    ["0-3"],
  );
});

test("a boat folds with its gear", () => {
  checkFolds(
    `
    boat "Bright Penny"
      water fresh
    rig C1 downrigger
    `,
    ["0-2"],
  );
});

test("gear lines set off by blank ones fold, at the remark above them", () => {
  checkFolds(
    `
    boat "Bright Penny"
      water fresh

    # Balls, weighed.
    ball round-12 sphere 12 lb
    ball egg-8 sphere 8 lb

    cable wire steel
    line mono mono

    # Two lines
    # of remark.
    rig C1 downrigger
    rig P1 downrigger
    # at its end

    lure alone spoon
    `,
    ["0-16", "3-5", "7-8", "10-11 comment", "12-14"],
  );
});

test("parts of a day fold under their remark, with their notes; without one they don't", () => {
  checkFolds(
    `
    trip 2031-06-21 "Bright Penny"

    # First pass.
    05:00 depart
    05:10 note
      Fog.

      Cold.
    05:20 drift

    05:30 run
    05:40 drift
    `,
    ["0-11", "2-8", "4-7"],
  );
});

test("single lines don't fold", () => {
  checkFolds("trip", []);
  checkFolds("# one\n05:00 depart\n# two", []);
  checkFolds("", []);
});
