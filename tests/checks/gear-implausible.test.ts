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
  lure glow-spoon spoon -4 in -2 oz
                        ^^^^^ gear-implausible length -4 in is doubtful: lures are up to 24 in long. Was 4 in meant?
                              ^^^^^ gear-implausible weight -2 oz is doubtful: lures weigh up to 5 lb. Was 2 oz meant?
  ball egg sphere 12 lb drag 0
                        ^^^^^^ gear-implausible drag 0 is doubtful: balls drag 0.2 to 10 times as much as a smooth sphere.
  cable wire steel diameter 0.9 mm weight 0 g/m
                                   ^^^^^^^^^^^^ gear-implausible weight 0 g/m is doubtful: lines weigh 0.01 to 100 g/m.
  line core-27 leadcore diameter 0.85 mm core 0.9 mm
                                         ^^^^^^^^^^^ gear-implausible A core of 0.9 mm doesn't fit into a line of 0.85 mm.
  `,
  `
  rig A1 flat boom -4 ft board 900 ft leader -30 ft inline-weight 0 oz tip -4 ft pull 300 lbf
              ^^^^^^^^^^ gear-implausible boom -4 ft is doubtful: booms are up to 15 ft long. Was 4 ft meant?
                         ^^^^^^^^^^^^ gear-implausible board 900 ft is doubtful: boards run up to 400 ft to the side. Was 900 in meant?
                                      ^^^^^^^^^^^^^ gear-implausible leader -30 ft is doubtful: leaders are up to 200 ft long. Was 30 ft meant?
                                                    ^^^^^^^^^^^^^^^^^^ gear-implausible inline-weight 0 oz is doubtful: in-line weights are 0.1 to 160 oz.
                                                                       ^^^^^^^^^ gear-implausible
                                                                                 ^^^^^^^^^^^^ gear-implausible pull 300 lbf is doubtful: rods pull up to 50 lbf.
  rig A2 leadcore holds 0 colors
                  ^^^^^^^^^^^^^^ gear-implausible holds 0 colors is doubtful: rigs hold 10 to 6000 ft.
  `,
  `
  rig A1 downrigger
  calibrate A1 drag 0 counter-scale 20 counter-offset -500 ft
               ^^^^^^ gear-implausible drag 0 is doubtful: lines drag 0.2 to 10 times as much as the plain law has it.
                      ^^^^^^^^^^^^^^^^ gear-implausible counter-scale 20 is doubtful: a foot on the counter is 0.5 to 2 ft of line.
                                       ^^^^^^^^^^^^^^^^^^^^^^ gear-implausible
  2031-06-01 calibrate A1 drag 1 drag-error -1 drag-scale-link 9
                                 ^^^^^^^^^^^^^ gear-implausible drag-error -1 is doubtful: up to 5 is believed.
                                               ^^^^^^^^^^^^^^^^^ gear-implausible drag-scale-link 9 is doubtful: -1 to 1 is believed.
  2031-07-01 calibrate A1 lift-area 0 cm2 drag-area -5 cm2
                          ^^^^^^^^^^^^^^^ gear-implausible lift-area 0 cm2 is doubtful: divers have 1 to 5000 cm2.
                                          ^^^^^^^^^^^^^^^^ gear-implausible drag-area -5 cm2 is doubtful: divers have 1 to 5000 cm2. Was 5 cm2 meant?
  `,
  `
  boat "Dory"
    units ft mph F lb in
    sounder -90 ft
            ^^^^^^ gear-implausible below -90 ft is doubtful: the face of a sounder lies up to 20 ft below the water line.
    variation 900 deg
              ^^^^^^^ gear-implausible east 900 deg is doubtful: the needle is off by -90 to 90 deg.
    threshold reading-stale -30 min
                            ^^^^^^^ gear-implausible reading-stale -30 min can't be: a threshold is zero or more. The default holds.
    threshold coldest-water -1 C
    beam -9 ft
         ^^^^^ gear-implausible wide -9 ft is doubtful: boats are 3 to 60 ft wide. Was 9 ft meant?
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
