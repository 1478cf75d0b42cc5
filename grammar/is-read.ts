import type { Line, ReadLine } from "./journal.ts";

/** True for lines whose words were read. Apart from the schemas, which only boundaries load. */
export function isRead(line: Line): line is ReadLine {
  return line.kind === "fact" || line.kind === "property";
}
