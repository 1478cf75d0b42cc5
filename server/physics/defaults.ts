/** How a row's standard deviation is meant. */
export type SpreadKind = "absolute" | "of the logarithm" | "relative";

/** One value that the model takes when the gear book says nothing. */
export interface DefaultRow {
  /** In the unit named, SI. */
  readonly value: number;
  /** Standard deviation, or 0 where no band is drawn from it. */
  readonly sd: number;
  readonly spread: SpreadKind;
  /** "" for a plain number. */
  readonly unit: string;
  /** Where the value is from, in a few words. */
  readonly origin: string;
  /** One plain sentence for the captain. */
  readonly says: string;
}

/** A value that is taken as exact for the band. */
function exact(value: number, unit: string, origin: string, says: string): DefaultRow {
  return { value, sd: 0, spread: "absolute", unit, origin, says };
}

/** A value with a standard deviation. */
function spread(
  value: number,
  sd: number,
  kind: SpreadKind,
  unit: string,
  origin: string,
  says: string,
): DefaultRow {
  return { value, sd, spread: kind, unit, origin, says };
}

const TOWED_CABLE =
  "smooth-cylinder law for towed cables, raised for strumming; fitted from readings where there are any";
const ASSUMED = "assumption, with a wide spread";
const PRACTICE = "common practice";
const JUDGED = "judgement";
const FOOT_M = 0.3048;
const MPH_MS = 0.44704;

/**
 * Every default of the depth model, in one place: solver, band, docs and the gear book's hints all read this
 * table. Keys are stable; values are SI.
 */
export const DEFAULTS = {
  cableDragMultiplier: spread(
    1.2,
    0.2,
    "of the logarithm",
    "",
    TOWED_CABLE,
    "A cable's drag is this many times that of a smooth, still cylinder; a calibration replaces it.",
  ),
  lineDragMultiplier: spread(
    1.2,
    0.2,
    "of the logarithm",
    "",
    TOWED_CABLE,
    "The same multiplier for fishing line, leaders and the line from the rod to the release.",
  ),
  sharedDrag: spread(
    1,
    0.22,
    "of the logarithm",
    "",
    JUDGED,
    "What every line of one boat shares of the error in its drag: the speed sensor's scale, the water, strumming.",
  ),
  tangentialCoefficient: exact(
    0.01,
    "",
    "range 0.003 to 0.05 in cable manuals; hardly matters for depth",
    "Drag along a line, on its wetted surface.",
  ),
  counterScale: spread(
    1,
    0.03,
    "absolute",
    "",
    "spool diameter changes with fill; common practice",
    "Cable out for each unit on the counter.",
  ),
  counterOffsetM: spread(
    0,
    0.6,
    "absolute",
    "m",
    PRACTICE,
    "Cable out when the counter shows zero, beyond the ball at the water line.",
  ),
  rodPullN: spread(
    8,
    4,
    "absolute",
    "N",
    "common practice, weak",
    "The pull of a rod bent over its release, at the tip; none where no rod is clipped.",
  ),
  rodTipHeightM: exact(2, "m", PRACTICE, "Height of the rod's tip above the water."),
  rodTipBehindM: exact(
    0,
    "m",
    ASSUMED,
    "Distance of the rod's tip astern of the place where the cable enters the water.",
  ),
  rodLineDiameterM: exact(0.4e-3, "m", PRACTICE, "Diameter of the line between rod and release."),
  lureLineDiameterM: exact(0.4e-3, "m", PRACTICE, "Diameter of the lure's line, nylon mono."),
  ballDensityKgM3: exact(
    11340,
    "kg/m3",
    "handbook density of lead",
    "Density of the ball; hardened lead is about 11000.",
  ),
  ballDragMultiplier: exact(
    1.2,
    "",
    "assumption, range 1 to 2; hardly matters for depth",
    "A ball's drag is this many times that of a smooth sphere, for its fins and eyes.",
  ),
  ballMassScale: spread(1, 0.02, "relative", "", JUDGED, "The ball's true mass against the one stated."),
  releaseAboveBallM: exact(0, "m", PRACTICE, "Height of the release above the ball along the cable."),
  probeAboveBallM: exact(1.25 * FOOT_M, "m", PRACTICE, "Height of the probe above the ball along the cable."),
  spoonWeightN: spread(0.1, 0.5, "relative", "N", ASSUMED, "Weight of a spoon or fly in the water."),
  spoonDragAreaM2: spread(4e-4, 0.5, "relative", "m2", ASSUMED, "Drag area of a spoon or fly."),
  spoonLiftAreaM2: spread(
    0,
    0.5,
    "relative",
    "m2",
    ASSUMED,
    "A spoon or fly is taken to pull neither up nor down.",
  ),
  plugWeightN: spread(-0.1, 0.5, "relative", "N", ASSUMED, "Weight of a plug in the water; it floats."),
  plugDragAreaM2: spread(1.2e-3, 0.5, "relative", "m2", ASSUMED, "Drag area of a plug."),
  plugLiftAreaM2: spread(
    1e-3,
    0.5,
    "relative",
    "m2",
    ASSUMED,
    "Area with which a plug pulls itself down; a stated 'pulls-down' replaces it.",
  ),
  pullsDownSpeedMS: exact(
    2.3 * MPH_MS,
    "m/s",
    ASSUMED,
    "Trolling speed at which a stated 'pulls-down' is taken to hold.",
  ),
  pullsDownLeadM: exact(
    50 * FOOT_M,
    "m",
    ASSUMED,
    "Length of line behind the release at which a stated 'pulls-down' is taken to hold.",
  ),
  leadcoreDiameterM: exact(0.85e-3, "m", PRACTICE, "Outer diameter of lead-cored line."),
  leadcoreCoreM: spread(
    0.46e-3,
    0.075,
    "relative",
    "m",
    "common practice; 15 % on the weight",
    "Diameter of the lead inside; weigh ten yards of line to settle it.",
  ),
  colorLengthM: exact(30 * FOOT_M, "m", PRACTICE, "Length of one color of leadcore, ten yards."),
  leadcoreWeightScale: spread(
    1,
    0.15,
    "relative",
    "",
    "common practice; core diameters differ",
    "The true weight in the water of leadcore against the one reckoned from its core.",
  ),
  copperWeightScale: spread(
    1,
    0.1,
    "relative",
    "",
    JUDGED,
    "The true weight in the water of copper line against the one reckoned from its diameter.",
  ),
  lineWeightScale: spread(
    1,
    0.1,
    "relative",
    "",
    JUDGED,
    "The same for wire, braid and nylon, whose diameters are good to about 5 %.",
  ),
  weighedLineScale: spread(
    1,
    0.03,
    "relative",
    "",
    JUDGED,
    "The true weight of a line whose weight is stated or was weighed.",
  ),
  lineCounterScale: spread(
    1,
    0.03,
    "absolute",
    "",
    "spool diameter changes with fill; common practice",
    "Line out for each unit on a reel's line counter.",
  ),
  lineOutsetM: spread(
    0,
    1,
    "absolute",
    "m",
    JUDGED,
    "Line in the water beyond what the counter says: where it was zeroed, and the height of the rod tip.",
  ),
  colorsOutM: spread(
    0,
    0.39 * 30 * FOOT_M,
    "absolute",
    "m",
    "judgement; 80 % within half a color",
    "Core in the water beyond the colors counted.",
  ),
  diverAreaScale: spread(
    1,
    0.15,
    "relative",
    "",
    JUDGED,
    "A diver's true lift and drag areas against those of its calibrate line.",
  ),
  diverLiftAreaM2: spread(
    0.015,
    0.7,
    "of the logarithm",
    "m2",
    ASSUMED,
    "Where the fit of a diver's pull starts: a planer of a hand's size. No depth is given from it.",
  ),
  diverDragRatio: spread(
    0.6,
    0.4,
    "of the logarithm",
    "",
    ASSUMED,
    "The same for its drag area as a share of its lift area.",
  ),
  inlineWeightScale: spread(
    1,
    0.02,
    "relative",
    "",
    JUDGED,
    "An in-line weight's mass against the stated one.",
  ),
  flasherDragShare: spread(
    0.1,
    0.5,
    "relative",
    "",
    ASSUMED,
    "Drag area of a flasher or paddle as a share of the square of its length.",
  ),
  flasherLengthM: exact(8 * 0.0254, "m", PRACTICE, "Length of a flasher whose length isn't stated."),
  sliderLeaderM: exact(
    6 * FOOT_M,
    "m",
    "common practice, from memory",
    "Length of a slider's own leader where none is stated.",
  ),
  sliderFrictionDeg: exact(
    15,
    "deg",
    "friction of a snap on nylon, about a quarter of the load; from memory",
    "Within this of its balance a free slider stays where it is.",
  ),
  boatBeamM: exact(3, "m", PRACTICE, "Width of the boat; rigs on a side are taken to stand at its gunwale."),
  rigSpacingM: exact(
    1,
    "m",
    JUDGED,
    "How far apart the rigs of one side stand across the boat, in the order of the book; any two may as well stand twice as far apart, or in line.",
  ),
  sidePlaceM: exact(
    0.75,
    "m",
    JUDGED,
    "How much nearer to or farther from the boat's middle a rig may stand than is taken.",
  ),
  boardPlaceShare: exact(
    0.2,
    "",
    JUDGED,
    "How far a planer board may leave its distance to the side in a turn, as a share of it.",
  ),
  turnRadiusM: exact(
    60,
    "m",
    JUDGED,
    "Radius of a turn with lines out: half a circle in about three minutes at 2.4 mph.",
  ),
  probeSpeedSdMS: exact(0.1 * MPH_MS, "m/s", JUDGED, "Spread of a speed read by the probe at the ball."),
  surfaceSpeedSdMS: exact(
    0.3 * MPH_MS,
    "m/s",
    JUDGED,
    "Spread of a speed through the water read at the surface.",
  ),
  groundSpeedSdMS: exact(
    0.7 * MPH_MS,
    "m/s",
    JUDGED,
    "Spread of a speed over ground, the current being unknown.",
  ),
  probeDepthSdM: exact(
    0.7 * FOOT_M,
    "m",
    JUDGED,
    "Spread of a depth read at the probe: it is shown in whole feet and swings in the waves.",
  ),
  touchDepthSdM: exact(
    2 * FOOT_M,
    "m",
    JUDGED,
    "Spread of the bottom's depth where the ball touches it: the sounder is under the boat, the ball behind.",
  ),
  behindSdM: exact(4 * FOOT_M, "m", JUDGED, "Spread of a distance behind the boat, judged by eye or angle."),
  modelDepthShare: exact(
    0.005,
    "",
    JUDGED,
    "What the model itself may be off in a depth that everything else fits, as a share.",
  ),
  speedSdGrowthMSPerS: exact(
    (0.1 * MPH_MS) / 900,
    "m/s per s",
    JUDGED,
    "How fast that spread grows with a reading's age: 0.1 mph in 15 minutes.",
  ),
  waterTemperatureC: exact(
    10,
    "C",
    PRACTICE,
    "Water temperature when neither profile, probe nor surface has one.",
  ),
  salinityPsu: exact(0, "psu", PRACTICE, "Fresh water."),
  bandShare: exact(
    0.8,
    "",
    JUDGED,
    "Share of days on which the true depth should lie inside the band shown.",
  ),
} as const satisfies Readonly<Record<string, DefaultRow>>;

/** A default's key. */
export type DefaultKey = keyof typeof DEFAULTS;
