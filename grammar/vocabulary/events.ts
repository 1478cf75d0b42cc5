/** The lines of a day on the water. */
import {
  flag,
  type ItemRow,
  line,
  measure,
  name,
  number,
  point,
  position,
  slot,
  span,
  type VerbRow,
} from "./rows.ts";

const remark = name("remark", "text", "A remark in quotes.", { bare: true });
const sure = flag("sure", "It is as written: no doubts raised about this line.");
const rigSlot = slot("rig", "rig");
const onBottom = flag("on-bottom", "Ball or lure is meant to be on the bottom.");
const sliderFlag = flag("slider", "It was the slider, not the main lure.");
const picture = name("picture", "text", "A picture's file name.", { many: true });
const down = measure("down", "duration", "How long the lure was out of the water.");
const at = position("at", "Where.");

const amount: readonly ItemRow[] = [
  measure("out", "length", "Line or cable out, as the counter says; colors for leadcore.", {
    bare: true,
    not: "line cable counter",
  }),
  measure("above", "length", "A stacked rod: how far above the ball it is clipped."),
  number("dial", "dial", "Dial mark of the diving planer."),
  measure("board", "length", "How far the board runs to the side."),
  measure("setback", "length", "The lure's distance behind its release.", { not: "back lead behind" }),
  number("anglers", "count", "People on a cast or jigged rod."),
  flag("shallow", "A long lead on a short cable is meant."),
  onBottom,
];
const tackle: readonly ItemRow[] = [
  name("lure", "lure", "The lure on it.", { not: "bait" }),
  name("flasher", "lure", "A flasher ahead of the lure."),
  measure("leader", "length", "Leader between flasher and lure, or behind a weighted line."),
  name("slider", "lure", "A second lure on a short leader, free on the line above the ball."),
  measure("fixed", "length", "The slider is pinned that far above its release, along the line."),
  name("ball", "ball", "Another ball than the rig's own.", { not: "weight cannonball" }),
];
const degree = [
  flag("none", "None.", { group: "amount" }),
  flag("light", "A few.", { group: "amount" }),
  flag("some", "Some.", { group: "amount" }),
  flag("heavy", "Many.", { group: "amount" }),
];
const fate = [
  flag("kept", "It went in the box.", { group: "kept" }),
  flag("released", "It went back.", { group: "kept" }),
  flag("alive", "It swam off.", { group: "alive" }),
  flag("dead", "It did not.", { group: "alive" }),
];
const tint = ["clear", "green", "blue", "stained", "muddy"].map((word) =>
  flag(word, `The water is ${word}.`, { group: "tint" }),
);
const bearing = [
  flag("true", "The bearing is true.", { group: "north" }),
  flag("magnetic", "The bearing is magnetic.", { group: "north" }),
];
const event = (
  verb: string,
  slots: Parameters<typeof line>[2],
  items: readonly ItemRow[],
  doc: string,
  example: string,
  o: { aliases?: string; needs?: string } = {},
): VerbRow => line("event", verb, slots, [...items, sure, remark], doc, example, o);

/** Rows of everything that happens on a trip. */
export const EVENT_ROWS: readonly VerbRow[] = [
  event(
    "set",
    [rigSlot],
    [...amount, ...tackle],
    "A line goes in: how much is out and what is on it.",
    "05:14 set C1 out 90 ft setback 20 ft lure white-fly",
  ),
  event("move", [rigSlot], amount, "More or less line out; the rest stays.", "05:55 move C1 out 105 ft"),
  event(
    "again",
    [rigSlot],
    [...amount, ...tackle],
    "Back in after a fish or a change; what isn't said stays as it was.",
    "06:18 again P1",
  ),
  event(
    "change",
    [rigSlot],
    [...amount, ...tackle, down],
    "Another lure, or something else on the line; the time is when it fished again.",
    '06:50 change C1 lure barred-plug down 4 min "fleas on the fly"',
  ),
  event("check", [rigSlot], [down], "Looked at and put back as it was.", "07:05 check S1 down 3 min"),
  event("pull", [rigSlot], [], "Out of the water; `all` pulls every rig.", "08:05 pull all"),
  event(
    "tangle",
    [rigSlot],
    [name("with", "rig", "The other rig.", { many: true }), down],
    "Lines crossed.",
    "07:40 tangle P1 with S1 down 12 min",
  ),
  event(
    "broke",
    [rigSlot],
    [
      name("lure", "lure", "The lure that is gone."),
      name("flasher", "lure", "The flasher that is gone."),
      name("slider", "lure", "The slider that is gone."),
      name("ball", "ball", "The ball that is gone."),
    ],
    "Gear lost; the rig does not fish until `again` or `set`.",
    "07:55 broke SD lure green-fly",
  ),
  event(
    "strike",
    [rigSlot],
    [sliderFlag],
    "A fish hit; that rod does not fish until `again`.",
    "05:58 strike P1",
  ),
  event("miss", [rigSlot], [sliderFlag], "A hit without a hook-up; the rod fishes on.", "06:02 miss S1"),
  event(
    "catch",
    [rigSlot, slot("species", "species")],
    [
      measure("weight", "mass", "Weight.", { bare: true }),
      measure("length", "length", "Total length.", { bare: true }),
      measure("girth", "length", "Girth."),
      ...fate,
      sliderFlag,
      name("by", "guest", "Who reeled it."),
      name("clip", "clip", "A clipped fin.", { many: true }),
      name("tag", "text", "The tag's number."),
      name("lure", "lure", "The lure, if not the one set."),
      picture,
    ],
    "A fish in the boat.",
    "06:14 catch P1 chinook 18 lb 35 in kept by G1 clip adipose",
  ),
  event(
    "lost",
    [rigSlot, slot("species, or fish", "species")],
    [sliderFlag, name("by", "guest", "Who had it on.")],
    "A hooked fish that got off; write `fish` when it wasn't seen.",
    '06:33 lost S1 coho slider "at the net, I think"',
  ),
  event(
    "box",
    [slot("species", "species")],
    [number("count", "count", "How many.", { bare: true })],
    "Fish in the box at the dock, to hold against the catches.",
    "11:35 box chinook 1",
    { needs: "count" },
  ),
  event(
    "dock",
    [slot("species", "species")],
    [
      measure("weight", "mass", "Weight.", { bare: true }),
      measure("length", "length", "Total length.", { bare: true }),
      number("count", "count", "How many fish.", { bare: true }),
    ],
    "A weight taken at the dock that can't be put to one catch.",
    "11:40 dock chinook 17 lb 8 oz",
  ),
  event(
    "weigh-in",
    [],
    [
      number("fish", "count", "Fish weighed."),
      measure("total", "mass", "Weight of all."),
      measure("biggest", "mass", "Weight of the biggest.", { aliases: "big" }),
      number("points", "ratio", "Points."),
      number("place", "count", "Place."),
    ],
    "The tournament's scales.",
    "14:10 weigh-in fish 10 total 128 lb 6 oz place 4",
  ),
  event(
    "probe",
    [rigSlot],
    [
      measure("depth", "length", "Depth the probe shows.", { not: "down deep" }),
      measure("temp", "temperature", "Water temperature at the probe.", { not: "temperature" }),
      measure("speed", "speed", "Speed through the water at the probe."),
      measure("behind", "length", "Measured distance behind the boat."),
      onBottom,
    ],
    "What the probe on that rig shows.",
    "05:45 probe C1 depth 82 ft temp 45.5 F speed 2.6 mph",
  ),
  event(
    "touch",
    [rigSlot],
    [
      measure("out", "length", "Counter reading when it touched.", { bare: true }),
      measure("bottom", "length", "Depth of the water there."),
      measure("behind", "length", "Measured distance behind the boat."),
    ],
    "The ball touched bottom, or the lure, weight or diver of another line: a free calibration point.",
    "08:34 touch C1 out 128 ft",
  ),
  event(
    "surface",
    [],
    [
      measure("temp", "temperature", "Water temperature on top.", { not: "temperature" }),
      measure("speed", "speed", "Speed through the water on top."),
    ],
    "Readings on top.",
    "05:45 surface temp 61.2 F speed 2.3 mph",
  ),
  event(
    "gps",
    [],
    [
      measure("speed", "speed", "Speed over ground."),
      number("course", "bearing", "Course over ground.", { not: "heading bearing" }),
      ...bearing,
      at,
    ],
    "Speed and course over ground, position.",
    "05:45 gps speed 2.1 mph course 310 at 44 46.1N 086 21.7W",
  ),
  event(
    "sonar",
    [],
    [
      measure("bottom", "length", "Depth of the water under the boat.", { not: "depth" }),
      span("marks", "length", "Depth of fish on the sounder.", { many: true }),
      span("bait", "length", "Depth of bait on the sounder.", { many: true }),
    ],
    "What the sounder shows.",
    "05:48 sonar bottom 165 ft marks 65 to 80 ft bait 50 to 60 ft",
  ),
  event(
    "profile",
    [],
    [point("point", "A depth and the temperature there.")],
    "Temperatures at several depths, from lowering the probe.",
    "05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F",
    { needs: "point" },
  ),
  event(
    "weather",
    [],
    [
      name("sky", "text", "The sky: clear, partly, overcast, fog, rain, snow."),
      name("wind", "compass", "Where the wind comes from, or calm."),
      span("wind-speed", "speed", "Wind speed; may be written right after the direction.", { bare: true }),
      measure("gusts", "speed", "Gusts."),
      span("waves", "length", "Height of the waves."),
      measure("air", "temperature", "Air temperature."),
      name("barometer", "text", "rising, steady or falling."),
      measure("pressure", "pressure", "Air pressure."),
      measure("visibility", "length", "How far one sees."),
    ],
    "Sky, wind and sea.",
    "04:50 weather sky clear wind SW 8 kn waves 1 to 2 ft air 57 F",
  ),
  event(
    "water",
    [],
    [measure("clarity", "length", "How deep a lure can be seen."), ...tint],
    "Clarity and color of the water.",
    "05:30 water green clarity 22 ft",
  ),
  event("birds", [], [...degree, at], "Birds working.", "06:40 birds some"),
  event("fleas", [], [...degree, at], "Water fleas on the lines.", "06:50 fleas heavy"),
  event("weeds", [], [...degree, at], "Weeds or drift on the lines.", "09:15 weeds light"),
  event(
    "depart",
    [],
    [measure("engine", "duration", "Engine hours.")],
    "Left the dock.",
    "04:45 depart engine 1243.6 h",
  ),
  event(
    "return",
    [],
    [measure("engine", "duration", "Engine hours.")],
    "Back at the dock.",
    "11:20 return engine 1249.4 h",
  ),
  event(
    "run",
    [],
    [name("to", "spot", "Where to."), at],
    "Running, not trolling, until the next line is set.",
    '08:05 run to "Anvil Bank"',
  ),
  event("drift", [], [], "Drifting or stopped until the next line is set.", "09:30 drift"),
  event(
    "turn",
    [],
    [
      flag("left", "To port.", { group: "side" }),
      flag("right", "To starboard.", { group: "side" }),
      number("to", "bearing", "The new course."),
      ...bearing,
    ],
    "A turn, and the new course.",
    "06:25 turn right to 130",
  ),
  event(
    "serviced",
    [slot("what", "upkeep")],
    [measure("engine", "duration", "Engine hours at the time.")],
    "Something on the upkeep list was done.",
    "11:50 serviced probe-batteries",
  ),
  event(
    "note",
    [],
    [flag("private", "Stays out of any shared copy."), picture],
    "A note; the indented lines below it are its text.",
    "note private",
  ),
];
