/** Lengths of line as a captain counts them: colors of leadcore to half a color, else whole feet or meters. */
import { findUnit, fromSi, toSi, type UnitRow } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear, Rig } from "../model/gear-types.ts";

/** A length as it is counted. */
export interface CounterReading {
  readonly out: number;
  /** The unit as it is written: `ft`, `m`, `colors`. */
  readonly unit: string;
  /** Backing let out behind all the colors there are. */
  readonly backing: { readonly out: number; readonly unit: string } | null;
  /** The whole of it, and of that the colors, m. */
  readonly outM: number;
  readonly colorsM: number | undefined;
}

const COLORS = "colors";

/** The unit a rig's line is counted in. */
export function counterUnit(gear: Gear, rig: Rig): string {
  return rig.kind === "leadcore" ? COLORS : lengthUnit(gear);
}

/** The nearest length that can be counted, of at least one step and at most `mostM`. */
export function counterReading(
  gear: Gear,
  rig: Rig,
  outM: number,
  mostM: number,
  unit: string = counterUnit(gear, rig),
): CounterReading {
  const row = findUnit(unit);
  const boats = findUnit(lengthUnit(gear));
  if (row === undefined || boats === undefined) throw new Error(`${unit} is no unit of length`);
  const { holdsM } = rig;
  if (unit === COLORS && holdsM !== undefined && outM > holdsM) {
    const backing = counted(outM - holdsM, mostM - holdsM, boats);
    const backingM = toSi(backing, boats);
    const out = fromSi(holdsM, row);
    return {
      out: Number(out.toFixed(2)),
      unit,
      backing: { out: backing, unit: boats.unit },
      outM: holdsM + backingM,
      colorsM: holdsM,
    };
  }
  const out = counted(outM, mostM, row);
  const siM = toSi(out, row);
  return { out, unit: row.unit, backing: null, outM: siM, colorsM: unit === COLORS ? siM : undefined };
}

/** Whole steps of the unit. */
function counted(lengthM: number, mostM: number, unit: UnitRow): number {
  const step = unit.unit === COLORS ? 0.5 : 1;
  const steps = Math.round(fromSi(lengthM, unit) / step);
  const most = Math.floor(fromSi(mostM, unit) / step + 1e-6);
  return Math.max(1, Math.min(steps, most)) * step;
}
