/** How the speed on top and the one at the probe were joined, in the captain's plain words. */
import type { LineDepth } from "../analysis/line-depth.ts";
import type { SpeedUsed } from "../analysis/speed-used.ts";
import { streamOf } from "../analysis/stream-used.ts";
import { lengthWords, speedWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

const STRAIGHT = "straight from one to the other and the same below";

/** One sentence; none where one speed holds at every depth. */
export function streamSentence(gear: Gear, speed: SpeedUsed): string[] {
  const stream = streamOf(speed);
  const { onTop, layer } = speed;
  if (stream.kind === "uniform" || onTop === undefined) return [];
  if (layer === undefined) return [`Taken as ${STRAIGHT}: no thermocline is known.`];
  const [top, deep] = [speedWords(gear, onTop.value), speedWords(gear, speed.value)];
  const [from, to] = [lengthWords(gear, stream.fromM), lengthWords(gear, stream.toM)];
  const at = thermoclineWords(gear, speed);
  if (stream.kind === "two-layers")
    return [`Taken as ${top} above ${at}, ${deep} below; it changes between ${from} and ${to}.`];
  const probe = speed.rig === undefined ? "The probe" : `${speed.rig}'s probe`;
  if (stream.kind === "above-layer")
    return [`${probe} hung above ${at}, so it is taken as ${STRAIGHT}, where nothing was read.`];
  return [
    `${probe} hung in the layer of ${at}, so it is taken as ${top} down to ${from}, changing to ${deep} at the probe, and the same below, where nothing was read.`,
  ];
}

function thermoclineWords(gear: Gear, { layer }: SpeedUsed): string {
  return layer === undefined ? "" : `the thermocline at ${lengthWords(gear, layer.thermoclineM)}`;
}

/** The same for a table of lines, each way once with the lines (from 1) that took it. */
export function streamNotes(gear: Gear, depths: readonly LineDepth[]): string[] {
  const lines = new Map<string, number[]>();
  for (const { speed, event, ball, lure } of depths) {
    const way = speed === undefined || (ball ?? lure) === null ? undefined : wayWords(gear, speed);
    if (way !== undefined) lines.set(way, [...(lines.get(way) ?? []), event.lineIndex + 1]);
  }
  return [...lines].map(([way, on]) => `${on.length === 1 ? "Line" : "Lines"} ${on.join(", ")}: ${way}.`);
}

function wayWords(gear: Gear, speed: SpeedUsed): string | undefined {
  const { kind } = streamOf(speed);
  const at = thermoclineWords(gear, speed);
  if (kind === "uniform") return undefined;
  if (kind === "straight") return "straight from the speed on top to the probe's; no thermocline is known";
  if (kind === "above-layer") return `straight from the speed on top to the probe's, which hung above ${at}`;
  if (kind === "in-layer") return `the speed on top holds down to the layer of ${at}, where the probe hung`;
  return `the speed on top holds above ${at}, the probe's below`;
}
