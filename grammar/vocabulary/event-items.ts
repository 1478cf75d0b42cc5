/** Words that several lines of a day share, and what every event takes. */
import { flag, type ItemRow, line, measure, name, number, position, slot, type VerbRow } from "./rows.ts";

const remark = name("remark", "text", "A remark in quotes.", { bare: true });
const sure = flag("sure", "It is as written: no doubts raised about this line.");
export const rigSlot = slot("rig", "rig");
export const onBottom = flag("on-bottom", "Ball or lure is meant to be on the bottom.");
export const sliderFlag = flag("slider", "It was the slider, not the main lure.");
export const picture = name("picture", "text", "A picture's file name.", { many: true });
export const down = measure("down", "duration", "How long the lure was out of the water.");
export const at = position("at", "Where.");

export const amount: readonly ItemRow[] = [
  measure("out", "length", "Line or cable out, as the counter says; colors for leadcore.", {
    bare: true,
    not: "line cable counter at to",
  }),
  measure("above", "length", "A stacked rod: how far above the ball it is clipped."),
  number("dial", "dial", "Dial mark of the diving planer.", { not: "on setting" }),
  measure("board", "length", "How far the board runs to the side."),
  measure("setback", "length", "The lure's distance behind its release.", { not: "back lead behind" }),
  number("anglers", "count", "People on a cast or jigged rod."),
  flag("shallow", "A long lead on a short cable is meant."),
  onBottom,
];
export const tackle: readonly ItemRow[] = [
  name("lure", "lure", "The lure on it.", { not: "bait" }),
  name("flasher", "lure", "A flasher ahead of the lure."),
  measure("leader", "length", "Leader between flasher and lure, or behind a weighted line."),
  name("slider", "lure", "A second lure on a short leader, free on the line above the ball."),
  measure("fixed", "length", "The slider is pinned that far above its release, along the line."),
  name("ball", "ball", "Another ball than the rig's own.", { not: "weight cannonball" }),
];
export const degree = [
  flag("none", "None.", { group: "amount" }),
  flag("light", "A few.", { group: "amount" }),
  flag("some", "Some.", { group: "amount" }),
  flag("heavy", "Many.", { group: "amount" }),
];
export const fate = [
  flag("kept", "It went in the box.", { group: "kept" }),
  flag("released", "It went back.", { group: "kept" }),
  flag("alive", "It swam off.", { group: "alive" }),
  flag("dead", "It did not.", { group: "alive" }),
];
export const tint = ["clear", "green", "blue", "stained", "muddy"].map((word) =>
  flag(word, `The water is ${word}.`, { group: "tint" }),
);
export const bearing = [
  flag("true", "The bearing is true.", { group: "north" }),
  flag("magnetic", "The bearing is magnetic.", { group: "north" }),
];
export const event = (
  verb: string,
  slots: Parameters<typeof line>[2],
  items: readonly ItemRow[],
  doc: string,
  example: string,
  o: { aliases?: string; needs?: string; not?: string } = {},
): VerbRow => line("event", verb, slots, [...items, sure, remark], doc, example, o);
