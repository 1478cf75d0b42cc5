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
    // Hooked before its ball was raised out of the way, and fought for a while.
    "05:10 set P1U above 20 ft setback 10 ft lure glow-spoon\n05:40 pull P1\n05:55 catch P1U coho kept",
    "05:10 set P1U above 20 ft setback 10 ft lure glow-spoon\n05:40 strike P1U\n05:41 pull P1\n06:20 catch P1U coho kept",
    // Both come out, the rod last; and go back in, the ball last.
    "05:10 set P1U above 20 ft setback 10 ft lure glow-spoon\n06:00 pull P1\n07:00 pull P1U",
    "05:40 pull all\n06:00 set P1U above 20 ft lure glow-spoon\n06:05 set P1 out 40 ft lure glow-spoon",
    "05:40 pull P1\n06:00 set P1U above 20 ft lure glow-spoon sure",
    // A fish on the ball's own rod leaves the ball where it is.
    "05:40 lost P1 fish\n06:00 set P1U above 20 ft lure glow-spoon",
    // Down for as long as it was in, near enough; after a fish it was out before.
    "05:10 change P1 lure mini-spoon down 12 min",
    "05:30 lost P1 fish\n05:50 again P1\n06:10 change P1 lure mini-spoon down 20 min",
    "05:30 lost P1 fish\n06:10 change P1 lure mini-spoon down 40 min\n06:30 change P1 lure glow-spoon down 25 min",
    "05:10 change P1 lure mini-spoon down 45 min sure",
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
  // A rod stacked on a ball that is up.
  `
  05:10 set P1U above 20 ft setback 10 ft lure glow-spoon
  06:00 pull P1
  06:40 catch P1U coho kept
              ^^^ not-in-water P1U isn't back in the water: nothing has put it back since 06:00. The fish counts all the same.
  `,
  `
  06:00 pull P1
  06:20 set P1U above 20 ft setback 10 ft lure glow-spoon
            ^^^ not-in-water P1U is clipped to the cable of P1, whose ball isn't down: it was pulled at 06:00.
  06:30 again P1U
  `,
  // Down for longer than it was in.
  `
  05:10 change P1 lure mini-spoon down 45 min
                                  ^^^^^^^^^^^ not-in-water Out of the water for 45 min? P1 went in at 05:00, not that long before.
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("a ball's set that can't be read has one message", () => {
  checkDay(`
    05:40 sett P1 out 60 ft
          ^^^^ unknown-word
    05:46 set P1U above 20 ft
    05:50 surface speed 2.4 mph
  `);
});

test("a stacked rod on a ball that was never down", () => {
  checkDay(`
    05:46 set P1U above 20 ft
              ^^^ not-in-water P1U is clipped to the cable of P1, whose ball isn't down: nothing has set it.
    05:50 surface speed 2.4 mph
  `);
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
    ["06:00 pull P1\n06:20 set P1U above 9 ft", "06:00 pull P1\n06:20 again P1\n06:20 set P1U above 9 ft"],
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
