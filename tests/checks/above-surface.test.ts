import { test } from "vitest";
import { checkTrolling } from "./check-day.ts";

test.each([
  "05:10 set P1U above 20 ft setback 20 ft lure mini-spoon",
  // How much is out isn't stated.
  `
  05:10 set S1 lure mini-spoon
            ^^ no-depth
  `,
  "05:10 move P1 out 0 ft sure",
  // It was pulled, and no longer hangs on the cable.
  "05:10 set P1U above 20 ft setback 20 ft lure mini-spoon\n05:20 pull P1U\n05:30 move P1 out 15 ft",
  `
  05:10 move P1 out 0 ft
                ^^^^^^^^ above-surface With 0 ft out nothing is below the surface; write pull when it comes out.
  `,
  `
  05:10 set SD out -40 ft
               ^^^^^^^^^^ above-surface
  `,
  `
  05:10 set P1U above 80 ft setback 20 ft lure mini-spoon
                ^^^^^^^^^^^ above-surface P1U is clipped 80 ft above the ball, with 60 ft of cable out: it would be 20 ft above the water.
  05:12 pull P1U
  `,
  // Raising the ball brings the upper rod out.
  `
  05:10 set P1U above 20 ft setback 20 ft lure mini-spoon
  05:20 move P1 out 20 ft
                ^^^^^^^^^ above-surface P1U is clipped 20 ft above the ball, with 20 ft of cable out: it would be at the surface.
  `,
])("%s", (source) => {
  checkTrolling(source);
});
