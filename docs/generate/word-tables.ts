/** The pages' tables of words: each kind of line with its slots, its words and an example. */
import type { Dimension } from "../../grammar/units.ts";
import {
  ALL_ROWS,
  type ItemRow,
  type NameKind,
  type Place,
  type ValueType,
  type VerbRow,
} from "../../grammar/vocabulary.ts";
import { table } from "./generated-parts.ts";

const DIMENSIONS: Readonly<Record<Dimension | "any", string>> = {
  length: "a length",
  speed: "a speed",
  temperature: "a temperature",
  mass: "a weight",
  duration: "a span of time",
  "linear-density": "a weight per length",
  angle: "an angle",
  area: "an area",
  force: "a pull",
  pressure: "a pressure",
  any: "a measure",
};
const NUMBERS = {
  count: "a count",
  bearing: "a bearing",
  dial: "a dial mark",
  ratio: "a plain number",
} as const;
const NAMES: Partial<Record<NameKind, string>> = {
  text: "a word, or text in quotes",
  compass: "a direction",
  clip: "a fin",
  guest: "a guest's id, or a name",
};

/** Words that every event has; said once, not in every table. */
const EVERYWHERE = new Set(["sure", "remark"]);

/** Sections for every kind of line that stands at a place. */
export function lineSections(place: Place): string {
  return ALL_ROWS.filter((row) => row.place === place)
    .map(lineSection)
    .join("\n\n");
}

/** One table of every kind of line at some places, for finding one's way. */
export function lineIndex(...places: readonly Place[]): string {
  const rows = ALL_ROWS.filter((row) => places.includes(row.place));
  return table(
    ["Line", "What it says"],
    rows.map((row) => [`[\`${row.verb}\`](#${anchor(row)})`, row.doc]),
  );
}

function anchor(row: VerbRow): string {
  return heading(row)
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");
}

function heading(row: VerbRow): string {
  const suffix = row.place === "boat" || row.place === "trip" ? ` of a ${row.place}` : "";
  return `\`${row.verb}\`${suffix}`;
}

function lineSection(row: VerbRow): string {
  const own = row.items.filter((item) => row.place !== "event" || !EVERYWHERE.has(item.word));
  const parts = [`### ${heading(row)}`, row.doc, `\`\`\`deepwake\n${exampleText(row)}\n\`\`\``];
  const notes = [slotNote(row), aliasNote(row), needNote(row), ...groupNotes(own)].filter(
    (note) => note !== "",
  );
  if (notes.length > 0) parts.push(notes.join(" "));
  if (own.length > 0) parts.push(table(["Word", "Then", "Says"], own.map(itemCells)));
  return parts.join("\n\n");
}

/** A property's example stands under an opener. */
function exampleText(row: VerbRow): string {
  if (row.place === "boat") return `boat "Bright Penny"\n  ${row.example}`;
  if (row.place === "trip") return `trip 2031-06-21 "Bright Penny"\n  ${row.example}`;
  return row.example;
}

function slotNote(row: VerbRow): string {
  if (row.slots.length === 0) return "";
  const slots = row.slots.map((slot) => `*${slot.label}*${slot.rest ? ", one or more" : ""}`);
  return `Right after \`${row.verb}\`: ${slots.join(", then ")}.`;
}

function aliasNote(row: VerbRow): string {
  return row.aliases.length === 0 ? "" : `Also read: ${codes(row.aliases)}.`;
}

function needNote(row: VerbRow): string {
  if (row.needs.length === 0) return "";
  return row.needs.length === 1 ? `Needs ${codes(row.needs)}.` : `Needs one of ${codes(row.needs)}.`;
}

function groupNotes(items: readonly ItemRow[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { word, group } of items) {
    if (group !== undefined) groups.set(group, [...(groups.get(group) ?? []), word]);
  }
  return [...groups.values()]
    .filter((words) => words.length > 1)
    .map((words) => `At most one of ${codes(words)}.`);
}

function itemCells(item: ItemRow): string[] {
  const spellings = codes([item.word, ...item.aliases]);
  const notes = [
    item.doc,
    ...(item.bare ? ["Its word may be left out."] : []),
    ...(item.many ? ["May be said more than once."] : []),
  ];
  return [spellings, takes(item.type), notes.join(" ")];
}

function takes(type: ValueType): string {
  switch (type.kind) {
    case "flag":
      return "";
    case "quantity":
      return DIMENSIONS[type.dimension] + (type.range ? ", or two with `to`" : "");
    case "number":
      return NUMBERS[type.what];
    case "name":
      return NAMES[type.of] ?? `a ${type.of}`;
    case "position":
      return "a position";
    case "clock":
      return `a clock time${type.range ? ", or two with `to`" : ""}`;
    case "date":
      return "a date";
    case "point":
      return "a depth and a temperature";
  }
}

function codes(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(", ");
}
