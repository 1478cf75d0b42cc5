import {
  completeDownrigger,
  type Downrigger,
  defaultRodLine,
  type RodOnCable,
} from "../../server/physics/downrigger.ts";
import { type LineMake, type LineMaterial, lineMake } from "../../server/physics/line-materials.ts";
import { type LureKind, lureForces } from "../../server/physics/lure.ts";

export const FOOT_M = 0.3048;
export const MPH_MS = 0.44704;
export const POUND_KG = 0.45359237;

/** A line of a material and a diameter in mm. */
export function make(material: LineMaterial, diameterMm: number): LineMake {
  const made = lineMake(material, diameterMm / 1000);
  if (!made.ok) throw new Error(made.why);
  return made;
}

/** A rod with default line and pull, in feet. */
export function rod(id: string, aboveFt: number, setbackFt: number, kind: LureKind = "spoon"): RodOnCable {
  return {
    id,
    releaseAboveBallM: aboveFt * FOOT_M,
    setbackM: setbackFt * FOOT_M,
    lureLine: { make: make("mono", 0.4), dragMultiplier: 1.2 },
    lure: lureForces(kind),
    rodLine: defaultRodLine(),
  };
}

/** A 12 lb ball on 0.9 mm steel, in feet and mph, with defaults for the rest. */
export function rig(
  outFt: number,
  speedMph: number,
  rods: readonly RodOnCable[] = [],
  change: Partial<Downrigger> = {},
): Downrigger {
  return completeDownrigger({
    outM: outFt * FOOT_M,
    speedMS: speedMph * MPH_MS,
    cable: { make: make("steel", 0.9) },
    ball: { massKg: 12 * POUND_KG },
    rods,
    ...change,
  });
}
