/** What is told from speeds, courses and turns is kept while their lines stay the same, and is as if told anew. */
import { expect, test } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { currentLooks } from "../../server/analysis/current-looks.ts";
import { analyzeJournal, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import { shearAt } from "../../server/analysis/shear-used.ts";
import { tripSpeed } from "../../server/analysis/trip-speed.ts";
import { wayOf } from "../../server/analysis/way-kept.ts";
import { bookFile } from "../model/read-trip.ts";
import { BOOK, BOOK_URI } from "../service/open-service.ts";

/** The water on top sets east and that at the probe west, so northward, eastward and westward the speeds differ. */
const DAY = `trip 2031-06-21 "Bright Penny"
04:50 depart
04:55 profile 0 ft 65 F, 20 ft 64 F, 30 ft 62 F, 35 ft 54 F, 40 ft 47 F, 50 ft 46 F, 120 ft 44 F
04:58 set P1 out 90 ft lure glow-spoon
05:00 surface speed 2.571 mph
05:00 probe P1 depth 80 ft speed 2.532 mph
05:00 gps speed 2.5 mph course 000
05:10 turn right to 090
05:20 surface speed 1.9 mph
05:20 probe P1 depth 80 ft speed 2.9 mph
05:20 gps speed 2.5 mph course 090
05:30 turn left to 270
05:40 probe P1 depth 80 ft speed 2.1 mph
05:50 note "calm"
06:20 surface speed 2.2 mph
`;

const GEAR = bookFile(BOOK_URI, BOOK);

function dayOf(read: Parse, uri = "file:///day.trip"): TripAnalysis {
  const [day] = analyzeJournal({ uri, parse: read }, [GEAR]).trips;
  if (day === undefined) throw new Error("no trip");
  return day;
}

/** All that is told of a day, minute by minute; events by their lines. */
function told({ trip, ages }: TripAnalysis): string {
  const speedAt = tripSpeed(trip, ages);
  const noon = Date.parse("2031-06-21T06:00:00-04:00");
  const minutes = Array.from({ length: 40 }, (_, i) => noon + (i - 20) * 4 * 60_000);
  const all = [currentLooks(trip), minutes.map((ms) => [speedAt(ms), shearAt(trip, ms)])];
  return JSON.stringify(all, (key, value) => (key === "event" || key === "gps" ? value.lineIndex : value));
}

/** The same of a text read for the first time, in a file of its own: what is kept of the other stays. */
const toldAnew = (text: string): string => told(dayOf(parse(text), "file:///anew.trip"));

const edited = (from: string, to: string): string => {
  if (!DAY.includes(from)) throw new Error(`no ${from}`);
  return DAY.replace(from, to);
};

test.each([
  ["a setting", edited("out 90 ft", "out 91 ft")],
  ["a note", edited("calm", "rain")],
  ["a line at the end", `${DAY}06:30 pull P1\n`],
])("%s leaves it", (_, text) => {
  const first = parse(DAY);
  const before = dayOf(first);
  told(before);
  const after = dayOf(reparse(first, text));
  expect(after.trip).not.toBe(before.trip);
  expect(wayOf(after.trip)).toBe(wayOf(before.trip));
  expect(told(after)).toBe(toldAnew(text));
});

test.each([
  ["a speed on top", edited("speed 1.9 mph", "speed 1.8 mph")],
  ["a speed at the probe", edited("speed 2.1 mph", "speed 2.2 mph")],
  ["a course", edited("course 090", "course 100")],
  ["a magnetic course", edited("course 090", "course 090 magnetic")],
  ["a turn taken away", edited("05:30 turn left to 270\n", "")],
  ["a run in its place", edited("turn left to 270", "run")],
  ["a clock", edited("05:40 probe", "05:44 probe")],
  ["a slip of the clock", edited("05:40 probe", "17:40 probe")],
  ["a reading that speaks against another", edited("05:50 note", "05:40 probe P1 speed 4 mph\n05:50 note")],
  ["a move that explains it", edited("05:50 note", "05:40 move P1 out 60 ft\n05:50 note")],
  ["a line above all", `# a line more\n${DAY}`],
  ["the date", edited("2031-06-21", "2031-06-22")],
  ["a lowered profile's", edited("35 ft 54 F", "35 ft 60 F")],
  ["nothing before the first leg", edited(DAY.slice(DAY.indexOf("04:50"), DAY.indexOf("05:10")), "")],
])("with %s it is as if told anew", (_, text) => {
  const first = parse(DAY);
  told(dayOf(first));
  const read = reparse(first, text);
  expect(told(dayOf(read))).toBe(toldAnew(text));
  expect(told(dayOf(reparse(read, DAY)))).toBe(toldAnew(DAY));
});

/** Keeps other lines apart from an edited one, beside which lines may be read again. */
const APART = 'note "apart"\n'.repeat(2);
const SECOND = "05:00 probe P1 depth 60 ft";
const UNSETTLED = `trip 2031-06-21 "Bright Penny"
04:50 depart
${APART}04:52 turn left to 090
${DAY.slice(DAY.indexOf("05:00"))}`;
const AFTERNOON = edited("05:40 probe", "17:40 probe").replace(/06:20.*\n/u, "");

test.each([
  [
    "two readings, and a move that explains them",
    edited("05:10 turn", `${SECOND}\n${APART}05:00 note "calm"\n${APART}05:10 turn`),
    edited("05:10 turn", `${SECOND}\n${APART}05:00 move P1 out 60 ft\n${APART}05:10 turn`),
  ],
  ["a line before the first leg, and none", UNSETTLED, UNSETTLED.replace("04:50 depart", "# 04:50")],
  ["a clock that slipped, and none", AFTERNOON, AFTERNOON.replace("05:50", "17:50")],
])("%s: from one to the other and back as if told anew", (_, one, other) => {
  expect(toldAnew(one)).not.toBe(toldAnew(other));
  let read = parse(one);
  for (const text of [one, other, one]) {
    read = reparse(read, text);
    expect(told(dayOf(read))).toBe(toldAnew(text));
  }
});

test("what is told tells the edits apart", () => {
  const speedless = edited("speed 1.9 mph", "speed 1.8 mph");
  expect(toldAnew(speedless)).not.toBe(toldAnew(DAY));
  const shallow = edited("35 ft 54 F", "35 ft 60 F");
  expect(toldAnew(shallow)).not.toBe(toldAnew(DAY));
});
