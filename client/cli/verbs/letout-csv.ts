/** The let-out table as CSV: the table first, then facts, footnotes and the caution, a line each. */
import { type LetOutTable, mark } from "../../../server/reports/let-out-table.ts";

/** RFC 4180, with line feeds. */
export function letOutCsv(table: LetOutTable): string {
  const rows = [
    ["depth", ...table.heads],
    ...table.rows.map(({ depth, cells }) => [depth, ...cells]),
    [],
    [table.title],
    ...table.facts.map((fact) => [fact]),
    ...table.notes.map((note, index) => [`${mark(index + 1)} ${note}`]),
    ...table.sure.map((sentence) => [sentence]),
    [table.caution],
  ];
  return rows.map((cells) => `${cells.map(field).join(",")}\n`).join("");
}

/** Quoted where it has to be; a name that a spreadsheet would take for a formula is kept a text. */
function field(text: string): string {
  const safe = /^[=+\-@\t\r]/u.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
