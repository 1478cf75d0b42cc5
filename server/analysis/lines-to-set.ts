/** The lines a let-out table has columns for: the book's rigs with a lure thought of, or a trip's as they are rigged. */
import type { Gear, Rig } from "../model/gear-types.ts";
import { NO_SETTING, type Setting } from "../model/setting.ts";
import type { CableSpread, Timeline } from "../model/timeline.ts";
import { cableRigOf, type Trip } from "../model/trip.ts";
import type { LineToSet } from "./let-out.ts";

/** What to hang on every rig. */
export type Rigging = Partial<Pick<Setting, "lure" | "setbackM" | "aboveM">>;

/** The rigs of a book that have a place in the table when none are named: no jigs, stacked rods where their clip is known. */
export function usualRigs(gear: Gear, { aboveM }: Rigging): Rig[] {
  return [...gear.rigs.values()].filter(
    ({ kind, releaseAboveBallM }) =>
      kind !== "jig" && (kind !== "stacked" || (aboveM ?? releaseAboveBallM) !== undefined),
  );
}

/** A rig that nobody has set, alone on its cable. */
export function imaginedLine(gear: Gear, rig: Rig, rigging: Rigging): LineToSet {
  const cableRig = cableRigOf(gear, rig.name);
  const { aboveM, ...onAny } = rigging;
  const isStacked = cableRig !== undefined && cableRig !== rig;
  const clipM = aboveM ?? rig.releaseAboveBallM;
  const setting: Setting = {
    ...NO_SETTING,
    ...onAny,
    ...(isStacked && clipM !== undefined ? { aboveM: clipM } : {}),
  };
  if (cableRig === undefined) return { gear, rig, setting, rods: undefined };
  const bare = { setting: NO_SETTING, isClipped: false };
  const rods: CableSpread = new Map([[cableRig.name, bare]]).set(rig.name, { setting, isClipped: true });
  return { gear, rig, setting, rods };
}

/** The rigs a trip has set down to a line of the file, as they were last rigged; the book's where it has set none. */
export function linesOfTrip({ gear }: Trip, timeline: Timeline, lineIndex: number): LineToSet[] {
  const lines = new Map<string, LineToSet>();
  const spreads = new Map<string, CableSpread>();
  for (const event of timeline.ordered) {
    const rig = gear.rigs.get(event.rig ?? "");
    const setting = timeline.settingAfter.get(event.lineIndex);
    if (event.lineIndex > lineIndex || rig === undefined || setting === undefined || rig.kind === "jig")
      continue;
    const rods = timeline.spreadAfter.get(event.lineIndex);
    const cable = cableRigOf(gear, rig.name)?.name;
    if (cable !== undefined && rods !== undefined) spreads.set(cable, rods);
    lines.set(rig.name, { gear, rig, setting, rods });
  }
  if (lines.size === 0) return usualRigs(gear, {}).map((rig) => imaginedLine(gear, rig, {}));
  return [...lines.values()].map((line) => {
    const cable = cableRigOf(gear, line.rig.name)?.name;
    return cable === undefined ? line : { ...line, rods: spreads.get(cable) ?? line.rods };
  });
}
