/** A trip's day in a few words, for the line over it. */
import type { TripSummary } from "../analysis/summary.ts";
import { ageWords } from "../model/figures.ts";

const HOUR_MS = 3_600_000;

/** `6 h 35 min, 5 fish, 31.2 rod-hours`; what isn't known is left out. */
export function tripInBrief({ hours, landed, rodHoursFishing }: TripSummary): string {
  const said = [
    hours === null ? "" : ageWords(hours * HOUR_MS),
    landed === 0 ? "no fish" : `${landed} fish`,
    rodHoursFishing === 0 ? "" : rodHours(Number(rodHoursFishing.toFixed(1))),
  ];
  return said.filter((part) => part !== "").join(", ");
}

function rodHours(count: number): string {
  return `${count} rod-${count === 1 ? "hour" : "hours"}`;
}
