/** Profiles are made once for a minute, and again only when a reading of theirs changed. */
import { describe, expect, test } from "vitest";
import { parse, reparse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { profileStore } from "../../server/analysis/profile-store.ts";
import { temperaturePoints } from "../../server/analysis/temperature-points.ts";
import { READING_AGES } from "../../server/model/readings.ts";
import { bookFile, readTrip } from "../model/read-trip.ts";
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";

const CAST = "05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F, 70 ft 47 F, 100 ft 43 F";
const at = (clock: string): number => Date.parse(`2031-06-21T${clock}:00-04:00`);

function storeOf(lines: string, trip = readTrip(`${lines}\n`)) {
  return { trip, store: profileStore(trip, temperaturePoints(trip), READING_AGES) };
}

describe("one day's readings", () => {
  test("give the same profile for the same minute, and another for another", () => {
    const { store } = storeOf(CAST);
    expect(store.at(at("05:20"))).toBe(store.at(at("05:20")));
    expect(store.at(at("05:30"))).not.toBe(store.at(at("05:20")));
    expect(store.at(at("01:00"))).toBeUndefined();
  });
  test("as they stood before the newest of them", () => {
    const { store } = storeOf(`${CAST}\n06:00 probe P1 depth 60 ft temp 50 F`);
    const now = store.at(at("06:10"));
    const before = now && store.before(now);
    expect(now?.nodes).toHaveLength(6);
    expect(before?.nodes).toHaveLength(5);
    expect(before?.timeMs).toBe(at("05:10"));
    expect(before && store.before(before)).toBeUndefined();
  });
  test("a band is looked for once in a profile", () => {
    const { store } = storeOf(CAST);
    const profile = store.at(at("05:20"));
    if (profile === undefined) throw new Error("no profile");
    expect(store.bandIn(profile, 8, 11)).toBe(store.bandIn(profile, 8, 11));
    expect(store.bandIn(profile, 8, 12)).not.toBe(store.bandIn(profile, 8, 11));
  });
});

describe("from one version of a file to the next", () => {
  test("the store is the very same while its readings are", () => {
    const { trip, store } = storeOf(CAST);
    expect(profileStore({ ...trip }, temperaturePoints(trip), READING_AGES)).toBe(store);
  });
  test("another where a reading, an age or the gear is another", () => {
    const { trip, store } = storeOf(CAST);
    const points = temperaturePoints(trip);
    expect(profileStore(trip, points.slice(1), READING_AGES)).not.toBe(store);
    const again = profileStore(trip, points, READING_AGES);
    expect(profileStore(trip, points, { ...READING_AGES, staleAfterMs: 1 })).not.toBe(again);
    const last = profileStore(trip, points, READING_AGES);
    expect(profileStore({ ...trip, gear: { ...trip.gear } }, points, READING_AGES)).not.toBe(last);
  });

  /** The profile of one minute before and after an edit, as the editor reads the file again. */
  function beforeAndAfter(edit: (text: string) => string): unknown[] {
    const book = bookFile(BOOK_URI, BOOK);
    const before = parse(MORNING);
    const after = reparse(before, edit(MORNING));
    return [before, after].map((one) => {
      const [day] = analyzeJournal({ uri: URI, parse: one }, [book]).trips;
      const profile = day?.water.profileAt(at("06:18"));
      if (profile === undefined) throw new Error("no profile");
      return profile;
    });
  }

  test.each([
    ["a note", (text: string) => `${text}06:20 note fog`],
    ["a fish", (text: string) => text.replace("18 lb 35 in", "19 lb 35 in")],
    ["a length of cable", (text: string) => text.replace("out 72 ft", "out 73 ft")],
  ])("typing in %s makes none anew", (_, edit) => {
    const [before, after] = beforeAndAfter(edit);
    expect(after).toBe(before);
  });
  test.each([
    ["a changed reading", (text: string) => text.replace("45.5 F", "45.8 F")],
    ["a new one", (text: string) => `${text}06:20 surface temp 61 F`],
    ["one taken out", (text: string) => text.replace(/05:45 probe.*\n/u, "")],
  ])("%s does", (_, edit) => {
    const [before, after] = beforeAndAfter(edit);
    expect(after).not.toBe(before);
  });
});
