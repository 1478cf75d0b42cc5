/** A trip's summary for programs: SI, hours, instants in UTC. */
import type { TripAnalysis } from "../../../server/analysis/journal-analysis.ts";
import { clockWords } from "../../../server/model/figures.ts";
import { instantText } from "../depth-lines.ts";
import type { TripSummaryJson } from "../output-schemas.ts";
import { waterSummaryJson } from "./water-summary-json.ts";

/** The summary with nothing left undefined. */
export function tripSummaryJson({ trip, summary }: TripAnalysis): TripSummaryJson {
  const { departMs, returnMs, landedPerRodHour: rate } = summary;
  const clock = (ms: number | null): string | null => (ms === null ? null : clockWords(ms, trip.zone));
  return {
    line: summary.openerIndex,
    date: summary.date,
    boat: summary.boat,
    depart: clock(departMs),
    departInstant: instantText(departMs, trip.zone),
    return: clock(returnMs),
    returnInstant: instantText(returnMs, trip.zone),
    hours: summary.hours,
    rodHoursWet: summary.rodHoursWet,
    rodHoursFishing: summary.rodHoursFishing,
    rodHoursByRig: summary.rodHoursByRig.map(({ rig, wet, fishing }) => ({
      rig,
      rodHoursWet: wet,
      rodHoursFishing: fishing,
    })),
    assumedPulls: summary.assumedPulls,
    species: summary.species.map((count) => ({ ...count })),
    landed: summary.landed,
    lost: summary.lost,
    broke: summary.broke,
    missed: summary.missed,
    open: summary.open,
    landedPerRodHour: rate === null ? null : { rate: rate.rate, low: rate.range.low, high: rate.range.high },
    speedsMS: summary.speedsMS,
    tempsC: summary.tempsC,
    caughtAt: summary.caughtAt.map(({ lineIndex, rig, species, lure, depthM, sunriseMinutes }) => ({
      line: lineIndex,
      rig,
      species: species ?? null,
      lure: lure ?? null,
      depthM,
      sunriseMinutes,
    })),
    depthsComputed: summary.depthsComputed,
    depthLines: summary.depthLines,
    water: waterSummaryJson(summary.water, trip.zone),
  };
}
