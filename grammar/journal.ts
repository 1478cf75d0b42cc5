/**
 * The typed journal, version `deepwake/1`: zod schemas, and the types inferred from them.
 * A flat, ordered list of lines. Spans are half-open UTF-16 offsets relative to the line, so that an edit above
 * leaves every other line's value untouched.
 */
import * as z from "zod";
import { FORMAT_NAME } from "./format-name.ts";

/** A number as it was spelled, and its unit's canonical spelling, or null where none was written. */
export const partSchema = z.object({ number: z.string(), unit: z.string().nullable() });

export const quantitySchema = z.object({ kind: z.literal("quantity"), parts: z.array(partSchema).min(1) });

export const valueSchema = z.discriminatedUnion("kind", [
  quantitySchema,
  z.object({ kind: z.literal("range"), low: z.array(partSchema).min(1), high: z.array(partSchema).min(1) }),
  z.object({ kind: z.literal("number"), number: z.string() }),
  z.object({ kind: z.literal("name"), text: z.string(), quoted: z.boolean() }),
  z.object({ kind: z.literal("flag") }),
  z.object({ kind: z.literal("position"), latitude: z.string(), longitude: z.string() }),
  z.object({ kind: z.literal("clock"), from: z.string(), to: z.string().nullable() }),
  z.object({ kind: z.literal("date"), date: z.string() }),
  z.object({ kind: z.literal("point"), depth: z.array(partSchema).min(1), temp: z.array(partSchema).min(1) }),
  z.object({ kind: z.literal("unread"), text: z.string() }),
]);

const offset = z.int().nonnegative();

export const slotSchema = z.object({ text: z.string(), quoted: z.boolean(), start: offset, stop: offset });

export const itemSchema = z.object({
  /** The word's canonical spelling; empty where the value is unread. */
  word: z.string(),
  /** Written without its word: `18 lb` for `weight 18 lb`. */
  bare: z.boolean(),
  value: valueSchema,
  start: offset,
  /** Where the value starts; a flag's is empty and starts where the flag stops. */
  valueStart: offset,
  stop: offset,
});

const physical = { raw: z.string(), end: z.enum(["\n", "\r\n", "\r", ""]) };

const read = {
  ...physical,
  date: z.string().nullable(),
  /** `HH:MM` or `HH:MM:SS`. */
  clock: z.string().nullable(),
  /** `+HH:MM`, `-HH:MM` or `Z`. */
  offset: z.string().nullable(),
  approx: z.boolean(),
  verb: z.string(),
  slots: z.array(slotSchema),
  items: z.array(itemSchema),
  /** The comment with its `#`, or null. */
  comment: z.string().nullable(),
  verbStart: offset,
  verbStop: offset,
};

export const lineSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("blank"), ...physical }),
  z.object({ kind: z.literal("comment"), ...physical }),
  z.object({ kind: z.literal("note-text"), ...physical }),
  z.object({ kind: z.literal("unreadable"), ...physical }),
  z.object({ kind: z.literal("property"), block: z.enum(["boat", "trip"]), ...read }),
  z.object({ kind: z.literal("fact"), ...read }),
]);

export const journalSchema = z.object({
  format: z.literal(FORMAT_NAME),
  /** The file starts with a byte order mark. */
  bom: z.boolean(),
  lines: z.array(lineSchema),
});

/** A half-open stretch of a line, in UTF-16 code units from its start. */
export type Span = readonly [start: number, stop: number];
export type Part = z.infer<typeof partSchema>;
export type Quantity = z.infer<typeof quantitySchema>;
export type Value = z.infer<typeof valueSchema>;
export type Slot = z.infer<typeof slotSchema>;
export type Item = z.infer<typeof itemSchema>;
export type Line = z.infer<typeof lineSchema>;
export type PropertyLine = Extract<Line, { kind: "property" }>;
export type FactLine = Extract<Line, { kind: "fact" }>;
/** A line whose words were read: an event, a gear line, an opener or a property. */
export type ReadLine = PropertyLine | FactLine;
export type Journal = z.infer<typeof journalSchema>;
