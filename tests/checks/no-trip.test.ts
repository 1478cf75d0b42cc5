import { test } from "vitest";
import { checkFindings } from "./check-findings.ts";

test.each([
  `
  05:14 set P9 out 72
        ^^^ no-trip Which trip are these 2 lines from? Write its line above them, like: trip 2031-06-21 "Bright Penny"
  05:15 strike P9
  trip 2031-06-21 "Bright Penny"
  05:15 strike P1
  `,
  `
  boat "Tin Cup"
  2031-04-19 serviced engine-oil engine 1188.0 h
  note
    The book's own notes.
  birds some
  ^^^^^ no-trip Which trip is this birds from? Write the trip's line above it, like: trip 2031-06-21 "Bright Penny"
  `,
])("%s", (source) => {
  checkFindings(source);
});
