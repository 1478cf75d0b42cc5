/** A stacked rod that goes in while the ball it is clipped above is up: it has nothing to hang from. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { outsideTrip } from "../analysis/outside-trip.ts";
import { rigStateBefore } from "../model/rig-states.ts";
import { countUpTo } from "../model/sorted.ts";
import { isOutOfOrder, meantMs } from "../model/time-order.ts";
import { cableRigOf, type TripEvent } from "../model/trip.ts";
import { NOT_IN_WATER } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { writtenName } from "./edits.ts";
import { insertLine } from "./move-lines.ts";
import { isSetUnread } from "./not-in-water.ts";
import { slotPlace, verbPlace } from "./places.ts";
import { stampText } from "./stamp-edits.ts";

const PUTS_IN = new Set(["set", "again"]);
/** The ball may be written a little below the rods on it (judgement). */
const SOON_MS = 15 * 60_000;

/** Flags it once for each ball, until the ball is down. */
export const ballUp: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const outside = outsideTrip(day.trip);
    const said = new Set<string>();
    const putIn = putInLater(day);
    for (const event of day.timeline.ordered) {
      if (!PUTS_IN.has(event.line.verb)) continue;
      if (event.rig !== undefined) said.delete(event.rig);
      const up = outside.has(event.lineIndex) ? undefined : ballUpAt(day, event, putIn);
      if (up === undefined || said.has(up.ball)) continue;
      if (isSetUnread(analysis, day, event.lineIndex, up.ball)) continue;
      said.add(up.ball);
      const { ball, pull } = up;
      const data = {
        state: "ball-up",
        rig: event.rig ?? "",
        ball,
        since: pull?.line.clock ?? undefined,
      } as const;
      const line = [stampText(event.line), pull === undefined ? "set" : "again", writtenName(ball)];
      const text = line.filter((part) => part !== "").join(" ");
      const edits = [insertLine(analysis, event.lineIndex, text)];
      report(NOT_IN_WATER, slotPlace(event.lineIndex, event.line), data, {
        related:
          pull === undefined
            ? []
            : [{ uri: analysis.uri, message: DAY_RELATED.cameOut, ...verbPlace(pull.lineIndex, pull.line) }],
        fixes: [{ title: DAY_FIXES.addAbove(text), edits, isPreferred: true }],
      });
    }
  }
};

interface BallUp {
  readonly ball: string;
  /** The line that took it up; undefined where it never was down. */
  readonly pull: TripEvent | undefined;
}

/** Answers whether a rig is put in within a quarter of an hour of a minute, or at some time that isn't written. */
type PutInSoon = (rig: string, timeMs: number) => boolean;

function putInLater({ trip }: TripAnalysis): PutInSoon {
  const times = new Map<string, number[]>();
  for (const event of trip.events) {
    if (event.rig === undefined || !PUTS_IN.has(event.line.verb)) continue;
    const own = times.get(event.rig) ?? [];
    own.push(meantMs(trip, event) ?? Number.POSITIVE_INFINITY);
    times.set(event.rig, own);
  }
  for (const own of times.values()) own.sort((a, b) => a - b);
  return (rig, timeMs) => {
    const own = times.get(rig) ?? [];
    const next = own[countUpTo(own, timeMs - 1, (ms) => ms)] ?? Number.NaN;
    return next - timeMs <= SOON_MS || own.at(-1) === Number.POSITIVE_INFINITY;
  };
}

function ballUpAt({ trip, timeline }: TripAnalysis, event: TripEvent, putIn: PutInSoon): BallUp | undefined {
  const { rig, lineIndex, instant } = event;
  const ball = rig === undefined ? undefined : cableRigOf(trip.gear, rig)?.name;
  const timeMs = instant === null ? null : meantMs(trip, event);
  if (ball === undefined || ball === rig || timeMs === null) return undefined;
  if (isOutOfOrder(trip, ball) || isOutOfOrder(trip, rig ?? "")) return undefined;
  const { state, because } = rigStateBefore(timeline, ball, { lineIndex, timeMs });
  if (state !== "up") return undefined;
  return putIn(ball, timeMs) ? undefined : { ball, pull: because };
}
