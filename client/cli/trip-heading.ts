/** The line above what is said of one trip. */
import type { TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import { printable } from "./render/printable.ts";
import type { Paint } from "./render/terminal.ts";
import { wrap } from "./render/wrap.ts";

/** `2031-06-21, Bright Penny (trips/2031-06-21.trip)` */
export function tripHeading(shown: string, { trip }: TripAnalysis, width: number, paint: Paint): string[] {
  const text = printable(`${trip.date}, ${trip.boat} (${shown})`);
  return wrap(text, width, 2).map((line) => paint.strong(line));
}
