import { test } from "vitest";
import { checkFindings } from "./check-findings.ts";

test.each([
  `
  boat "Tin Cup"
  rig A1 downrigger
  rig A2 stacked A1
  rig A3 stacked A2
  2031-08-01 rig A1 diver
  `,
  `
  boat "Tin Cup"
  rig A1 stacked A1
         ^^^^^^^^^^ stacked-in-a-ring A1 is stacked on itself; name the rig whose cable it is clipped to.
  `,
  `
  boat "Tin Cup"
  rig A1 stacked A2
         ^^^^^^^^^^ stacked-in-a-ring A1 is stacked on A2, that on A3, that on A1 again: one of them has to have a cable of its own.
  rig A2 stacked A3
         ^^^^^^^^^^ stacked-in-a-ring
  rig A3 stacked A1
         ^^^^^^^^^^ stacked-in-a-ring
  rig A4 stacked A3
  `,
  `
  boat "Tin Cup"
  rig A1 downrigger
  rig A2 stacked A1
  2031-08-01 rig A1 stacked A2
                    ^^^^^^^^^^ stacked-in-a-ring
  2031-08-02 rig A1 downrigger
  `,
])("%s", (source) => {
  checkFindings(source);
});
