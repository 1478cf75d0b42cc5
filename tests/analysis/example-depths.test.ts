/** Every line of the example journal that puts something in the water has a depth, or a reason that can be acted on. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";

const FOLDER = join(import.meta.dirname, "../../examples/bright-penny");
const book = { uri: "file:///bright-penny.gear", parse: read("bright-penny.gear") };

function read(name: string) {
  return parse(readFileSync(join(FOLDER, name), "utf8"));
}

const trips = readdirSync(join(FOLDER, "trips"));

/** What the example lacks on purpose, so that the reason is to be seen. */
const REASONS = /^(?:[PS]D's diver was never measured; |J1 is cast or jigged)/u;

describe.each(trips)("%s", (name) => {
  const journal = analyzeJournal({ uri: `file:///trips/${name}`, parse: read(`trips/${name}`) }, [book]);
  const depths = journal.trips.flatMap((day) => day.depths);

  test.each(depths.map((depth) => [depth.event.line.raw.trim(), depth] as const))("%s", (_line, depth) => {
    if (depth.why !== null) {
      expect(depth.why).toMatch(REASONS);
      return;
    }
    const place = depth.lure ?? depth.ball;
    if (place === null) throw new Error("neither depth nor reason");
    for (const value of [place.depthM, place.lowM, place.highM, place.behindM, place.depthPerOut])
      expect(Number.isFinite(value)).toBe(true);
    expect(place.depthM).toBeGreaterThan(0);
    expect(place.lowM).toBeLessThanOrEqual(place.depthM);
    expect(place.highM).toBeGreaterThanOrEqual(place.depthM);
    const { outM } = depth.setting;
    if (depth.cableRig === undefined && outM !== undefined) expect(place.depthM).toBeLessThan(outM);
  });
});
