import { expect, test } from "vitest";
import { bitesOf, lureOfBite } from "../../server/analysis/bites.ts";
import { buildTimeline } from "../../server/model/build-timeline.ts";
import { readTrip } from "../model/read-trip.ts";

const SET = "05:00 set P1 out 60 ft lure a slider b\n05:00 set S1 out 50 ft lure c\n";

/** Bites as `P1 landed coho kept on a`: rig, end, fish, fate, lure; what isn't known is left out. */
test.each<[string, string, string[]]>([
  [
    "a strike and its catch are one bite",
    "06:00 strike P1\n06:10 catch P1 coho kept",
    ["P1 landed coho kept on a"],
  ],
  ["a catch without a strike is one too", "06:10 catch P1 coho", ["P1 landed coho unsaid on a"]],
  ["a loss", "06:00 strike P1\n06:02 lost P1 fish", ["P1 lost on a"]],
  ["a miss", "06:00 strike P1\n06:01 miss P1\n06:10 miss P1", ["P1 missed on a", "P1 missed on a"]],
  ["gear broken off on a fish", "06:00 strike P1\n06:02 broke P1 lure a", ["P1 broke on a"]],
  ["gear lost without a strike is no bite", "06:02 broke P1 lure a", []],
  ["a strike that nothing follows", "06:00 strike P1", ["P1 open on a"]],
  [
    "and one that the next strike follows",
    "06:00 strike P1\n06:30 strike P1",
    ["P1 open on a", "P1 open on a"],
  ],
  [
    "two rods at once",
    "06:00 strike P1\n06:01 strike S1\n06:05 lost S1 coho\n06:10 catch P1 king released",
    ["S1 lost coho on c", "P1 landed chinook released on a"],
  ],
  [
    "the slider's fish",
    "06:00 strike P1 slider\n06:10 catch P1 coho kept",
    ["P1 landed coho kept on b, the slider"],
  ],
  ["the lure that is named", "06:10 catch P1 coho lure d", ["P1 landed coho unsaid on d"]],
  ["a rod nobody saw", "06:10 catch unknown coho kept", ["unknown landed coho kept"]],
  [
    "some time in the trip, on whatever was on then",
    "catch S1 goldeye released",
    ["S1 landed goldeye released"],
  ],
  ["two devices, by their times", "06:10 catch P1 coho kept\n06:00 strike P1", ["P1 landed coho kept on a"]],
])("%s", (_, lines, bites) => {
  const trip = readTrip(SET + lines);
  const timeline = buildTimeline(trip);
  const found = bitesOf(trip, timeline).map((bite) => {
    const lure = lureOfBite(bite, timeline, trip.gear);
    const fate = bite.end === "landed" ? bite.fish?.fate : undefined;
    const words = [
      bite.rig,
      bite.end,
      bite.fish?.species,
      fate,
      lure === undefined ? undefined : `on ${lure}`,
    ];
    return `${words.filter((word) => word !== undefined).join(" ")}${bite.onSlider ? ", the slider" : ""}`;
  });
  expect(found).toEqual(bites);
});

test("a fish's weight and length in SI", () => {
  const trip = readTrip(`${SET}06:10 catch P1 coho 4 lb 8 oz 22 in kept`);
  const [bite] = bitesOf(trip, buildTimeline(trip));
  expect(bite?.fish?.massKg).toBeCloseTo(4.5 * 0.45359237, 12);
  expect(bite?.fish?.lengthM).toBeCloseTo(22 * 0.0254, 12);
});
