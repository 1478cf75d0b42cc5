import { describe, test } from "vitest";
import { checkDay, checkFixOf, checkTrolling } from "./check-day.ts";

describe("quiet", () => {
  test.each([
    "06:00 strike P1\n06:04 catch P1 coho kept\n06:06 again P1\n07:00 pull P1",
    "06:00 lost P1 fish\n06:10 pull all",
    "06:00 miss P1\n06:10 strike P1",
    // Two fish on one rod: main lure and slider.
    "06:00 strike P1 slider\n06:01 strike P1\n06:05 catch P1 coho slider kept\n06:09 catch P1 coho kept",
    // A ball may go down for a reading alone.
    "06:00 pull P1\n06:10 probe P1 temp 48 F\n06:12 touch P1 out 90 ft",
    // Nobody saw which rod it was.
    "06:00 catch unknown coho kept",
    // Without a clock it is some time in the trip.
    "06:00 pull P1\ncatch P1 coho kept",
    "06:00 pull P1\n06:10 strike P1 sure",
    // Approximate times are allowed to be a little off: the lines stand in the order they happened.
    "05:14 set S1 out 50 ft\n~05:12 strike S1\n05:20 lost S1 fish\n05:30 pull P1",
    "05:14 set S1 out 50 ft\n05:16 weather sky clear\n~05:12 strike S1",
    "~05:14 set S1 out 50 ft\n05:12 strike S1",
    // A change puts it back.
    "06:00 lost P1 coho\n06:04 change P1 lure mini-spoon\n06:10 strike P1",
  ])("%j", (source) => {
    checkTrolling(source);
  });
});

test.each([
  `
  05:46 strike S1
               ^^ not-in-water S1 isn't in the water: nothing has set it.
  05:50 catch S1 coho kept
  `,
  `
  06:00 pull P1
  06:10 strike P1
               ^^ not-in-water P1 isn't in the water: it was pulled at 06:00.
  `,
  `
  06:00 pull all
  06:10 catch P1 coho kept
              ^^ not-in-water P1 isn't in the water: it was pulled at 06:00. The fish counts all the same.
  `,
  `
  06:00 pull P1
  06:10 pull P1
             ^^ not-in-water
  `,
  `
  06:00 lost P1 coho
  06:10 strike P1
               ^^ not-in-water P1 isn't back in the water: nothing has put it back since 06:00.
  `,
  `
  06:00 tangle P1 with S1
  06:10 strike P1
               ^^ not-in-water P1 isn't back in the water: nothing has put it back since 06:00.
  `,
  // Written above its set it is not in the water, however approximate.
  `
  ~05:12 strike S1
                ^^ not-in-water S1 isn't in the water: nothing has set it.
  05:14 set S1 out 50 ft
  `,
  // Once until it is put in.
  `
  05:46 move S1 out 50 ft
             ^^ not-in-water
  05:50 move S1 out 60 ft
  05:55 set S1 out 60 ft
  06:00 pull S1
  06:10 strike S1
               ^^ not-in-water
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("a rig the boat doesn't have has one message", () => {
  checkDay(`
    05:46 strike D9
                 ^^ unknown-rig
  `);
});

test("a set that can't be read has one message", () => {
  checkDay(`
    05:40 sett S1 out 60 ft
          ^^^^ unknown-word
    05:46 strike S1
  `);
});

describe("fixes", () => {
  test.each([
    ["05:46 strike S1", "~05:46 set S1\n05:46 strike S1"],
    ["06:00 pull P1\n06:10 strike P1", "06:00 pull P1\n~06:10 again P1\n06:10 strike P1"],
    ["06:00 lost P1 fish\n06:10 strike P1", "06:00 lost P1 fish\n~06:10 again P1\n06:10 strike P1"],
  ])("%j → %j", (before, after) => {
    checkFixOf("not-in-water", "trolling", before, after);
  });
});

test("a time in doubt is said once, not again of every line of its rig", () => {
  checkTrolling(`
    05:30 move P1 out 70 ft
    06:30 pull P1
    ^^^^^ time-backwards
    05:40 strike P1
    05:45 lost P1 fish
    05:50 again P1
  `);
});
