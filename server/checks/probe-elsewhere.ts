import { cableRigOf } from "../model/trip.ts";
import { PROBE_ELSEWHERE } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { renameFixes } from "./edits.ts";
import { slotPlace } from "./places.ts";

/** Flags a probe that is read on a rig without one where others have one, once for a rig and trip. */
export const probeElsewhere: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const { gear } = trip;
    const carriers = [...gear.rigs.values()].filter((rig) => rig.probeAboveBallM !== undefined);
    if (carriers.length === 0) continue;
    const said = new Set<string>();
    for (const { line, lineIndex, rig: name } of trip.events) {
      if (line.verb !== "probe" || name === undefined || said.has(name)) continue;
      const rig = cableRigOf(gear, name) ?? gear.rigs.get(name);
      if (rig === undefined || rig.probeAboveBallM !== undefined) continue;
      said.add(name);
      const names = carriers.map((one) => one.name);
      const place = slotPlace(lineIndex, line);
      const fixes = renameFixes(analysis.uri, place, names).map((fix) => ({ ...fix, isPreferred: false }));
      report(PROBE_ELSEWHERE, place, { rig: rig.name, carriers: names }, { fixes });
    }
  }
};
