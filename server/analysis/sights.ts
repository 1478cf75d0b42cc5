/**
 * What the analysis looks at in a trip, for each kind of question: with all that the functions named read by way of
 * others, and the places that an answer points at.
 */
import { all, HEADS, linesOf, properties, type Sight, words } from "../model/sight.ts";

/** When each rig was in the water (`build-timeline.ts`, `rig-states.ts`). */
export const RIGS: Sight = all(HEADS, words("down", "with", "slider"));

/** Lines that say how a rig is set (`setting.ts`). */
const SETTINGS: Sight = linesOf("set", "move", "again", "change", "check");

/** How much is out at each line, and which line said so (`cable-at.ts`, `related-out.ts`). */
export const AMOUNTS: Sight = all(RIGS, SETTINGS, words("out"));

/** The bottom as it was read (`bottom.ts`). */
export const BOTTOMS: Sight = all(HEADS, linesOf("sonar", "touch"));

/** Positions and courses, on the way that the boat went between them (`track.ts`, `bearings.ts`). */
export const WAY: Sight = all(HEADS, linesOf("gps", "turn", "run"), words("at"));

/** What the instruments showed of speed, temperature and current (`readings.ts`, `temperature-points.ts`, `current-looks.ts`). */
export const READINGS: Sight = all(WAY, BOTTOMS, linesOf("probe", "surface", "profile"));

/** The speed that each depth goes by, not the depth itself (`trip-speed.ts`, `trolled-depths.ts`). */
export const SPEEDS: Sight = all(RIGS, READINGS, words("speed"));

/** Events that say nothing of depths but by their head and the words of `TELLING`. */
const DAY_OF_THE_CREW: ReadonlySet<string> = new Set([
  ...["depart", "return", "strike", "miss", "catch", "lost", "broke", "box", "dock", "weigh-in"],
  ...["weather", "water", "birds", "fleas", "weeds", "serviced", "note"],
]);
const TELLING: Sight = words(
  ...["down", "with", "slider", "at", "out", "behind", "bottom", "depth", "temp", "speed", "course"],
);

const METHOD: Sight = properties("method", "target");

/** Everything that depths, crossings and calibrations are reckoned from (`line-depth.ts`, `calibration-readings.ts`). */
export const DEPTHS: Sight = (line) => {
  if (line.kind !== "fact") return METHOD(line);
  return DAY_OF_THE_CREW.has(line.verb) ? HEADS(line) + TELLING(line) : line.raw;
};
