import { describe, test } from "vitest";
import { BOOK, BOOK_URI, checkBookFix, checkDay, checkDayFix } from "./check-findings.ts";

test.each([
  "05:14 set P1 flasher none lure glow-spoon slider mini-spoon",
  "06:50 change P1 slider none",
  `
  05:26 change P1 lure glow-spon down 2 min
                       ^^^^^^^^^ unknown-lure No lure "glow-spon" in the gear of "Bright Penny". Did you mean glow-spoon?
  05:27 set P1 flasher "old paddle"
                       ^^^^^^^^^^^^ unknown-lure No lure "old paddle" in the gear of "Bright Penny".
  `,
])("%s", (source) => {
  checkDay(source);
});

test("a boat that lists no lures isn't asked for any", () => {
  checkDay("05:26 change P1 lure glow-spon down 2 min", {
    books: { [BOOK_URI]: BOOK.replaceAll(/^lure.*$/gmu, "") },
  });
});

describe("fixes", () => {
  test("the nearest name", () => {
    checkDayFix("unknown-lure", "05:26 change P1 lure glow-spon", "05:26 change P1 lure glow-spoon");
  });

  test.each([
    ['lure "old paddle"', 'lure "old paddle"'],
    ["flasher old-paddle", "lure old-paddle flasher"],
  ])("%s is added to the book", (used, added) => {
    const after = BOOK.replace(/^lure mini.*$/mu, (lure) => `${lure}\n${added}`);
    checkBookFix("unknown-lure", `05:27 set P1 ${used}`, after);
  });
});
