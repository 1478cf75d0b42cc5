/** Options that stand for one measure or one name of the gear book, read by the grammar so that they mean the same. */
import { parse } from "../../../grammar/parse.ts";
import type { Dimension } from "../../../grammar/units.ts";
import { oddTemperature } from "../../../server/analysis/odd-temperature.ts";
import { nearest } from "../../../server/checks/nearest.ts";
import { speedWords, tempWords } from "../../../server/model/figures.ts";
import type { Gear } from "../../../server/model/gear-types.ts";
import { matchName } from "../../../server/model/match-name.ts";
import { measureOf } from "../../../server/model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../../../server/model/thresholds.ts";

/** The measure in SI, where the text, put behind its word, is read as that one measure and nothing else. */
export function measureIn(
  text: string,
  word: string,
  verb: string,
  dimension: Dimension,
  gear: Gear,
): number | undefined {
  const { journal, issues } = parse(`12:00 ${verb} X ${word} ${text}`);
  const [line, ...more] = journal.lines;
  if (line?.kind !== "fact" || more.length > 0 || issues[0] !== null || line.comment !== null)
    return undefined;
  const [item, ...others] = line.items;
  if (item?.word !== word || others.length > 0) return undefined;
  return measureOf(line, word, dimension, gear.defaults);
}

/** What to say of a name that the gear doesn't have; undefined where it does. A book without lures takes any. */
export function wrongName(
  option: string,
  kind: "rig" | "lure",
  name: string,
  known: ReadonlyMap<string, unknown>,
  gear: Gear,
): string | undefined {
  if (known.has(matchName(known, name)) || (kind === "lure" && known.size === 0)) return undefined;
  const [near] = nearest(name, known.keys());
  return `--${option}: there is no ${kind} "${name}" in the gear of ${gear.boat}${near === undefined ? "." : `; did you mean ${near}?`}`;
}

/** What is wrong with a measure that nothing is reckoned with: a speed that nobody trolls at, water that isn't so. */
export function wrongMeasure(
  option: string,
  dimension: Dimension,
  si: number,
  gear: Gear,
): string | undefined {
  if (dimension === "speed") return wrongSpeed(option, si, gear);
  return dimension === "temperature" ? wrongTemperature(option, si, gear) : undefined;
}

function wrongTemperature(option: string, tempC: number, gear: Gear): string | undefined {
  if (oddTemperature(gear, tempC)?.isImpossible !== true) return undefined;
  return `--${option}: no water has ${tempWords(gear, tempC)}.`;
}

function wrongSpeed(option: string, speedMS: number, gear: Gear): string | undefined {
  const fastestMS = thresholdOf(gear, THRESHOLDS.fastTroll);
  if (speedMS >= 0 && speedMS <= fastestMS) return undefined;
  return `--${option}: ${speedWords(gear, speedMS)} is no speed to troll at; it goes from 0 to ${speedWords(gear, fastestMS)} (threshold fastest-troll in the gear book).`;
}
