/** The let-out table on a terminal; where it is narrow, the columns stand in blocks one below the other. */
import type { LetOutTable } from "../../../server/reports/let-out-table.ts";
import { mark } from "../../../server/reports/let-out-table.ts";
import { printable } from "../render/printable.ts";
import { table as columnsOf } from "../render/table.ts";
import type { Paint } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";

/** The whole answer, with line ends. */
export function letOutText(table: LetOutTable, width: number, paint: Paint): string {
  const said = (text: string, hang = 2): string[] => wrap(printable(text), width, hang);
  const lines = [
    paint.strong(table.title),
    ...table.facts.flatMap((fact) => said(fact)),
    "",
    ...blocks(table, width, paint),
    ...table.notes.flatMap((note, index) => said(`${mark(index + 1)} ${note}`)),
    ...(table.notes.length === 0 ? [] : [""]),
    ...table.sure.flatMap((sentence) => said(sentence)),
    ...said(table.caution),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** As many columns to a block as fit; one that is wider than the screen stays whole. */
function blocks(table: LetOutTable, width: number, paint: Paint): string[] {
  const lines: string[] = [];
  for (let from = 0; from < table.heads.length; ) {
    let count = table.heads.length - from;
    while (count > 1 && block(table, from, count, width, paint) === undefined) count--;
    const fits = block(table, from, count, width, paint);
    lines.push(...(fits ?? block(table, from, count, Number.POSITIVE_INFINITY, paint) ?? []), "");
    from += count;
  }
  return lines;
}

function block(
  { heads, rows }: LetOutTable,
  from: number,
  count: number,
  width: number,
  paint: Paint,
): string[] | undefined {
  const own = <T>(all: readonly T[]): readonly T[] => all.slice(from, from + count);
  return columnsOf(
    ["depth", ...own(heads)].map((head) => ({ head: printable(head), side: "right" as const })),
    rows.map(({ depth, cells }) => ({ cells: [depth, ...own(cells)].map(printable) })),
    width,
    paint.faint,
  );
}
