/** A keystroke in one line of a day leaves the events of the others the very same objects. */
import { expect, test } from "vitest";
import { parse, reparse } from "../../grammar/parse.ts";
import { gearResolver } from "../../server/model/trip.ts";
import { tripsOf } from "../../server/model/trips-of.ts";

const URI = "file:///day.trip";
const BEFORE = 'trip 2031-06-21 "Bright Penny"\n05:00 set C1 out 60 ft\n05:10 drift\n05:20 pull C1\n';

function eventsAfter(edited: string): { kept: boolean[]; instants: (number | undefined)[] } {
  const parsed = parse(BEFORE);
  const [day] = tripsOf(URI, parsed, gearResolver([{ uri: URI, parse: parsed }]));
  const again = reparse(parsed, edited);
  const [next] = tripsOf(URI, again, gearResolver([{ uri: URI, parse: again }]));
  const events = next?.events ?? [];
  return {
    kept: events.map((event) => day?.events.includes(event) === true),
    instants: events.map((event) => event.instant?.utcMs),
  };
}

test("only the line typed into is read again", () => {
  expect(eventsAfter(BEFORE.replace("drift", "drift sure")).kept).toEqual([true, false, true]);
});

test("another day or another place in the file is another event", () => {
  const { kept, instants } = eventsAfter(BEFORE.replace("06-21", "06-22"));
  expect(kept).toEqual([false, false, false]);
  expect(instants[0]).toBe(Date.parse("2031-06-22T05:00Z"));
  expect(eventsAfter(BEFORE.replace("05:10 drift\n", "")).kept).toEqual([true, false]);
});
