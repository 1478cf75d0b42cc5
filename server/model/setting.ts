/** What is on a rig and how much is out: settings are carried from line to line, what isn't said stays. */
import type { ReadLine } from "../../grammar/journal.ts";
import { findUnit, type UnitRow } from "../../grammar/units.ts";
import type { Gear } from "./gear-types.ts";
import { isColorsOrFeet } from "./leadcore-count.ts";
import { matchMaybe } from "./match-name.ts";
import {
  defaultUnit,
  findItem,
  hasWord,
  measureOf,
  nameOf,
  numberOf,
  partsToSi,
  type UnitDefaults,
} from "./quantities.ts";

/** A rig's setting at one moment. */
export interface Setting {
  /** Line or cable out as the counter says, m. */
  readonly outM: number | undefined;
  /** The part of it that was counted in colors of leadcore, m; the rest is backing. */
  readonly outColorsM: number | undefined;
  /** A stacked rod's clip above the ball, m. */
  readonly aboveM: number | undefined;
  readonly setbackM: number | undefined;
  readonly boardM: number | undefined;
  readonly leaderM: number | undefined;
  readonly dial: number | undefined;
  readonly lure: string | undefined;
  readonly flasher: string | undefined;
  readonly slider: string | undefined;
  readonly sliderFixedM: number | undefined;
  readonly ball: string | undefined;
  readonly anglers: number | undefined;
  readonly onBottom: boolean;
}

/** Written to take a flasher or slider off. */
const NOTHING = "none";

/** Nothing known. */
export const NO_SETTING: Setting = {
  outM: undefined,
  outColorsM: undefined,
  aboveM: undefined,
  setbackM: undefined,
  boardM: undefined,
  leaderM: undefined,
  dial: undefined,
  lure: undefined,
  flasher: undefined,
  slider: undefined,
  sliderFixedM: undefined,
  ball: undefined,
  anglers: undefined,
  onBottom: false,
};

interface KnownSetting {
  readonly before: Setting;
  readonly gear: Gear;
  readonly after: Setting;
}

const knownSettings = new WeakMap<ReadLine, KnownSetting>();

/** The setting after a line, from the one before it; the very same for the very same line, setting and gear. */
export function nextSetting(before: Setting, line: ReadLine, gear: Gear): Setting {
  const known = knownSettings.get(line);
  if (known?.before === before && known.gear === gear) return known.after;
  const after = settingAfter(before, line, gear);
  knownSettings.set(line, { before, gear, after });
  return after;
}

function settingAfter(before: Setting, line: ReadLine, gear: Gear): Setting {
  const { defaults } = gear;
  const length = (word: string, old: number | undefined): number | undefined =>
    findItem(line, word) === undefined ? old : measureOf(line, word, "length", defaults);
  const out = (): number | undefined =>
    isColorsOrFeet(line, "out", gear) ? undefined : length("out", before.outM);
  const said = <T>(value: T | undefined, old: T | undefined): T | undefined =>
    value === NOTHING ? undefined : (value ?? old);
  return {
    outM: out(),
    outColorsM: findItem(line, "out") === undefined ? before.outColorsM : colorsM(line, defaults),
    aboveM: length("above", before.aboveM),
    setbackM: length("setback", before.setbackM),
    boardM: length("board", before.boardM),
    leaderM: length("leader", before.leaderM),
    dial: said(numberOf(line, "dial"), before.dial),
    lure: said(matchMaybe(gear.lures, nameOf(line, "lure")), before.lure),
    flasher: said(matchMaybe(gear.lures, nameOf(line, "flasher")), before.flasher),
    slider: said(matchMaybe(gear.lures, nameOf(line, "slider")), before.slider),
    sliderFixedM: length("fixed", before.sliderFixedM),
    ball: said(matchMaybe(gear.balls, nameOf(line, "ball")), before.ball),
    anglers: said(numberOf(line, "anglers"), before.anglers),
    onBottom: hasWord(line, "on-bottom") || (before.onBottom && findItem(line, "out") === undefined),
  };
}

/** The colors of what is out, m; `undefined` where none were counted. */
function colorsM(line: ReadLine, defaults: UnitDefaults): number | undefined {
  const value = findItem(line, "out")?.value;
  if (value?.kind !== "quantity") return undefined;
  const fallback = defaultUnit("length", line.verb, defaults);
  const colors = value.parts.filter((part) => unitOf(part.unit, fallback)?.unit === "colors");
  return colors.length === 0 ? undefined : partsToSi(colors, fallback, "length");
}

function unitOf(written: string | null, fallback: UnitRow | undefined): UnitRow | undefined {
  return written === null ? fallback : findUnit(written);
}
