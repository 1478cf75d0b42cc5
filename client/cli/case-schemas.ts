/** The JSON of `depth --case`, in the case file's own field names. */
import * as z from "zod";
import { count, finite } from "./output-schema-parts.ts";

const four = {
  depth: finite.describe("m, of the lower end"),
  setback: finite.describe("m, horizontal distance behind the top"),
  topTension: finite.describe("N"),
  topAngleDeg: finite.describe("from the vertical, positive aft"),
};
const caseNode = z.strictObject({
  node: count,
  s: finite,
  x: finite,
  z: finite,
  tensionAbove: finite.nullable(),
  tensionBelow: finite,
});
const caseOut = z.strictObject({
  ...four,
  topH: finite,
  topV: finite,
  endTension: finite,
  endAngleDeg: finite
    .optional()
    .describe("of the lower end, from the vertical, positive aft; left out where nothing pulls on it"),
  nodes: z.array(caseNode),
});
const caseAnswer = z.union([
  z.strictObject({
    id: z.string(),
    ...four,
    out: caseOut.describe("The same, with the forces and nodes as in the case file."),
    branchOut: caseOut.extend({ lureDepth: finite }).optional(),
    allSolutions: z
      .array(caseOut)
      .min(2)
      .optional()
      .describe("Every steady shape of the line, shallowest first; left out where there is only one."),
    chosen: z.literal("deepest").optional().describe("Which of `allSolutions` the figures above are."),
  }),
  z.strictObject({ id: z.string(), error: z.string().describe("Why nothing is answered.") }),
]);

/** The one output that is a plain array, as the case file has them. */
export const casesOutput = z.array(caseAnswer);

export type CaseAnswerJson = z.infer<typeof caseAnswer>;
