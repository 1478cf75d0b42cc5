import { describe, test } from "vitest";
import { BOOK, checkBookFix, checkDay, checkDayFix } from "./check-findings.ts";

test.each([
  "05:14 set P1 out 72 ft ball round-12",
  "06:50 change P1 ball none",
  `
  05:14 set P1 out 72 ft ball round-21
                              ^^^^^^^^ unknown-ball No ball "round-21" in the gear of "Bright Penny". Did you mean round-12?
  07:55 broke P1 ball lump
                      ^^^^ unknown-ball No ball "lump" in the gear of "Bright Penny".
  rig A1 downrigger ball lump
                         ^^^^ unknown-ball No ball "lump" in the gear of "Bright Penny".
  `,
])("%s", (source) => {
  checkDay(source);
});

describe("fixes", () => {
  test("the nearest name", () => {
    checkDayFix("unknown-ball", "05:14 set P1 ball round-13", "05:14 set P1 ball round-12");
  });

  test.each([
    ["finned-15", "ball finned-15 15 lb"],
    ["lump", "ball lump 12 lb"],
  ])("%s is added to the book, its weight to be looked at", (name, added) => {
    const after = BOOK.replace(/^ball.*$/mu, (ball) => `${ball}\n${added}`);
    checkBookFix("unknown-ball", `05:14 set P1 ball ${name}`, after);
  });
});
