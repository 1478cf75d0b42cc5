/**
 * The JSON of every verb: zod schemas, published as JSON Schema in docs/schemas/, and the types inferred from them.
 * The program itself uses the types only; the tests hold every output against the schemas.
 */
import * as z from "zod";
import {
  caution,
  clock,
  count,
  envelope,
  error,
  finite,
  instant,
  line,
  path,
} from "./output-schema-parts.ts";

const position = z.strictObject({ line, character: count.describe("UTF-16 code units, from 0.") });
const range = z
  .strictObject({ start: position, end: position })
  .describe("As in the LSP: the end is exclusive.");
const severity = z.enum(["error", "warning", "information", "hint"]);

const related = z.strictObject({ path: z.string(), range, message: z.string() });
const diagnostic = z.strictObject({
  code: z.string().describe("The check's name; docs/checks has a page for each."),
  severity,
  message: z.string(),
  range,
  related: z.array(related).optional().describe("Other places that have to do with it."),
});
const checkFile = z.strictObject({ path, diagnostics: z.array(diagnostic), error: error.optional() });

export const checkOutput = envelope("check", { files: z.array(checkFile) });

const explainedCheck = z.strictObject({
  code: z.string(),
  severities: z.array(severity).min(1).describe("The first is the usual one."),
  summary: z.string(),
  quietWhen: z.string().nullable(),
  hasFix: z.boolean(),
  isOffByDefault: z.boolean(),
  since: z.string(),
  page: z.string(),
  silencedBy: z
    .array(z.string())
    .describe("A word on the line, a line in the gear book; empty where only mending the line helps."),
  wrong: z.string().nullable().describe("Lines that the check speaks of; null where a line is missing."),
  right: z.string().describe("The same lines as they should be."),
});

export const explainOutput = envelope("explain", { files: z.array(z.never()), check: explainedCheck });

const formatFile = z.strictObject({
  path,
  isChanged: z.boolean().describe("Its canonical form differs from what it held."),
  isWritten: z.boolean().describe("The file was replaced."),
  linesLeft: count.describe("Lines that can't be read, and were left as they are."),
  text: z.string().optional().describe("The canonical form of standard input."),
  error: error.optional(),
});

export const formatOutput = envelope("format", { files: z.array(formatFile) });

const extent = z.strictObject({ low: finite, high: finite, count }).nullable();
const bandDepths = z
  .strictObject({ topM: finite, bottomM: finite, isOpenBelow: z.boolean() })
  .describe("Depths with the band's temperatures; open below where they go on past the deepest reading.");
const alongMS = finite.nullable().describe("Current along the course; below zero the boat ran into it.");
const alongSdMS = finite.nullable().describe("How well it is known, one standard deviation.");
const waterSummary = z.strictObject({
  profiles: z.array(
    z.strictObject({
      instant,
      thermoclineM: finite.nullable(),
      metalimnionTopM: finite.nullable(),
      metalimnionBottomM: finite.nullable(),
      lines: z.array(line).describe("The readings in it."),
      bands: z.array(z.strictObject({ species: z.string(), depths: z.array(bandDepths) })),
    }),
  ),
  legs: z.array(
    z.strictObject({
      from: instant,
      to: instant,
      courseDeg: finite.nullable(),
      isCourseMagnetic: z.boolean().describe("The boat's variation is not known."),
      madeGoodM: finite.nullable(),
      madeGoodDeg: finite.nullable(),
      madeGoodMS: finite.nullable(),
      currentOnTopMS: alongMS,
      currentOnTopSdMS: alongSdMS,
      currentAtProbeMS: alongMS,
      currentAtProbeSdMS: alongSdMS,
      currentLines: z.array(line).describe("The speeds the current was taken from."),
    }),
  ),
  distanceM: finite.nullable().describe("Between the positions written, at least."),
  sunrise: instant.nullable(),
  sunset: instant.nullable(),
  civilDawn: instant.nullable(),
  civilDusk: instant.nullable(),
  nauticalDawn: instant.nullable(),
  nauticalDusk: instant.nullable(),
  moon: z
    .strictObject({ phase: finite, litShare: finite, altitudeDeg: finite })
    .nullable()
    .describe("At the first line. Phase 0 is new, 0.5 full."),
  landedByHour: z
    .array(z.strictObject({ from: instant, landed: count, rodHoursFishing: finite }))
    .describe("What was, hour by hour of the clock."),
});
const tripSummary = z.strictObject({
  line: line.describe("Line of the trip's opener, from 0."),
  date: z.string(),
  boat: z.string(),
  depart: clock.nullable().describe("The clock on board."),
  departInstant: instant.nullable(),
  return: clock.nullable().describe("The clock on board."),
  returnInstant: instant.nullable(),
  hours: finite.nullable(),
  rodHoursWet: finite.describe("With the lure in the water: fishing, or a fish on."),
  rodHoursFishing: finite,
  rodHoursByRig: z.array(z.strictObject({ rig: z.string(), rodHoursWet: finite, rodHoursFishing: finite })),
  assumedPulls: count.describe("Lines that fished to the end and were never pulled, taken to be out there."),
  species: z.array(z.strictObject({ species: z.string(), kept: count, released: count, unsaid: count })),
  landed: count,
  lost: count,
  broke: count,
  missed: count,
  open: count.describe("Bites with no end written."),
  landedPerRodHour: z
    .strictObject({ rate: finite, low: finite, high: finite })
    .nullable()
    .describe("With the 80 % range of rates that would fit as well."),
  speedsMS: z.strictObject({ down: extent, surface: extent, ground: extent }),
  tempsC: z.strictObject({ down: extent, surface: extent }),
  caughtAt: z.array(
    z.strictObject({
      line,
      rig: z.string(),
      species: z.string().nullable(),
      lure: z.string().nullable(),
      depthM: finite.nullable(),
      sunriseMinutes: z.int().nullable().describe("Minutes after sunrise of the strike, else the landing."),
    }),
  ),
  depthsComputed: count,
  depthLines: count,
  water: waterSummary,
});
const summaryFile = z.strictObject({ path, trips: z.array(tripSummary), error: error.optional() });

export const summaryOutput = envelope("summary", { caution, files: z.array(summaryFile) });

export const depthPlace = z.strictObject({
  depthM: finite,
  lowM: finite.describe("Shallow end of the 80 % range."),
  highM: finite.describe("Deep end of the 80 % range."),
  behindM: finite.describe("Distance behind the tow point."),
});
const deeperM = finite.describe("Change of depth; negative is shallower.");
const slider = z.strictObject({
  lure: z.string(),
  depthM: finite.describe("Of a free slider where it would balance; only the range is known."),
  lowM: finite,
  highM: finite,
  behindM: finite,
  isFree: z.boolean(),
});
const changes = z.strictObject({
  of: z.enum(["ball", "lure"]),
  moreOut: z.strictObject({ byM: finite, deeperM }),
  faster: z.strictObject({ byMS: finite, deeperM }),
  gear: z
    .array(
      z.strictObject({ kind: z.enum(["ball", "cable"]), name: z.string(), instead: z.string(), deeperM }),
    )
    .describe("The next heavier ball and the other cable of the book, on the same line."),
});
const stream = z.strictObject({
  shape: z
    .enum(["uniform", "straight", "two-layers", "in-layer", "above-layer"])
    .describe("How the speeds on top and at the probe were joined; in or above the layer hung the probe."),
  depthsM: z.array(finite),
  speedsMS: z.array(finite).describe("At these depths; straight in between, the same above and below."),
  thermoclineM: finite.nullable().describe("Where there are two speeds and a profile shows one."),
});
const depthLine = z.strictObject({
  line: line.nullable().describe("Line number in the file, from 0; null for a what-if."),
  trip: z
    .string()
    .nullable()
    .describe("The trip's date; of a what-if the day whose gear it is, null where that is every day."),
  verb: z.string().describe("set, move or again; change where it alters the depth."),
  time: clock.nullable().describe("The clock on board; null for a line without one."),
  instant: instant.nullable().describe("The same in UTC; null where the time zone isn't known."),
  rig: z.string(),
  outM: finite.nullable().describe("Cable or line out by the counter."),
  ball: depthPlace.nullable().describe("Null on a line that has no ball, and says so in why."),
  weight: depthPlace.nullable().describe("The diver or in-line weight of a line that has no ball."),
  weightIs: z.enum(["diver", "weight"]).nullable(),
  lure: depthPlace.nullable(),
  slider: slider.nullable(),
  sideM: finite.nullable().describe("How far a planer board takes the line to the side."),
  stream: stream.nullable().describe("The water past the line; null without a speed."),
  why: z.string().nullable().describe("Why there is no depth, or else none of the lure, or else no ball."),
  assumed: z.array(z.string()).describe("What the book or the line doesn't say and was taken."),
  changes: changes
    .nullable()
    .describe("What-ifs on this line; null without a depth, or where the bottom stops it."),
});
const depthFile = z.strictObject({ path, lines: z.array(depthLine), error: error.optional() });
const whatIf = z.strictObject({
  boat: z.string(),
  date: z.string().nullable().describe("The gear is that of this day; null where it is that of every day."),
  speedMS: finite.nullable(),
  waterTempC: finite.nullable(),
  setbackM: finite.nullable(),
  aboveM: finite.nullable().describe("How far above the ball a stacked rod is clipped."),
  lure: z.string().nullable(),
});

export const depthOutput = envelope("depth", {
  caution,
  files: z.array(depthFile),
  whatIf: whatIf.optional().describe("What was asked; the answer is the one line of the one file."),
});

const fittedReading = z.strictObject({
  path,
  line,
  trip: z.string().describe("The trip's date."),
  time: clock.nullable().describe("The clock on board."),
  kind: z.enum(["probe-depth", "ball-depth", "probe-behind", "ball-behind"]).describe("What was measured."),
  outM: finite.describe("Cable out by the counter."),
  speedMS: finite,
  measuredM: finite,
  expectedM: finite.nullable().describe("By the fit; null where the reading was left out."),
  sdM: finite.nullable().describe("One standard error of measured against expected."),
  weight: finite.describe("1 for an ordinary reading, less the farther off, 0 where it was left out."),
  why: z.string().nullable().describe("Why it was left out."),
});
const fittedValue = z.strictObject({ value: finite, error: finite.describe("One standard error.") });
const calibratedRig = z.strictObject({
  boat: z.string(),
  rig: z.string(),
  gearSince: z.string().nullable().describe("Day on which its cable, ball or rig was last replaced."),
  date: z.string().describe("Day of the last reading; the line holds from then on."),
  drag: fittedValue.nullable().describe("Against the plain law of a smooth cable, as a ratio."),
  counterScale: fittedValue.nullable(),
  counterOffsetM: fittedValue.nullable(),
  liftAreaM2: fittedValue.nullable().describe("Of a diver: how it pulls down."),
  dragAreaM2: fittedValue.nullable().describe("Of a diver: how it pulls back."),
  areaLink: finite.nullable().describe("Correlation of the errors of the two areas."),
  links: z
    .strictObject({ dragScale: finite, dragOffset: finite, scaleOffset: finite })
    .nullable()
    .describe("Correlations of the errors."),
  open: z
    .array(z.enum(["drag", "counter", "scale-from-offset", "drag-from-counter", "areas"]))
    .describe("What the readings can't tell yet."),
  next: z
    .strictObject({ kind: z.enum(["probe", "touch"]), outM: finite, speedMS: finite, leaves: finite })
    .nullable()
    .describe("The reading that would tell the most, and what share of the error of usual depths it leaves."),
  gearLine: z.string().nullable().describe("For the gear book."),
  why: z.string().nullable().describe("Why there is no fit."),
  readings: z.array(fittedReading),
});
const unusedReading = z.strictObject({ path, line, trip: z.string(), rig: z.string(), why: z.string() });

export const calibrateOutput = envelope("calibrate", {
  caution,
  rigs: z.array(calibratedRig),
  unused: z.array(unusedReading).describe("Probe and touch lines that tell nothing of a counter or cable."),
  files: z.array(z.strictObject({ path, readings: count, error: error.optional() })),
});

export type DiagnosticJson = z.infer<typeof diagnostic>;
export type CheckFileJson = z.infer<typeof checkFile>;
export type ExplainedCheckJson = z.infer<typeof explainedCheck>;
export type FormatFileJson = z.infer<typeof formatFile>;
export type TripSummaryJson = z.infer<typeof tripSummary>;
export type WaterSummaryJson = z.infer<typeof waterSummary>;
export type SummaryFileJson = z.infer<typeof summaryFile>;
export type DepthPlaceJson = z.infer<typeof depthPlace>;
export type DepthLineJson = z.infer<typeof depthLine>;
export type DepthFileJson = z.infer<typeof depthFile>;
export type CalibratedRigJson = z.infer<typeof calibratedRig>;
export type FittedReadingJson = z.infer<typeof fittedReading>;
export type UnusedReadingJson = z.infer<typeof unusedReading>;
export type WhatIfJson = z.infer<typeof whatIf>;
