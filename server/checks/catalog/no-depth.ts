/** The check of whether there is a depth. */
import { check } from "../check.ts";

const since = "0.1.0";

/** A line without a depth. */
export const NO_DEPTH = check<
  { kind: "why"; why: string } | { kind: "bare"; rigs: readonly string[]; boat: string }
>({
  slug: "no-depth",
  severities: ["information", "hint"],
  summary: "A line's depth can't be computed: its gear, or the line itself, doesn't say enough.",
  quietWhen:
    "no speed was read or the line has no clock, the rod is cast or jigged, a diver was never measured, the line states nothing but its rig, something else is said of the very number or name, or it was said on that trip",
  isDoubt: true,
  isFixable: true,
  since,
  message: (data) =>
    data.kind === "why"
      ? `No depth: ${data.why}.`
      : `No depth for ${data.rigs.join(", ")}: the gear of "${data.boat}" has no cable or line to reckon with (cable rigger-wire steel diameter 0.9 mm, and its name on the rig line).`,
});
