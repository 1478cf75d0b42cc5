import { type Disorder, misplacedLines, timeDisorders } from "../model/time-order.ts";
import type { Trip } from "../model/trip.ts";
import { TIME_BACKWARDS } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { moveToTime } from "./move-lines.ts";
import { stampPlace } from "./places.ts";
import { laterDay, stampText, writeDate } from "./stamp-edits.ts";

/** Flags times that come before the line above, once for each run of lines, with what would mend them. */
export const timeBackwards: Rule = (context) => {
  for (const { trip } of context.analysis.trips) {
    const disorders = timeDisorders(trip).filter(({ slip }) => slip !== "afternoon" && slip !== "morning");
    const sort = sortFix(context, trip, disorders);
    // Half a file may have to move: none of the fixes is made before somebody asks for it, and this one once for all.
    for (const disorder of disorders) flag(context, trip, disorder, disorders, sort);
  }
};

function flag(
  { analysis, report }: CheckContext,
  trip: Trip,
  disorder: Disorder,
  all: readonly Disorder[],
  sort: () => Fix | undefined,
): void {
  const { slip, events, against } = disorder;
  if (slip === "afternoon" || slip === "morning") return;
  const [first] = events;
  const data = {
    clock: stampText(first.line, false),
    against: stampText(against.line, false),
    slip,
    more: events.length - 1,
  };
  const message = slip === "ahead" ? DAY_RELATED.lineBelow : DAY_RELATED.lineAbove;
  const related = [{ uri: analysis.uri, message, ...stampPlace(against.lineIndex, against.line) }];
  const fixes = (): Fix[] =>
    slip === "next-day"
      ? dates(analysis.uri, trip, disorder)
      : moves({ analysis }, trip, disorder, all, sort());
  report(TIME_BACKWARDS, stampPlace(first.lineIndex, first.line), data, { related, fixes });
}

/** Tomorrow's date below midnight; yesterday's above it, where those lines are the fewer. */
function dates(uri: string, trip: Trip, { events }: Disorder): Fix[] {
  const tomorrow = laterDay(trip.date, 1);
  const below: Fix = {
    title: DAY_FIXES.dateBelow(tomorrow, events.length),
    edits: events.map((event) => writeDate(uri, event, tomorrow)),
    isPreferred: true,
  };
  const above = trip.events.filter(
    (event) => event.line.clock !== null && event.lineIndex < events[0].lineIndex,
  );
  if (above.length >= events.length || above.some((event) => event.line.date !== null)) return [below];
  const yesterday = laterDay(trip.date, -1);
  const edits = above.map((event) => writeDate(uri, event, yesterday));
  return [below, { title: DAY_FIXES.dateAbove(yesterday, above.length), edits, isPreferred: false }];
}

/** Past so many disorders only sorting all of them is offered: a fix for each would cost more than it helps. */
const MOST_MOVES = 40;

/** Moving the lines; several moves at once only as one fix, since each shifts the lines between. */
function moves(
  { analysis }: Pick<CheckContext, "analysis">,
  trip: Trip,
  { events, slip }: Disorder,
  all: readonly Disorder[],
  sort: Fix | undefined,
): Fix[] {
  const others = sort === undefined ? [] : [sort];
  if (all.length > MOST_MOVES) return others;
  const move = {
    title: DAY_FIXES.move(events.length),
    edits: moveToTime(analysis, trip, events, misplacedLines(trip)),
    isPreferred: slip === "before" && all.length === 1 && analysis.trips.length === 1,
  };
  return [move, ...others];
}

/** Makes, once and when asked, the sorting of every line that is out of order; undefined where that is one disorder alone. */
function sortFix({ analysis }: CheckContext, trip: Trip, all: readonly Disorder[]): () => Fix | undefined {
  const movable = all.filter((disorder) => disorder.slip !== "next-day");
  if (movable.length < 2) return () => undefined;
  const events = movable.flatMap((one) => one.events);
  let made: Fix | undefined;
  return () => {
    made ??= {
      title: DAY_FIXES.sort(events.length),
      edits: moveToTime(analysis, trip, events, misplacedLines(trip)),
      isPreferred: false,
    };
    return made;
  };
}
