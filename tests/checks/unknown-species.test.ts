import { describe, test } from "vitest";
import { checkDay, checkDayFix } from "./check-findings.ts";

test.each([
  "06:14 catch P1 chinook kept",
  "06:14 catch P1 King kept",
  "06:33 lost P1 fish",
  "06:33 lost P1 Fish slider",
  "06:14 catch P1 sauger kept",
  "06:14 catch P1 goldeye kept sure",
  "band king 45 to 52 F\nlimit salmon-trout per-angler 5 species king",
  `
  05:28 catch P1 chinok 12 lb kept
                 ^^^^^^ unknown-species "chinok" is no species known here, and no nickname in the gear book. Did you mean chinook?
  `,
  `
  06:14 catch P1 fish kept
                 ^^^^ unknown-species "fish" is no species known here, and no nickname in the gear book.
  `,
  `
  06:33 lost S1 slider
                ^^^^^^ unknown-species lost needs the species, or the word fish, before "slider".
  `,
  `
  06:33 lost S1 "at the net"
                ^^^^^^^^^^^^ unknown-species lost needs the species, or the word fish, before "at the net".
  `,
  `
  06:14 catch P1 kept 12 lb
                 ^^^^ unknown-species catch needs the species before "kept".
  `,
  `
    target lake-trot
           ^^^^^^^^^ unknown-species "lake-trot" is no species known here, and no nickname in the gear book. Did you mean lake-trout?
  11:35 box chinok 1
            ^^^^^^ unknown-species
  nickname old-joe browntrout
                   ^^^^^^^^^^ unknown-species
  nickname hook king-fish
                ^^^^^^^^^ unknown-species
  nickname joe old-joe
               ^^^^^^^ unknown-species
  band goldeye 50 to 60 F
       ^^^^^^^ unknown-species
  limit salmon-trout per-angler 5 species chinok
                                          ^^^^^^ unknown-species
  `,
])("%s", (source) => {
  checkDay(source);
});

describe("fixes", () => {
  test.each([
    ["05:28 catch P1 chinok kept", "05:28 catch P1 chinook kept"],
    ["06:33 lost S1 slider", "06:33 lost S1 fish slider"],
    ["  target coho\n06:14 catch P1 kept", "  target coho\n06:14 catch P1 coho kept"],
  ])("%s → %s", (before, after) => {
    checkDayFix("unknown-species", before, after);
  });
});
