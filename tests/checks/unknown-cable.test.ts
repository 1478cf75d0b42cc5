import { describe, test } from "vitest";
import {
  BOOK,
  BOOK_URI,
  checkBookFix,
  checkDay,
  checkDayFix,
  checkFindings,
  checkFix,
} from "./check-findings.ts";

test.each([
  `
  rig A1 downrigger cable riger-wire
                          ^^^^^^^^^^ unknown-cable No cable "riger-wire" in the gear of "Bright Penny". Did you mean rigger-wire?
  rig A2 leadcore cable rigger-wire backing string leader-line thread
                                            ^^^^^^ unknown-cable No cable "string" in the gear of "Bright Penny".
                                                               ^^^^^^ unknown-cable No cable "thread" in the gear of "Bright Penny".
  `,
])("%s", (source) => {
  checkDay(source);
});

test("a cable defined below counts, and one that holds from a later day", () => {
  checkFindings(
    `
    boat "Tin Cup"
    rig A1 downrigger cable wire
    rig A2 downrigger cable braid
    cable wire steel
    2031-08-09 cable braid braid
    `,
  );
});

test("another boat's cable does not count; a book without boats is read for all", () => {
  checkFindings(`
    boat "Tin Cup"
    rig A1 downrigger cable rigger-wire
                            ^^^^^^^^^^^ unknown-cable No cable "rigger-wire" in the gear of "Tin Cup".
  `);
  checkFindings(`
    rig A1 downrigger cable rigger-wire
    rig A2 downrigger cable rope
                            ^^^^ unknown-cable No cable "rope" in the gear books in reach.
  `);
});

describe("fixes", () => {
  test("the nearest name", () => {
    checkDayFix("unknown-cable", "rig A1 downrigger cable riger-wire", "rig A1 downrigger cable rigger-wire");
  });

  test("added to the book, behind the cables", () => {
    const after = BOOK.replace(/^cable rigger.*$/mu, (cable) => `${cable}\ncable new-braid`);
    checkBookFix("unknown-cable", "rig A1 downrigger cable new-braid", after);
  });

  test("added to a book that has only its opener and properties, line ends kept", () => {
    const before =
      'boat "Tin Cup"\r\n  units ft\r\n\r\n  # more\r\n  water fresh\r\n\r\nrig A1 flat cable x-wire';
    const after = before.replace("rig A1 flat cable x-wire", "rig A1 flat cable x-wire\r\ncable x-wire");
    checkFix("unknown-cable", before, after);
    const books = { [BOOK_URI]: 'boat "Bright Penny"\n  units ft\n\n  water fresh\n\n# end\n' };
    checkFix(
      "unknown-cable",
      'trip 2031-06-21 "Bright Penny"\nrig A1 flat cable x-wire',
      'boat "Bright Penny"\n  units ft\n\n  water fresh\ncable x-wire\n\n# end\n',
      { books, uri: BOOK_URI },
    );
  });
});
