/** Lines of rods before the boat left or after it was back. */
import { misplacedLines } from "../model/time-order.ts";
import { RIG_VERBS, type Trip, type TripEvent } from "../model/trip.ts";

/** The end of the trip that a line lies beyond. */
interface BeyondEdge {
  readonly edge: "depart" | "return";
  readonly at: TripEvent;
}

/** An approximate time may lie that far outside (judgement, as for the order of time). */
const APPROXIMATE_MS = 15 * 60_000;

/** Lines of rods outside of the trip, by line index: before the first departure, or after the last return. */
export function outsideTrip(trip: Trip): ReadonlyMap<number, BeyondEdge> {
  const misplaced = misplacedLines(trip);
  const inOrder = trip.events.filter(
    (event) => event.instant?.problem === null && !misplaced.has(event.lineIndex),
  );
  const edges = edgesOf(inOrder);
  const outside = new Map<number, BeyondEdge>();
  for (const event of inOrder) {
    const slackMs = event.line.approx ? APPROXIMATE_MS : 0;
    const passed = edges.find((one) => beyondMs(one, event) > slackMs);
    if (RIG_VERBS.has(event.line.verb) && passed !== undefined) outside.set(event.lineIndex, passed);
  }
  return outside;
}

function edgesOf(events: Trip["events"]): BeyondEdge[] {
  const depart = events.find((event) => event.line.verb === "depart");
  const back = events.findLast((event) => event.line.verb === "return");
  const edges: BeyondEdge[] = [];
  if (depart !== undefined) edges.push({ edge: "depart", at: depart });
  if (back !== undefined) edges.push({ edge: "return", at: back });
  return edges;
}

function beyondMs({ edge, at }: BeyondEdge, event: TripEvent): number {
  const laterMs = (event.instant?.utcMs ?? 0) - (at.instant?.utcMs ?? 0);
  return edge === "depart" ? -laterMs : laterMs;
}
