import { describe, expect, test } from "vitest";
import { checkBookFix } from "./check-book-fix.ts";
import { checkDay, fixTitles, messages } from "./check-day.ts";

/** Depths a probe would show on a counter that gives 5 % too little. */
const SHORT = `
05:00 set C1 out 40 ft
05:10 probe C1 depth 36 ft speed 2.0 mph
05:20 move C1 out 80 ft
05:30 probe C1 depth 73 ft speed 2.0 mph
05:40 move C1 out 120 ft
05:50 probe C1 depth 106 ft speed 2.2 mph
06:00 move C1 out 150 ft
06:05 probe C1 depth 131 ft speed 2.2 mph`;

test.each([
  // A counter that tells true.
  `
  05:00 set C1 out 40 ft
  05:10 probe C1 depth 38 ft speed 2.0 mph
  05:20 move C1 out 120 ft
  05:30 probe C1 depth 115 ft speed 2.2 mph
  `,
  // One length only: scale and drag can't be told apart.
  "05:00 set C1 out 90 ft\n05:10 probe C1 depth 80 ft speed 2.0 mph\n05:20 probe C1 depth 80 ft speed 2.0 mph",
  // A calibration that says the same.
  `2031-06-01 calibrate C1 drag 1.5 counter-scale 0.955 counter-offset -1 ft\n${SHORT}`,
  `${SHORT} sure`,
  `
  05:00 set C1 out 40 ft
  05:10 probe C1 depth 36 ft speed 2.0 mph
  05:20 move C1 out 80 ft
  05:30 probe C1 depth 73 ft speed 2.0 mph
  05:40 move C1 out 120 ft
  05:50 probe C1 depth 106 ft speed 2.2 mph
  06:00 move C1 out 150 ft
  06:05 probe C1 depth 131 ft speed 2.2 mph
                 ^^^^^^^^^^^^ counter-drift 100 on C1's counter is about 95 ft (92 to 98) by 4 readings of this trip, 40 to 150 ft out.
  `,
  // Slow touches of the bottom tell it at one length.
  `
  05:00 surface speed 1.2 mph
  05:00 set P1 out 100 ft on-bottom
  05:10 touch P1 out 150 ft bottom 136 ft
  05:12 touch P1 out 150 ft bottom 136 ft
  05:14 touch P1 out 151 ft bottom 137 ft
  05:16 touch P1 out 150 ft bottom 136 ft
              ^^ counter-drift 100 on P1's counter is about 91 ft (88 to 94) by 4 readings of this trip, 150 to 151 ft out.
  `,
])("counter-drift %#", (source) => checkDay(source));

describe("at one length, touches of the bottom tell the counter", () => {
  /** Six touches in 155 ft with 150 on the counter: more than any drag could leave. */
  const touches = (mph: string): string => {
    const minutes = ["10", "12", "14", "16", "18", "20"];
    const lines = minutes.map((minute) => `05:${minute} touch P1 out 150 ft bottom 155 ft`);
    return [`05:00 surface speed ${mph} mph`, "05:00 set P1 out 100 ft on-bottom", ...lines].join("\n");
  };

  test.each([
    ["1.5", true],
    ["2.0", true],
    ["2.1", false],
    ["2.5", false],
  ])("at %s mph: %s", (mph, isTold) => {
    expect(fixTitles("counter-drift", "opener", touches(mph)).length > 0).toBe(isTold);
  });
});

test("two rigs that read the same are each held against their own calibration", () => {
  const touches = ["10", "12", "14", "16"].flatMap((minute) =>
    ["P1", "S1"].map((rig) => `05:${minute} touch ${rig} out 150 ft bottom 136 ft`),
  );
  const calibrated = (unsure: string, sure: string): string =>
    [
      `2031-06-01 calibrate ${unsure} counter-scale 1 counter-scale-error 0.2`,
      `2031-06-01 calibrate ${sure} counter-scale 1 counter-scale-error 0.01`,
      "05:00 surface speed 1.2 mph",
      ...["P1", "S1"].map((rig) => `05:00 set ${rig} out 100 ft on-bottom`),
      ...touches,
    ].join("\n");
  const toldOf = (source: string): string[] =>
    messages("counter-drift", "opener", source).map(
      (message) => /on (\w+)'s counter/u.exec(message)?.[1] ?? "",
    );
  expect(toldOf(calibrated("P1", "S1"))).toEqual(["S1"]);
  expect(toldOf(calibrated("S1", "P1"))).toEqual(["P1"]);
});

test("the book may ask for more", () => {
  checkDay(SHORT, { boat: "threshold counter-drift 0.08" });
});

test("the fix writes the fitted line into the gear book, and then it is quiet", () => {
  expect(fixTitles("counter-drift", "opener", SHORT)).toEqual([
    "Add what the 4 readings of this trip say to the gear book*",
  ]);
  checkBookFix(
    "counter-drift",
    SHORT,
    /^\n2031-06-21 calibrate C1 drag [\d.]+ drag-error [\d.]+ counter-scale 0\.9/u,
  );
});

test("a line of that day is left to the captain", () => {
  const dated = `2031-06-21 calibrate C1 counter-scale 1.1 counter-scale-error 0.01${SHORT}`;
  expect(fixTitles("counter-drift", "opener", dated)).toEqual([]);
});
