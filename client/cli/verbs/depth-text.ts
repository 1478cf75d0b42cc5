/** The depths of a trip for people: a table, or a block a line where the screen is narrow. */
import { findUnit } from "../../../grammar/units.ts";
import type { TripAnalysis } from "../../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../../server/analysis/line-depth.ts";
import { lengthWords } from "../../../server/model/figures.ts";
import type { Gear } from "../../../server/model/gear-types.ts";
import { placeCell } from "../../../server/reports/depth-sentences.ts";
import { streamNotes } from "../../../server/reports/stream-sentence.ts";
import { clockOf, shownDepths } from "../depth-lines.ts";
import { printable } from "../render/printable.ts";
import { type Column, type Row, table } from "../render/table.ts";
import type { Paint } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import { tripHeading } from "../trip-heading.ts";

/** How it may look. */
export interface Look {
  readonly width: number;
  readonly paint: Paint;
}

const COLUMNS: readonly Column[] = [
  { head: "line", side: "right" },
  { head: "time" },
  { head: "rig" },
  { head: "out", side: "right" },
  { head: "ball down" },
  { head: "behind", side: "right" },
  { head: "lure down" },
];
/** Rooms narrower than this can't hold a reason beside the line. */
const NARROW = 64;

/** A trip's heading and lines. */
export function tripDepthLines(shown: string, day: TripAnalysis, { width, paint }: Look): string[] {
  const heading = tripHeading(shown, day, width, paint);
  const depths = shownDepths(day);
  if (depths.length === 0) return [...heading, "No line was set."];
  const cells = depths.map((depth) => lineCells(day, depth));
  const rows =
    width < NARROW
      ? undefined
      : table(
          COLUMNS,
          cells.map((one) => tableRow(one)),
          width,
          paint.faint,
        );
  const notes = streamNotes(day.trip.gear, day.depths).flatMap((note) => wrap(printable(note), width, 2));
  return [...heading, ...(rows ?? cells.flatMap((one) => block(one, width, paint))), ...notes];
}

interface LineCells {
  readonly line: string;
  readonly time: string;
  readonly rig: string;
  readonly out: string;
  readonly ball: string | undefined;
  readonly behind: string;
  readonly lure: string | undefined;
  readonly why: string;
}

function lineCells(day: TripAnalysis, depth: LineDepth): LineCells {
  const { gear, zone } = day.trip;
  const { event, ball, lure, weight } = depth;
  const first = ball ?? weight ?? lure;
  const clock = clockOf(event, zone);
  return {
    line: String(event.lineIndex + 1),
    time: clock === null ? "" : `${event.line.approx ? "~" : ""}${clock}`,
    rig: printable(depth.rig),
    out: outWords(gear, depth),
    ball: ball === null ? weightCell(gear, depth) : placeCell(gear, ball),
    behind: first === null || first.onBottom ? "" : lengthWords(gear, first.behindM),
    lure: lure === null ? undefined : placeCell(gear, lure),
    why: printable(depth.why ?? depth.whyNoLure ?? ""),
  };
}

/** A diver or in-line weight stands where a ball would; nothing where the line has neither. */
function weightCell(gear: Gear, { weight, weightIs }: LineDepth): string | undefined {
  return weight === null ? undefined : `${weightIs} ${placeCell(gear, weight)}`;
}

/** What the counter says; leadcore is counted in colors, a stacked rod by its clip above the ball. */
function outWords(gear: Gear, { rig, setting }: LineDepth): string {
  const { outM, aboveM } = setting;
  if (outM === undefined) return aboveM === undefined ? "" : `${lengthWords(gear, aboveM)} up`;
  const color = findUnit("colors");
  if (gear.rigs.get(rig)?.kind !== "leadcore" || color === undefined) return lengthWords(gear, outM);
  const colors = Number((outM / color.factor).toFixed(1));
  return `${colors} ${colors === 1 ? "color" : "colors"}`;
}

function tableRow({ line, time, rig, out, ball, behind, lure, why }: LineCells): Row {
  const start = [line, time, rig, out];
  if (lure !== undefined) return { cells: [...start, ball ?? "", behind, lure] };
  return ball === undefined
    ? { cells: start, rest: `no depth: ${why}` }
    : { cells: [...start, ball, behind], rest: why };
}

function block(
  { line, time, rig, out, ball, behind, lure, why }: LineCells,
  width: number,
  paint: Paint,
): string[] {
  const head = [time, paint.strong(rig), out === "" ? "" : `${out}${out.endsWith(" up") ? "" : " out"}`];
  const back = behind === "" ? "" : `, ${behind} behind`;
  const said =
    ball === undefined
      ? [lure === undefined ? `no depth: ${why}` : `lure ${lure}${back}`]
      : [
          `${ball.startsWith("diver") || ball.startsWith("weight") ? "" : "ball "}${ball}${back}`,
          lure === undefined ? `no lure depth: ${why}` : `lure ${lure}`,
        ];
  return [
    `${head.filter((part) => part !== "").join("  ")}  ${paint.faint(`line ${line}`)}`,
    ...said.flatMap((text) => wrap(`  ${text}`, width, 4)),
  ];
}
