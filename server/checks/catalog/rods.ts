/** Checks of what is in the water. */
import { check } from "../check.ts";
import { countWords } from "../words.ts";

const since = "0.1.0";

/** A line about a rig that isn't fishing. */
export const NOT_IN_WATER = check<
  | {
      rig: string;
      verb: string;
      state: "never-set" | "pulled" | "not-back";
      since: string | undefined;
    }
  | { state: "ball-up"; rig: string; ball: string; since: string | undefined }
  | { state: "down-longer"; rig: string; down: string; since: string }
>({
  slug: "not-in-water",
  severities: ["warning"],
  summary:
    "A strike, catch, move or pull on a rig that isn't fishing, a stacked rod set with its ball up, or a rod down for longer than it was in.",
  quietWhen:
    "the rig is unknown, the line is a reading or outside of the trip, the time of one of its lines is in doubt, a line that put it in can't be read, it was said since the rig came out, a fish comes within 30 minutes of its ball's pull, or the ball goes down within 15 minutes",
  isDoubt: true,
  isFixable: true,
  since,
  message: (data) => {
    const { rig, state, since } = data;
    if (state === "ball-up") {
      const why = since === undefined ? "nothing has set it" : `it was pulled at ${since}`;
      return `${rig} is clipped to the cable of ${data.ball}, whose ball isn't down: ${why}.`;
    }
    if (state === "down-longer")
      return `Out of the water for ${data.down}? ${rig} went in at ${since}, not that long before.`;
    const { verb } = data;
    const counts = verb === "catch" ? " The fish counts all the same." : "";
    if (state === "never-set") return `${rig} isn't in the water: nothing has set it.${counts}`;
    if (state === "pulled")
      return `${rig} isn't in the water: it was pulled at ${since ?? "some time"}.${counts}`;
    return `${rig} isn't back in the water: nothing has put it back since ${since ?? "it came out"}.${counts}`;
  },
});

/** Set twice. */
export const ALREADY_SET = check<{ rig: string; since: string | undefined }>({
  slug: "already-set",
  severities: ["warning"],
  summary: "A rig is set that is fishing already.",
  quietWhen: "a fish, a tangle or a break-off came between, or the time of one of its lines is in doubt",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ rig, since }) =>
    `${rig} is fishing already${since === undefined ? "" : `, since ${since}`}: was it moved, or is a pull missing?`,
});

/** Rigs still in the water at the end. */
export const NEVER_PULLED = check<{ rigs: readonly string[]; at: string | undefined; isReturn: boolean }>({
  slug: "never-pulled",
  severities: ["information"],
  summary: "Rigs were never pulled; they are taken to be out at the return.",
  quietWhen:
    "the trip has no return yet and nothing after it, a fish or break-off took the rig out, or the time of one of its lines is in doubt",
  isDoubt: true,
  isFixable: true,
  since,
  message: ({ rigs, at, isReturn }) => {
    const when = at === undefined ? "the end" : `${isReturn ? "return" : "the last line"}, ${at}`;
    return `${countWords(rigs.length, "line")} assumed pulled at ${when}: ${rigs.join(", ")}.`;
  },
});
