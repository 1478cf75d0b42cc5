/** A trip's day in a few words, for the line over it. */
import type { TripSummary } from "../analysis/summary.ts";
import { ageWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { effortUnit, effortWords } from "./effort-words.ts";

const HOUR_MS = 3_600_000;

/** `6 h 35 min, 5 fish, 31.2 rod-hours`; what isn't known is left out. */
export function tripInBrief(gear: Gear, summary: TripSummary): string {
  const { hours, landed, rodHoursFishing } = summary;
  const said = [
    hours === null ? "" : ageWords(hours * HOUR_MS),
    landed === 0 ? "no fish" : `${landed} fish`,
    rodHoursFishing === 0
      ? ""
      : effortWords(String(Number(rodHoursFishing.toFixed(1))), effortUnit(gear, summary)),
  ];
  return said.filter((part) => part !== "").join(", ");
}
