/** The light at a bite, in the captain's plain words: what it was, never what it promises. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { moonWords } from "./water-words.ts";

const BITES = new Set(["strike", "catch", "lost", "miss", "broke"]);

/** The light of a bite's place and minute; nothing for other lines, and where place, zone or clock isn't known. */
export function lightSentences(day: TripAnalysis, lineIndex: number): string[] {
  const event = day.trip.events.find((one) => one.lineIndex === lineIndex);
  const light = event !== undefined && BITES.has(event.line.verb) ? day.water.lightAt(event) : undefined;
  if (light === undefined) return [];
  const { sky, sunriseMinutes } = light;
  const sun =
    sky === undefined || sunriseMinutes === undefined
      ? ""
      : `${sunriseWords(sunriseMinutes)}, in ${sky === "night" ? "the night" : sky}. `;
  return [`${sun}Moon: ${moonWords(light.moon)}.`];
}

function sunriseWords(minutes: number): string {
  if (minutes === 0) return "At sunrise";
  return `${Math.abs(minutes)} min ${minutes < 0 ? "before" : "after"} sunrise`;
}
