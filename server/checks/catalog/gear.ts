/** Checks of what the gear book says of the gear. */
import type { GearBound } from "../../model/gear-bounds.ts";
import { check } from "../check.ts";

/** What is believed, by verb and attribute. */
const BELIEVED: Readonly<Record<string, (bound: string) => string>> = {
  "cable diameter": (bound) => `cables are ${bound} thick`,
  "cable core": (bound) => `the lead of a leadcore line is ${bound} thick`,
  "ball weight": (bound) => `balls are ${bound}`,
  "lure length": (bound) => `lures are ${bound} long`,
  "lure pulls-down": (bound) => `lures dive ${bound} at most`,
  "rig boom": (bound) => `booms are ${bound} long`,
  "rig release": (bound) => `releases are clipped ${bound} above the ball`,
  "rig probe": (bound) => `probes ride ${bound} above the ball`,
  "cable weight": (bound) => `lines weigh ${bound}`,
  "ball drag": (bound) => `balls drag ${bound} times as much as a smooth sphere`,
  "ball drag-area": (bound) => `balls have ${bound}`,
  "lure weight": (bound) => `lures weigh ${bound}`,
  "rig board": (bound) => `boards run ${bound} to the side`,
  "rig leader": (bound) => `leaders are ${bound} long`,
  "rig holds": (bound) => `rigs hold ${bound}`,
  "rig inline-weight": (bound) => `in-line weights are ${bound}`,
  "rig tip": (bound) => `rod tips are ${bound} above the water`,
  "rig pull": (bound) => `rods pull ${bound}`,
  "calibrate drag": (bound) => `lines drag ${bound} times as much as the plain law has it`,
  "calibrate counter-scale": (bound) => `a foot on the counter is ${bound} ft of line`,
  "calibrate counter-offset": (bound) => `counters are off by ${bound}`,
  "calibrate weight": (bound) => `lines weigh ${bound}`,
  "calibrate lift-area": (bound) => `divers have ${bound}`,
  "calibrate drag-area": (bound) => `divers have ${bound}`,
  "sounder below": (bound) => `the face of a sounder lies ${bound} below the water line`,
  "beam wide": (bound) => `boats are ${bound} wide`,
  "turn-radius radius": (bound) => `boats turn in ${bound} with lines out`,
  "variation east": (bound) => `the needle is off by ${bound}`,
  "band temp": (bound) => `the water that fish are looked for in is ${bound}`,
};

function boundWords({ low, high, unit, word }: GearBound): string {
  if (word.endsWith("-link")) return `${low} to ${high}`;
  if (high === undefined) return `${low} ${unit} or more`;
  if (low !== 0) return `${low} to ${high} ${unit}`.trim();
  return (word === "pulls-down" ? `${high} ${unit}` : `up to ${high} ${unit}`).trim();
}

/** Gear that nobody has. */
export const GEAR_IMPLAUSIBLE = check<
  | { kind: "beyond"; written: string; bound: GearBound; slips: readonly string[] }
  | { kind: "upside-down"; meant: string }
  | { kind: "negative"; word: string; written: string }
  | { kind: "core"; core: string; diameter: string }
>({
  slug: "gear-implausible",
  severities: ["warning"],
  summary: "A cable, ball, lure, rig, calibration or band with a number that none has.",
  quietWhen: "the measure has no unit",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: (data) => {
    if (data.kind === "upside-down") return `The colder end of a band comes first: ${data.meant}.`;
    if (data.kind === "negative")
      return `${data.word} ${data.written} can't be: a threshold is zero or more. The default holds.`;
    if (data.kind === "core") return `A core of ${data.core} doesn't fit into a line of ${data.diameter}.`;
    const { written, bound, slips } = data;
    const believed =
      BELIEVED[`${bound.verb} ${bound.word}`]?.(boundWords(bound)) ?? `${boundWords(bound)} is believed`;
    const meant = slips.length === 0 ? "" : ` Was ${slips.join(" or ")} meant?`;
    return `${bound.word} ${written} is doubtful: ${believed}.${meant}`;
  },
});
