/** What the trade expects of long lines, as bands around the model with its default drag; the rules have no source. */
import { describe } from "vitest";
import type { LongLine } from "../../server/physics/long-line.ts";
import { lureForces } from "../../server/physics/lure.ts";
import { DIVER, lineInUse, longLine, lureFt } from "../physics/long-line-maker.ts";
import { checkBands } from "./reference-rows.ts";

const PRACTICE = "common practice";
const LEAD = lineInUse("leadcore", 0.85);
const COPPER = lineInUse("copper", 0.95);
const MONO = lineInUse("mono", 0.36);
const FLUORO_LEADER = { below: [{ lengthM: 9.144, line: lineInUse("fluorocarbon", 0.36) }] };

describe("leadcore sinks about 5 ft for each color near 2 mph", () => {
  checkBands(
    [3, 5, 8, 10].map((colors) => ({
      name: `${colors} colors, ft a color`,
      input: colors,
      low: 4.5,
      high: 9,
      source: `${PRACTICE}; few colors share out what the leader sinks by itself`,
    })),
    (colors) => lureFt(longLine(LEAD, 30 * colors, 2, FLUORO_LEADER)) / colors,
  );
});

describe("copper goes about 1 ft down for each 4 to 5 ft out near 2 mph", () => {
  checkBands(
    [100, 200, 300].map((outFt) => ({
      name: `${outFt} ft of the middle weight, ft out for each ft down`,
      input: outFt,
      low: 3,
      high: 5,
      source: PRACTICE,
    })),
    (outFt) => outFt / lureFt(longLine(COPPER, outFt, 2)),
  );
});

const flat = (change: Partial<LongLine>): LongLine => longLine(MONO, 100, 2, { below: [], ...change });

describe("a flat line runs in the upper few feet, deeper with a plug or a sinker", () => {
  checkBands(
    [
      { name: "spoon on 100 ft, ft", input: flat({}), low: 2, high: 12, source: PRACTICE },
      {
        name: "plug on 100 ft, ft",
        input: flat({ lure: lureForces("plug") }),
        low: 5,
        high: 25,
        source: PRACTICE,
      },
      {
        name: "an ounce of lead on 100 ft, ft",
        input: flat({ joint: { weightN: 0.25, dragAreaM2: 1.3e-4, liftAreaM2: 0 } }),
        low: 5,
        high: 25,
        source: PRACTICE,
      },
    ],
    lureFt,
  );
});

describe("a diver goes down half a foot or a little more for each foot of wire, whatever the speed", () => {
  checkBands(
    [2, 2.5, 3].map((speedMph) => ({
      name: `150 ft at ${speedMph} mph, ft down for each ft out`,
      input: speedMph,
      low: 0.4,
      high: 0.8,
      source: "common practice, from memory; areas of a hand-sized planer",
    })),
    (speedMph) => lureFt(longLine(lineInUse("steel", 0.53), 150, speedMph, { joint: DIVER })) / 150,
  );
});
