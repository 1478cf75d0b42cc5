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
  "band temp": (bound) => `the water that fish are looked for in is ${bound}`,
};

function boundWords({ low, high, unit, word }: GearBound): string {
  if (low !== undefined) return `${low} to ${high} ${unit}`;
  return word === "pulls-down" ? `${high} ${unit}` : `up to ${high} ${unit}`;
}

/** Gear that nobody has. */
export const GEAR_IMPLAUSIBLE = check<
  | { kind: "beyond"; written: string; bound: GearBound; slips: readonly string[] }
  | { kind: "upside-down"; meant: string }
>({
  slug: "gear-implausible",
  severities: ["warning"],
  summary: "A cable, ball, lure, rig or band of a size that none has.",
  quietWhen: "the measure has no unit",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: (data) => {
    if (data.kind === "upside-down") return `The colder end of a band comes first: ${data.meant}.`;
    const { written, bound, slips } = data;
    const believed = BELIEVED[`${bound.verb} ${bound.word}`]?.(boundWords(bound)) ?? boundWords(bound);
    const meant = slips.length === 0 ? "" : ` Was ${slips.join(" or ")} meant?`;
    return `${bound.word} ${written} is doubtful: ${believed}.${meant}`;
  },
});
