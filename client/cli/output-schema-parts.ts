/** What the schemas of several verbs share. */
import * as z from "zod";

export const count = z.int().nonnegative();
export const line = count.describe("Line number in the file, from 0.");
export const finite = z.number();
export const path = z
  .string()
  .describe("The file as it was named, with forward slashes; - is standard input.");
export const error = z.string().describe("Why this file could not be used.");
export const caution = z.string().describe("What goes with every figure when it is shown to people.");
export const clock = z.string().regex(/^\d{2}:\d{2}$/u);
export const instant = z.iso.datetime();

/** The form all share. */
export const envelope = <Verb extends string, Content extends z.ZodRawShape>(verb: Verb, content: Content) =>
  z.strictObject({
    format: z.literal(`deepwake-${verb}/1`),
    version: z.string().describe("Version of the program."),
    ...content,
  });
