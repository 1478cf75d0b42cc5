import { describe, test } from "vitest";
import { checkFindings, checkFix } from "./check-findings.ts";

const BARE = { books: {} };
const BOAT = 'boat "Tin Cup"\n  units ft mph F lb in\n';

test.each([
  "cable wire steel diameter 0.1 mm",
  "cable wire steel diameter 3 mm",
  "ball egg sphere 30 lb",
  "ball egg sphere 8 oz",
  "lure long-tail flasher 24 in",
  "lure long-tail flasher 30 in sure",
  "rig A1 downrigger boom 15 ft release 30 ft probe 30 ft",
  "band coho 0 to 14 C",
  "band coho 32 to 90 F",
  "band coho 52 to 45 F sure",
  "lure deep-plug plug pulls-down 40 to 60 ft",
  "ball egg 120 lb sure",
  "cable wire steel diameter 0.9 ft sure",
  // Without a unit nothing can be doubted.
  `
  boat "Dory"
  lure deep-plug plug length 4000
                             ^^^^ unit-missing
  `,
  `
  cable wire steel diameter 0.9 ft
                   ^^^^^^^^^^^^^^^ gear-implausible diameter 0.9 ft is doubtful: cables are 0.1 to 3 mm thick. Was 0.9 mm meant?
  cable core-27 leadcore core 0.02 mm
                         ^^^^^^^^^^^^ gear-implausible core 0.02 mm is doubtful: the lead of a leadcore line is 0.1 to 3 mm thick. Was 0.02 in meant?
  line twine mono diameter 9 mm
                  ^^^^^^^^^^^^^ gear-implausible diameter 9 mm is doubtful: cables are 0.1 to 3 mm thick.
  cable rope braid diameter 9 mm
                   ^^^^^^^^^^^^^ gear-implausible diameter 9 mm is doubtful: cables are 0.1 to 3 mm thick.
  `,
  `
  ball egg sphere 120 lb
                  ^^^^^^ gear-implausible weight 120 lb is doubtful: balls are 0.5 to 30 lb. Was 12.0 lb meant?
  ball pea sphere weight 0.25
                  ^^^^^^^^^^^ gear-implausible weight 0.25 lb is doubtful: balls are 0.5 to 30 lb. Was 0.25 kg meant?
  `,
  `
  lure rope-fly fly 25
                    ^^ gear-implausible length 25 in is doubtful: lures are up to 24 in long. Was 25 cm meant?
  lure deep-plug plug pulls-down 40 to 70 ft
                      ^^^^^^^^^^^^^^^^^^^^^^ gear-implausible pulls-down 40 to 70 ft is doubtful: lures dive 60 ft at most. Was 40 to 70 in meant?
  `,
  `
  rig A1 downrigger boom 20 release 31 ft probe 40 ft
                    ^^^^^^^ gear-implausible boom 20 ft is doubtful: booms are up to 15 ft long. Was 20 in meant?
                            ^^^^^^^^^^^^^ gear-implausible release 31 ft is doubtful: releases are clipped up to 30 ft above the ball. Was 31 in meant?
                                          ^^^^^^^^^^^ gear-implausible probe 40 ft is doubtful: probes ride up to 30 ft above the ball. Was 40 in meant?
  `,
  `
  band coho 10 to 14 F
            ^^^^^^^^^^ gear-implausible temp 10 to 14 F is doubtful: the water that fish are looked for in is 32 to 90 F. Was 10 to 14 C meant?
  band chinook 52 to 45 F
               ^^^^^^^^^^ gear-implausible The colder end of a band comes first: 45 to 52 F.
  `,
])("%s", (source) => {
  checkFindings(BOAT + dedented(source), BARE);
});

/** Without the indent of the list above. */
function dedented(source: string): string {
  return source.replaceAll(/^ {2}/gmu, "").replace(/^\n/u, "");
}

describe("fixes", () => {
  test.each([
    ["cable wire steel diameter 0.9 ft", "cable wire steel diameter 0.9 mm"],
    ["ball egg sphere 120 lb", "ball egg sphere 12.0 lb"],
    ["lure rope-fly fly 25", "lure rope-fly fly 25 cm"],
    ["band coho 10 to 14 F", "band coho 10 to 14 C"],
    ["band chinook 52 to 45", "band chinook 45 to 52 F"],
  ])("%s → %s", (before, after) => {
    checkFix("gear-implausible", BOAT + before, BOAT + after, BARE);
  });
});
