/** What of a downrigger's rods and ball the captain doesn't know, drawn as docs/physics.md lists it. */
import { DEFAULTS } from "../../server/physics/defaults.ts";
import type { Downrigger } from "../../server/physics/downrigger.ts";

/** How a boat truly is: the drag of its thin lines (natural logarithm), and its ball's mass to the stated one. */
export interface DrawnBoat {
  readonly lnLines: number;
  readonly ballScale: number;
}

/** The downrigger with thin lines, ball and the rods' pull as they truly are. */
export function withDrawnRods(
  rig: Downrigger,
  { lnLines, ballScale }: DrawnBoat,
  normal: () => number,
): Downrigger {
  const lines = Math.exp(lnLines);
  const rods = rig.rods.map((one) => ({
    ...one,
    lureLine: { ...one.lureLine, dragMultiplier: one.lureLine.dragMultiplier * lines },
    ...(one.rodLine === undefined
      ? {}
      : {
          rodLine: {
            ...one.rodLine,
            dragMultiplier: one.rodLine.dragMultiplier * lines,
            tipTensionN: Math.max(0, DEFAULTS.rodPullN.value + DEFAULTS.rodPullN.sd * normal()),
          },
        }),
  }));
  return { ...rig, rods, ball: { ...rig.ball, massKg: rig.ball.massKg * ballScale } };
}
