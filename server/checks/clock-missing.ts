import { offsetText } from "../model/local-time.ts";
import { CLOCK_MISSING } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { LineRule } from "./check.ts";
import { stampPlace } from "./places.ts";
import { writeClock, writeOffset } from "./stamp-edits.ts";

const MINUTE_MS = 60_000;

/** Flags times in the hour that daylight saving skips: a watch not yet set, or the hour that follows. */
export const clockMissing: LineRule = ({ analysis, report }, _trip, event) => {
  const { instant, line } = event;
  if (instant?.problem !== "missing" || line.clock === null) return;
  const later = pastTheGap(line.clock, instant.offsets);
  const byOldClock = offsetText(Math.min(...instant.offsets));
  const fixes = [
    {
      title: DAY_FIXES.write(later),
      edits: [writeClock(analysis.uri, event, later)],
      isPreferred: true,
    },
    {
      title: DAY_FIXES.write(`${line.clock}${byOldClock}`),
      edits: [writeOffset(analysis.uri, event, byOldClock)],
      isPreferred: false,
    },
  ];
  const place = stampPlace(event.lineIndex, line);
  report(CLOCK_MISSING, place, { clock: line.clock, later }, { fixes });
};

/** The same instant by the clock set ahead. */
function pastTheGap(clock: string, offsets: readonly number[]): string {
  const gapMs = (Math.max(...offsets) - Math.min(...offsets)) * MINUTE_MS;
  const text = new Date(Date.parse(`2000-01-01T${clock}Z`) + gapMs).toISOString();
  return text.slice(11, 11 + clock.length);
}
