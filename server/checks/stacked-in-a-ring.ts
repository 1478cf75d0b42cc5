import { fileGear, type GearLine } from "../model/gear-lines.ts";
import { nameOf, slotName } from "../model/quantities.ts";
import { STACKED_IN_A_RING } from "./catalog/language.ts";
import { RELATED } from "./catalog/titles.ts";
import type { Rule } from "./check.ts";
import { type KnownGear, knownGear } from "./known-gear.ts";
import { ownerNear } from "./owners.ts";
import { itemPlace, slotPlace } from "./places.ts";

/** Nobody stacks more rods than this; a longer way around is not followed. */
const MOST_STACKED = 64;

/** Flags a rig that is stacked on itself, directly or by way of others. Nothing would hold it. */
export const stackedInARing: Rule = ({ analysis, report }) => {
  const [own] = analysis.files;
  if (own === undefined) return;
  for (const rig of fileGear(own).lines) {
    if (rig.line.verb !== "rig" || nameOf(rig.line, "stacked") === undefined) continue;
    const boat = rig.boat ?? ownerNear(analysis, rig.lineIndex)?.boat;
    const ring = ringOf(rig, knownGear(analysis, boat));
    if (ring === undefined) continue;
    const related = ring.slice(1).map(({ uri, lineIndex, line }) => ({
      uri,
      message: RELATED.ring,
      ...slotPlace(lineIndex, line),
    }));
    const names = ring.map((one) => slotName(one.line) ?? "");
    report(STACKED_IN_A_RING, itemPlace(rig.lineIndex, rig.line, "stacked"), { ring: names }, { related });
  }
};

/** The rigs from a line by way of those it is stacked on back to itself; undefined when it doesn't come back. */
function ringOf(start: GearLine, known: KnownGear): readonly GearLine[] | undefined {
  const ring = [start];
  const date = start.line.date ?? "";
  for (let next = nameOf(start.line, "stacked"); next !== undefined && ring.length <= MOST_STACKED; ) {
    if (next === slotName(start.line)) return ring;
    const line = heldOn(known.definitions("rig", next), date);
    if (line === undefined) return undefined;
    ring.push(line);
    next = nameOf(line.line, "stacked");
  }
  return undefined;
}

/** The definition that holds on a day: the latest that starts on or before it. */
function heldOn(lines: readonly GearLine[], date: string): GearLine | undefined {
  let best: GearLine | undefined;
  for (const line of lines) {
    const from = line.line.date ?? "";
    if (from <= date && (best === undefined || from > (best.line.date ?? ""))) best = line;
  }
  return best;
}
