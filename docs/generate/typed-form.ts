/** The worked example of the typed form, and the JSON Schema of it. */
import * as z from "zod";
import {
  itemSchema,
  journalSchema,
  lineSchema,
  partSchema,
  quantitySchema,
  slotSchema,
  valueSchema,
} from "../../grammar/journal.ts";
import { parse } from "../../grammar/parse.ts";

/** A small journal with a line of most kinds. */
const EXAMPLE = `# First light.
trip 2031-06-21 "Bright Penny" charter
  anglers 6

5:45 probe C1 depth 82ft temp 45.5 F  # deep enough
06:14 catch P1 king 17 lb 8 oz kept
`;

/** The example's text, as it is typed. */
export function exampleText(): string {
  return `\`\`\`\n${EXAMPLE}\`\`\``;
}

/** The example's typed form. */
export function exampleJson(): string {
  return `\`\`\`json\n${shortJson(parse(EXAMPLE).journal)}\n\`\`\``;
}

/** JSON that keeps a value on one line where it fits. */
function shortJson(value: unknown, indent = "", width = 108): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  const write = (within: string, room: number): string[] =>
    isList
      ? value.map((entry) => shortJson(entry, within, room))
      : Object.entries(value).map(
          ([key, entry]) => `${JSON.stringify(key)}: ${shortJson(entry, within, room)}`,
        );
  const flat = write("", Number.POSITIVE_INFINITY).join(", ");
  const line = isList ? `[${flat}]` : flat === "" ? "{}" : `{ ${flat} }`;
  if (indent.length + line.length <= width) return line;
  const [open, close] = isList ? "[]" : "{}";
  return `${open}\n${write(inner, width)
    .map((entry) => inner + entry)
    .join(",\n")}\n${indent}${close}`;
}

/** The JSON Schema of the typed form, for other tools. */
export function journalJsonSchema(): string {
  const named = z.registry<{ id?: string; title?: string; description: string }>();
  named.add(journalSchema, {
    title: "Deepwake journal, format deepwake/1",
    description:
      "A journal or gear book, line by line. Joining each line's raw text and line end gives back the file.",
  });
  named.add(lineSchema, { id: "Line", description: "One line of the file, read or kept as it is." });
  named.add(slotSchema, { id: "Slot", description: "A name in its place right after the verb." });
  named.add(itemSchema, {
    id: "Item",
    description: "A word of a line and its value; offsets count UTF-16 code units from the line's start.",
  });
  named.add(valueSchema, { id: "Value", description: "The value after a word, by its kind." });
  named.add(quantitySchema, { id: "Quantity", description: "A measure: one part, or several that add up." });
  named.add(partSchema, {
    id: "Part",
    description:
      "A number as it was spelled, and its unit in its one spelling, or null where none was written.",
  });
  return `${JSON.stringify(z.toJSONSchema(journalSchema, { metadata: named }), null, 2)}\n`;
}
