import { misplacedLines } from "../model/time-order.ts";
import { RIG_VERBS, type Trip, type TripEvent } from "../model/trip.ts";
import { TIME_OUTSIDE_TRIP } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { stampPlace } from "./places.ts";
import { stampText } from "./stamp-edits.ts";

/** An approximate time may lie that far outside (judgement, as for the order of time). */
const APPROXIMATE_MS = 15 * 60_000;

type Edge = "depart" | "return";

/** Flags lines of rods before the boat left or after it was back. */
export const timeOutsideTrip: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const misplaced = misplacedLines(trip);
    const inOrder = trip.events.filter(
      (event) => event.instant?.problem === null && !misplaced.has(event.lineIndex),
    );
    const edges = edgesOf(inOrder);
    for (const event of inOrder) {
      if (!RIG_VERBS.has(event.line.verb)) continue;
      const passed = edges.find(([edge, at]) => beyondMs(edge, at, event) > slackMs(event));
      if (passed === undefined) continue;
      const [edge, at] = passed;
      const data = {
        verb: event.line.verb,
        clock: stampText(event.line, false),
        edge,
        edgeClock: stampText(at.line, false),
      };
      const related = [
        { uri: analysis.uri, message: DAY_RELATED[edge], ...stampPlace(at.lineIndex, at.line) },
      ];
      report(TIME_OUTSIDE_TRIP, stampPlace(event.lineIndex, event.line), data, { related });
    }
  }
};

/** The first departure and the last return. */
function edgesOf(events: Trip["events"]): [Edge, TripEvent][] {
  const depart = events.find((event) => event.line.verb === "depart");
  const back = events.findLast((event) => event.line.verb === "return");
  const edges: [Edge, TripEvent][] = [];
  if (depart !== undefined) edges.push(["depart", depart]);
  if (back !== undefined) edges.push(["return", back]);
  return edges;
}

function beyondMs(edge: Edge, at: TripEvent, event: TripEvent): number {
  const laterMs = (event.instant?.utcMs ?? 0) - (at.instant?.utcMs ?? 0);
  return edge === "depart" ? -laterMs : laterMs;
}

const slackMs = (event: TripEvent): number => (event.line.approx ? APPROXIMATE_MS : 0);
