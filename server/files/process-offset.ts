/** UTC offsets from the process's own clock, which is there at once while a formatter takes half as long as Node to start. */
import { askFirst } from "../model/local-time.ts";

const AREA_AND_PLACE = /^[A-Z][A-Za-z]+\/[A-Z][A-Za-z_/-]+$/u;
const HALF_A_YEAR_MS = 182 * 86_400_000;

/**
 * Minutes east of UTC in a zone, by setting the process's clock to it. A zone that isn't known reads as UTC there, so
 * one that seems to be at UTC all year is left to others to tell: undefined.
 */
export function processOffset(env: NodeJS.ProcessEnv, zone: string, at: Date): number | undefined {
  if (!AREA_AND_PLACE.test(zone)) return undefined;
  if (env.TZ !== zone) env.TZ = zone;
  const offset = -at.getTimezoneOffset();
  if (offset !== 0) return offset;
  return new Date(at.getTime() + HALF_A_YEAR_MS).getTimezoneOffset() === 0 ? undefined : 0;
}

/** Has the model ask the process's clock for offsets first. The process's own zone changes with the zones asked for. */
export function useProcessClock(env: NodeJS.ProcessEnv): void {
  askFirst((zone, at) => processOffset(env, zone, at));
}
