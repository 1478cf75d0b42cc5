/** Columns of text, as wide as their widest cell. */
import { padded, textWidth } from "./text-width.ts";
import { wrap } from "./wrap.ts";

/** A column's heading, and the side its cells keep to. */
export interface Column {
  readonly head: string;
  readonly side?: "left" | "right";
}

/** A row of cells; a text in place of the last ones fills what is left of the line. */
export interface Row {
  readonly cells: readonly string[];
  readonly rest?: string;
}

const GAP = "  ";

/** The table's lines, or undefined where it is wider than `width`. */
export function table(
  columns: readonly Column[],
  rows: readonly Row[],
  width: number,
  dim: (text: string) => string,
): string[] | undefined {
  const widths = columns.map(({ head }, index) =>
    Math.max(textWidth(head), ...rows.map((row) => textWidth(row.cells[index] ?? ""))),
  );
  if (widths.reduce((sum, one) => sum + one + GAP.length, -GAP.length) > width) return undefined;
  const line = (cells: readonly string[]): string =>
    cells.map((cell, index) => padded(cell, widths[index] ?? 0, columns[index]?.side)).join(GAP);
  return [
    dim(line(columns.map(({ head }) => head)).trimEnd()),
    ...rows.flatMap(({ cells, rest }) => withRest(line(cells), rest, width, dim)),
  ];
}

function withRest(
  start: string,
  rest: string | undefined,
  width: number,
  dim: (text: string) => string,
): string[] {
  if (rest === undefined) return [start.trimEnd()];
  const room = width - textWidth(start) - GAP.length;
  const [first = "", ...more] = wrap(rest, room);
  const under = " ".repeat(textWidth(start) + GAP.length);
  return [`${start}${GAP}${dim(first)}`, ...more.map((line) => under + dim(line))];
}
