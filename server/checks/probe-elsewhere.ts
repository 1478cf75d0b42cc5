import { rigStateBefore } from "../model/rig-states.ts";
import { meantMs } from "../model/time-order.ts";
import { cableRigOf } from "../model/trip.ts";
import { PROBE_ELSEWHERE } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { renameFixes } from "./edits.ts";
import { slotPlace } from "./places.ts";

/**
 * Flags a probe that is read on a rig without one while the rig that has it is in the water, once for a rig and trip.
 * Where that is up its probe may have been clipped elsewhere for a look.
 */
export const probeElsewhere: Rule = ({ analysis, report }) => {
  for (const { trip, timeline } of analysis.trips) {
    const { gear } = trip;
    const carriers = [...gear.rigs.values()].filter((rig) => rig.probeAboveBallM !== undefined);
    if (carriers.length === 0) continue;
    const said = new Set<string>();
    for (const event of trip.events) {
      const { line, lineIndex, rig: name } = event;
      if (line.verb !== "probe" || name === undefined || said.has(name)) continue;
      const rig = cableRigOf(gear, name) ?? gear.rigs.get(name);
      if (rig === undefined || rig.probeAboveBallM !== undefined) continue;
      const at = { lineIndex, timeMs: meantMs(trip, event) };
      const names = carriers
        .map((one) => one.name)
        .filter((carrier) => rigStateBefore(timeline, carrier, at).state !== "up");
      if (at.timeMs === null || names.length === 0) continue;
      said.add(name);
      const place = slotPlace(lineIndex, line);
      const fixes = renameFixes(analysis.uri, place, names).map((fix) => ({ ...fix, isPreferred: false }));
      report(PROBE_ELSEWHERE, place, { rig: rig.name, carriers: names }, { fixes });
    }
  }
};
