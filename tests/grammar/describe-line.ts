/**
 * A line's typed form as one short text, so that a case is one line:
 * `fact 06:14 catch P1 king > .weight=18 lb > kept > by='G1' > #as typed`.
 * A leading dot marks an item written without its word; `'…'` is a bare name and `"…"` a quoted one.
 */
import type { Item, Line, Part, ReadLine, Value } from "../../grammar/journal.ts";

/** The tree of one line. */
export function describeLine(line: Line): string {
  if (line.kind !== "fact" && line.kind !== "property") return line.kind;
  const head = line.kind === "fact" ? "fact" : `${line.block}-property`;
  const slots = line.slots.map((slot) => (slot.quoted ? JSON.stringify(slot.text) : slot.text));
  const parts = [
    [head, ...describeStamp(line), line.verb, ...slots].join(" "),
    ...line.items.map(describeItem),
  ];
  if (line.comment !== null) parts.push(line.comment);
  return parts.join(" > ");
}

function describeStamp(line: ReadLine): string[] {
  const stamp = line.date === null ? [] : [line.date];
  if (line.clock !== null) stamp.push(`${line.approx ? "about " : ""}${line.clock}`);
  if (line.offset !== null) stamp.push(`offset ${line.offset}`);
  return stamp;
}

function describeItem(item: Item): string {
  if (item.value.kind === "unread") return `unread ${item.value.text}`;
  const value = describeValue(item.value);
  return `${item.bare ? "." : ""}${item.word}${value === "" ? "" : `=${value}`}`;
}

function describeValue(value: Exclude<Value, { kind: "unread" }>): string {
  switch (value.kind) {
    case "flag":
      return "";
    case "quantity":
      return describeParts(value.parts);
    case "range":
      return `${describeParts(value.low)} to ${describeParts(value.high)}`;
    case "number":
      return `number ${value.number}`;
    case "name":
      return value.quoted ? JSON.stringify(value.text) : `'${value.text}'`;
    case "position":
      return `(${value.latitude}; ${value.longitude})`;
    case "clock":
      return value.to === null ? `clock ${value.from}` : `clock ${value.from} to ${value.to}`;
    case "date":
      return `date ${value.date}`;
    case "point":
      return `(${describeParts(value.depth)}; ${describeParts(value.temp)})`;
  }
}

function describeParts(parts: readonly Part[]): string {
  return parts.map((part) => `${part.number} ${part.unit ?? "?"}`).join(" + ");
}
