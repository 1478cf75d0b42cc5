/**
 * Journal → text, two ways. `printText` gives back the very text that was parsed; `canonicalLine` writes a line the
 * one canonical way, a function of that line alone. The canonical form never sorts, aligns, wraps or converts.
 */
import type { Item, Journal, Line, Part, ReadLine, Value } from "./journal.ts";

/** The very text that was parsed. */
export function printText(journal: Journal): string {
  let text = journal.bom ? "\ufeff" : "";
  for (const line of journal.lines) text += line.raw + line.end;
  return text;
}

/** One line in canonical form, without its line end. Lines that were not read come back as they are. */
export function canonicalLine(line: Line): string {
  if (line.kind !== "fact" && line.kind !== "property") return line.raw;
  const words = [...stampWords(line), line.verb, ...line.slots.map(nameText), ...itemWords(line)];
  const indent = line.kind === "property" ? "  " : "";
  const comment = line.comment === null ? "" : `  ${line.comment}`;
  return indent + words.join(" ") + comment;
}

function stampWords(line: ReadLine): string[] {
  const words = line.date === null ? [] : [line.date];
  if (line.clock !== null) words.push(`${line.approx ? "~" : ""}${line.clock}${line.offset ?? ""}`);
  return words;
}

function itemWords(line: ReadLine): string[] {
  return line.items.map((item, index) => {
    const text = itemText(item);
    const isListed = item.value.kind === "point" && line.items[index + 1]?.value.kind === "point";
    return isListed ? `${text},` : text;
  });
}

function itemText(item: Item): string {
  const value = valueText(item.value, item.word);
  if (item.bare) return value;
  return value === "" ? item.word : `${item.word} ${value}`;
}

function valueText(value: Value, word: string): string {
  switch (value.kind) {
    case "flag":
      return "";
    case "quantity":
      return partsText(value.parts);
    case "range":
      return `${partsText(value.low)} to ${partsText(value.high)}`;
    case "number":
      return word === "course" || word === "to" ? bearingText(value.number) : value.number;
    case "name":
      return nameText(value);
    case "position":
      return `${value.latitude} ${value.longitude}`;
    case "clock":
      return value.to === null ? value.from : `${value.from} to ${value.to}`;
    case "date":
      return value.date;
    case "point":
      return `${partsText(value.depth)} ${partsText(value.temp)}`;
    case "unread":
      return value.text;
  }
}

/** Courses have three digits before the point. */
function bearingText(number: string): string {
  const [whole = "", ...rest] = number.split(".");
  return [whole.padStart(3, "0"), ...rest].join(".");
}

function partsText(parts: readonly Part[]): string {
  return parts.map((part) => (part.unit === null ? part.number : `${part.number} ${part.unit}`)).join(" ");
}

function nameText(name: { text: string; quoted: boolean }): string {
  return name.quoted ? quote(name.text) : name.text;
}

/** A text in quotes; a quote inside is doubled. */
export function quote(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}
