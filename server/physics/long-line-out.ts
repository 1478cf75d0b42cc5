import { whyNoLongLine } from "./check-long-line.ts";
import { type LineOut, lineOutForDepth, type OutOfReach } from "./line-out.ts";
import { type LongLine, lineInWaterM, towedLineOf } from "./long-line.ts";
import { type Refusal, refuse } from "./refusal.ts";
import type { TowedLine } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/** What to set the counter of a long line to, m. */
interface LongLineOut {
  readonly ok: true;
  readonly outM: number;
}

const SURFACE = { xM: 0, zM: 0 };

/**
 * The counter's reading that brings a long line's lure to a depth (m): so much of the main line as it takes, then
 * backing where the main line ends and there is some. The line's own `outM` is not looked at; `mostOutM` bounds it.
 */
export function longLineOutForDepth(line: LongLine, depthM: number, mostOutM: number): LongLineOut | Refusal {
  const longest = { ...line, outM: mostOutM };
  const why = whyNoLongLine(longest);
  if (why !== undefined) return refuse(why);
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  if (!water.ok) return water;
  const inWaterM = lengthInWaterM(longest, water, depthM);
  if (typeof inWaterM !== "number") return inWaterM;
  const outM = (inWaterM - line.counterOffsetM) / line.counterScale;
  return outM < 0 ? refuse("it runs deeper than that with the counter at zero") : { ok: true, outM };
}

function lengthInWaterM(longest: LongLine, water: Water, depthM: number): number | Refusal {
  const most = lineInWaterM(longest);
  const whole = towedLineOf(longest, water);
  const target = (line: TowedLine, mostM: number): LineOut | OutOfReach =>
    lineOutForDepth(line, water, longest.flow, { node: line.segments.length, depthM }, SURFACE, mostM);
  const onMain = target(withoutTop(whole), most.mainM);
  if (onMain.ok) return onMain.lengthM;
  if (!isOutOfReach(onMain) || most.backingM === 0) return onMain;
  const onBacking = target(whole, most.backingM);
  return onBacking.ok ? most.mainM + onBacking.lengthM : onBacking;
}

/** True where more line than there is would be needed, or no length would do. */
export function isOutOfReach({ why }: Refusal): boolean {
  return why.startsWith("not reachable");
}

/** True where what hangs on the end of the line comes deeper than asked, or out of the water, with none of it out. */
export function isTooShallow({ why }: Refusal): boolean {
  return why.startsWith("what hangs below");
}

/** The line below its topmost segment; what hung at the lower end of that is held by the boat. */
function withoutTop({ segments, bodies }: TowedLine): TowedLine {
  return { segments: segments.slice(1), bodies: bodies.map((body) => ({ ...body, node: body.node - 1 })) };
}
