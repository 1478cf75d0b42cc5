/** Speed, temperature and bottom at any line of a trip: those of its minute, or of the last minute told above it. */
import { temperatureReadings } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import { bottomAt } from "./bottom.ts";
import type { TripAnalysis } from "./journal-analysis.ts";
import type { SpeedUsed } from "./speed-used.ts";
import { tripSpeed } from "./trip-speed.ts";
import { profilesOf, waterAt } from "./water-used.ts";

/** What a line would be let out into. */
interface WaterAtLine {
  readonly timeMs: number;
  readonly speed: SpeedUsed;
  readonly tempC: number;
  /** Depth of the water, m. */
  readonly waterM: number | undefined;
}

/** The depth that the water's temperature is taken down to, m (judgement: half the rows of a table). */
const REACH_M = 20;

/** `undefined` where no speed is known. A line before the first clock time takes the first. */
export function waterAtLine({ trip, ages }: TripAnalysis, lineIndex: number): WaterAtLine | undefined {
  const timed = trip.events.filter(({ instant }) => instant !== null);
  const event = timed.findLast((one) => one.lineIndex <= lineIndex) ?? timed[0];
  const timeMs = event === undefined ? null : meantMs(trip, event);
  if (timeMs === null) return undefined;
  const speed = tripSpeed(trip, ages)(timeMs);
  if (speed === undefined) return undefined;
  const { tempC } = waterAt(profilesOf(trip), temperatureReadings(trip), timeMs, REACH_M, ages);
  const bottom = bottomAt(trip, timeMs, thresholdOf(trip.gear, THRESHOLDS.bottomHeld) * 1000);
  return { timeMs, speed, tempC, waterM: bottom?.waterM };
}
