/** Depths of single lines of a small boat, for the tests. */
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../server/analysis/line-depth.ts";

const FOOT_M = 0.3048;

const BOAT = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit

cable rigger-wire steel diameter 0.9 mm
cable rigger-braid braid diameter 0.9 mm
cable diver-wire steel diameter 0.53 mm
cable lead-27 leadcore diameter 0.85 mm
cable copper-45 copper diameter 0.95 mm
cable weighted-45 weighted diameter 0.6 mm weight 2.1 g/m
cable backing-30 braid diameter 0.3 mm
cable mono-12 mono diameter 0.36 mm
ball round-12 sphere 12 lb
ball round-15 sphere 15 lb
lure glow-spoon spoon 4 in
lure mini-spoon spoon 2.5 in
lure night-plug plug 5 in pulls-down 6 ft
lure green-paddle flasher 8 in
rig P1 downrigger cable rigger-wire ball round-12
rig S1 downrigger cable rigger-braid ball round-12
rig PB leadcore cable lead-27 backing backing-30 leader 30 ft holds 10 colors
rig LB leadcore cable lead-27 backing backing-30 board 90 ft leader 30 ft holds 10 colors
rig CU copper cable copper-45 leader 30 ft
rig WW weighted-wire cable weighted-45
rig FL flat cable mono-12
rig FW flat cable mono-12 leader 6 ft inline-weight 2 oz
rig SD diver cable diver-wire dial 2 leader 8 ft
rig J1 jig cable backing-30
`;

const MORNING = `trip 2031-06-21 "Bright Penny"
05:00 probe P1 speed 2.3 mph temp 50 F
`;

/** The last line of some lines of a day, with more gear where given, and its day. */
export function dayOf(lines: string, gear = ""): { readonly day: TripAnalysis; readonly depth: LineDepth } {
  const parsed = parse(`${BOAT}${gear === "" ? "" : `${gear}\n`}${MORNING}${lines}\n`);
  const issue = parsed.issues.find((one) => one !== null);
  if (issue !== undefined) throw new Error(`a line can't be read: ${JSON.stringify(issue)}`);
  const day = analyzeJournal({ uri: "file:///season/day.trip", parse: parsed }, []).trips[0];
  const depth = day?.depths.at(-1);
  if (day === undefined || depth === undefined) throw new Error("no line with a depth");
  return { day, depth };
}

/** The last line's depth. */
export const depthOf = (lines: string, gear?: string): LineDepth => dayOf(lines, gear).depth;

/** The depth of its lure in feet, or a thrown reason. */
export function lureFtOf(lines: string, gear?: string): number {
  const { lure, why, whyNoLure } = depthOf(lines, gear);
  if (lure === null) throw new Error(why ?? whyNoLure ?? "no lure");
  return lure.depthM / FOOT_M;
}
