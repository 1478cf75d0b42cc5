/** Which rig a line is likeliest about: the order in which completion offers them. */
import type { TripEvent } from "../model/trip.ts";

/** Verbs after which a rod does not fish until it is put back. */
const INTERRUPTING = new Set(["strike", "catch", "lost", "broke", "tangle"]);
/** Lines that answer an interruption. */
const ANSWERING = new Set(["again", "catch", "lost"]);

/**
 * Rigs for a line with that verb: those that wait for it first, then those in the water, then the others; for `set`
 * those not in the water first. Within a group the order given.
 */
export function rigOrder(
  rigs: readonly string[],
  verb: string,
  before: Iterable<Pick<TripEvent, "rig" | "line">>,
): string[] {
  const wet = new Set<string>();
  const waiting = new Set<string>();
  for (const { line, rig } of before) {
    if (rig === undefined) continue;
    if (line.verb === "pull") {
      for (const set of [wet, waiting]) rig === "all" ? set.clear() : set.delete(rig);
    } else if (line.verb === "set" || line.verb === "again" || line.verb === "change") {
      wet.add(rig);
      waiting.delete(rig);
    } else if (INTERRUPTING.has(line.verb)) waiting.add(rig);
  }
  if (verb === "set") return [...rigs.filter((rig) => !wet.has(rig)), ...rigs.filter((rig) => wet.has(rig))];
  const isFirst = (rig: string): boolean => ANSWERING.has(verb) && waiting.has(rig);
  const rank = (rig: string): number => (isFirst(rig) ? 0 : wet.has(rig) ? 1 : 2);
  return rigs
    .map((rig) => [rig, rank(rig)] as const)
    .sort((a, b) => a[1] - b[1])
    .map(([rig]) => rig);
}
