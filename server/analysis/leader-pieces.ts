/** Leader, flasher and lure behind a long line, as pieces for the solver. */
import type { Gear, Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { PieceBelow } from "../physics/long-line.ts";
import type { LineInUse, LureForces } from "../physics/lure.ts";
import { forcesOf, lureLineOf, makeOf } from "./downrigger-input.ts";
import { type NoTask, no } from "./no-task.ts";

/** The pieces from the joint down, the lure at their end, and what was taken for granted. */
interface LeaderPieces {
  readonly ok: true;
  readonly pieces: readonly PieceBelow[];
  readonly lure: LureForces;
  readonly assumed: readonly string[];
}

/**
 * With a flasher on, the line's own `leader` is the one between flasher and lure, and the rig's runs to the
 * flasher; without one it takes the place of the rig's.
 */
export function leaderPieces(gear: Gear, rig: Rig, setting: Setting): LeaderPieces | NoTask {
  const line = leaderLineOf(gear, rig);
  if (!line.ok) return line;
  const hasFlasher = setting.flasher !== undefined;
  const firstM = hasFlasher ? rig.leaderM : (setting.leaderM ?? rig.leaderM);
  const first: PieceBelow = { lengthM: firstM ?? 0, line: line.line };
  const second: PieceBelow = { lengthM: setting.leaderM ?? 0, line: line.line };
  const pieces = hasFlasher ? [{ ...first, end: flasherForces(gear, setting.flasher) }, second] : [first];
  const known = gear.lures.get(setting.lure ?? "");
  return {
    ok: true,
    pieces: hasFlasher || first.lengthM !== 0 ? pieces : [],
    lure: forcesOf(known, line.line),
    assumed: known === undefined ? [whatLure(rig, setting)] : [],
  };
}

function whatLure(rig: Rig, { lure }: Setting): string {
  return lure === undefined
    ? `${rig.name}'s lure isn't stated and is taken as a spoon`
    : `${lure} isn't in the gear book and is taken as a spoon`;
}

function leaderLineOf(gear: Gear, rig: Rig): { ok: true; line: LineInUse } | NoTask {
  if (rig.leaderLine === undefined) return lureLineOf(gear, rig);
  const cable = gear.cables.get(rig.leaderLine);
  if (cable === undefined) {
    const lack = { at: "name", of: "rig", name: rig.name, word: "leader-line" } as const;
    return no(`leader line ${rig.leaderLine} isn't in the gear book`, lack);
  }
  const made = makeOf(cable, undefined);
  return made.ok
    ? { ok: true, line: { make: made.make, dragMultiplier: DEFAULTS.lineDragMultiplier.value } }
    : made;
}

/** A flasher or paddle only holds back; it is taken to weigh nothing in the water. */
function flasherForces(gear: Gear, name: string | undefined): LureForces {
  const lengthM = gear.lures.get(name ?? "")?.lengthM ?? DEFAULTS.flasherLengthM.value;
  return { weightN: 0, liftAreaM2: 0, dragAreaM2: DEFAULTS.flasherDragShare.value * lengthM * lengthM };
}
