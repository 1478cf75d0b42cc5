/** The JSON of `letout`, as the other verbs' in output-schemas.ts. */
import * as z from "zod";
import { caution, envelope, finite, path } from "./output-schema-parts.ts";
import { depthPlace } from "./output-schemas.ts";

const letOutCell = z.strictObject({
  depthM: finite.describe("The depth wanted."),
  out: finite.nullable().describe("What to let out, as it is counted: half colors, else whole units."),
  unit: z.string().nullable().describe("colors, ft, m."),
  backing: z.strictObject({ out: finite, unit: z.string() }).nullable().describe("Behind all the colors."),
  outM: finite.nullable().describe("The whole of it."),
  band: depthPlace.nullable().describe("The depth with that much out, and its range."),
  why: z.string().nullable().describe("Why there is none."),
  deepest: z.strictObject({ depthM: finite, outM: finite }).nullable().describe("How deep it comes at all."),
});
const letOutColumn = z.strictObject({
  rig: z.string(),
  kind: z.string().nullable(),
  of: z.enum(["lure", "ball"]).nullable().describe("What is brought to the depth."),
  calibration: z
    .strictObject({ of: z.string(), date: z.string().nullable() })
    .nullable()
    .describe("The calibrate line that holds on that day: the rig's, or its line's."),
  depths: z.array(letOutCell),
});
const letOutAsked = z.strictObject({
  boat: z.string(),
  date: z.string().nullable().describe("The gear is that of this day; null where it is that of every day."),
  speedMS: finite,
  surfaceSpeedMS: finite.nullable(),
  speedDepthM: finite.nullable().describe("Depth that the speed holds at; null is each row's own."),
  waterTempC: finite.nullable(),
  lure: z.string().nullable(),
  setbackM: finite.nullable(),
  aboveM: finite.nullable(),
});

export const letOutOutput = envelope("letout", {
  caution,
  asked: letOutAsked,
  rigs: z.array(letOutColumn),
  files: z.array(z.strictObject({ path })).describe("The gear books the rigs are from."),
});

export type LetOutAskedJson = z.infer<typeof letOutAsked>;
export type LetOutColumnJson = z.infer<typeof letOutColumn>;
export type LetOutCellJson = z.infer<typeof letOutCell>;
