import { test } from "vitest";
import { checkFindings } from "./check-findings.ts";

test.each([
  `
  boat "Tin Cup"
  rig all downrigger
      ^^^ reserved-name No rig can be called all: in a log it means every rig in the water.
  rig unknown downrigger
      ^^^^^^^ reserved-name No rig can be called unknown: in a log it means that nobody saw which rod it was.
  lure none spoon
       ^^^^ reserved-name No lure can be called none: in a log it means that there is none on.
  lure all spoon
  `,
])("%s", (source) => {
  checkFindings(source);
});
