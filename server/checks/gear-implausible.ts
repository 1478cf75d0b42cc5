import type { Item, Value } from "../../grammar/journal.ts";
import { GEAR_BOUNDS, type GearBound } from "../model/gear-bounds.ts";
import { kindDefined } from "../model/gear-lines.ts";
import { findItem } from "../model/quantities.ts";
import { GEAR_IMPLAUSIBLE } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { measureRange, oddMeasure, writtenIn } from "./odd-measure.ts";
import { ownerNear } from "./owners.ts";
import type { SoundLine } from "./sound-lines.ts";
import { allUnderOpeners, onEachLine } from "./under-openers.ts";
import { meantUnit } from "./usual-units.ts";

const BOUNDED: ReadonlySet<string> = new Set(GEAR_BOUNDS.map((bound) => bound.verb));

/** Doubts gear of a size that none has: mostly a slip of the unit or the point. */
export const gearImplausible: Rule = (context) => {
  for (const sound of allUnderOpeners(context.analysis, boundedLines)) {
    const kind = boundedKind(sound);
    for (const bound of GEAR_BOUNDS) {
      const item = bound.verb === kind ? findItem(sound.line, bound.word) : undefined;
      if (item !== undefined) checkMeasure(context, sound, item, bound);
    }
    if (kind === "cable") checkCore(context, sound);
  }
};

const boundedLines = onEachLine((sound) => (BOUNDED.has(boundedKind(sound) ?? "") ? [sound] : []));

/** The kind of a gear line, or the verb of a boat's property. */
function boundedKind({ line }: SoundLine): string | undefined {
  if (line.kind === "fact") return kindDefined(line.verb);
  return line.kind === "property" && line.block === "boat" ? line.verb : undefined;
}

function checkMeasure(context: CheckContext, { lineIndex }: SoundLine, item: Item, bound: GearBound): void {
  const { analysis, report } = context;
  const defaults = ownerNear(analysis, lineIndex)?.gear.defaults;
  const { verb, dimension } = bound;
  const unit = dimension === null ? undefined : meantUnit(bound.word, verb, dimension, defaults);
  const range = measureRange(item.value, bound, unit);
  if (range === undefined) return;
  const odd = oddMeasure(item, bound, { verb, unit });
  const place = { lineIndex, start: item.start, stop: item.stop };
  const write = (text: string, isPreferred: boolean): Fix => ({
    title: FIX_TITLES.write(text),
    edits: [replace(analysis.uri, valuePlace(lineIndex, item), text)],
    isPreferred,
  });
  if (odd !== undefined) {
    const { slips, written } = odd;
    const fixes = slips.map((text) => write(text, slips.length === 1));
    report(GEAR_IMPLAUSIBLE, place, { kind: "beyond", written, bound, slips }, { fixes });
  } else if (bound.word === "temp" && range.low > range.high) {
    const meant = turned(item.value, unit);
    const fixes = meant === undefined ? [] : [write(meant, true)];
    report(GEAR_IMPLAUSIBLE, place, { kind: "upside-down", meant: meant ?? "" }, { fixes });
  }
}

/** A core that fills its line, or is thicker. */
function checkCore({ report }: CheckContext, { lineIndex, line }: SoundLine): void {
  const [core, diameter] = [findItem(line, "core"), findItem(line, "diameter")];
  const [coreM, diameterM] = [core, diameter].map((item) =>
    item === undefined ? undefined : measureRange(item.value, THICK, undefined)?.low,
  );
  if (core === undefined || diameter === undefined || coreM === undefined || diameterM === undefined) return;
  if (coreM < diameterM) return;
  const data = {
    kind: "core" as const,
    core: writtenIn(core.value, ""),
    diameter: writtenIn(diameter.value, ""),
  };
  report(GEAR_IMPLAUSIBLE, { lineIndex, start: core.start, stop: core.stop }, data);
}

/** Thicknesses always carry their unit. */
const THICK = { word: "core", dimension: "length", low: 0, unit: "mm" } as const;

/** A range with its ends changed over; undefined where they have units of their own that differ. */
function turned(value: Value, unit: string | undefined): string | undefined {
  if (value.kind !== "range") return undefined;
  const shared = value.high.at(-1)?.unit ?? unit;
  const [low, high] = [value.low[0], value.high[0]];
  if (low === undefined || high === undefined || (low.unit !== null && low.unit !== shared)) return undefined;
  return `${high.number} to ${low.number} ${shared ?? ""}`.trim();
}
