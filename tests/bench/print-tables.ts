import { type Area, type Goal, isMet, type Row } from "./figures.ts";

const columns = ["measure", "ours", "goal", "peer", "peer's figure", "ratio", "goal met"];

/** An area as a heading, one Markdown table and its notes. */
export function areaMarkdown(area: Area): string {
  const cells = area.rows.map(rowCells);
  const widths = columns.map((column, index) =>
    Math.max(column.length, ...cells.map((row) => row[index]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join(" | ")} |`;
  const table = [line(columns), line(widths.map((width) => "-".repeat(width))), ...cells.map(line)];
  const notes = [...new Set(area.notes)].map((note) => `- ${note}`);
  return [`## ${area.title}`, "", ...table, ...(notes.length > 0 ? ["", ...notes] : []), ""].join("\n");
}

function rowCells(row: Row): string[] {
  const met = isMet(row);
  return [
    row.measure,
    row.ours === undefined ? "not built yet" : figure(row.ours, row.unit),
    row.goal ? goalText(row.goal, row.unit) : "",
    row.peer ?? "",
    row.theirs === undefined ? "" : figure(row.theirs, row.unit),
    ratioText(row),
    met === undefined ? "" : met ? "yes" : "**no**",
  ];
}

function goalText(goal: Goal, unit: Row["unit"]): string {
  if (goal.kind === "at-most") return `≤ ${goal.bound} ${unit}`;
  return goal.kind === "times-faster" ? `≥ ${goal.times} × faster` : `≤ ${goal.times} × as long`;
}

function ratioText({ ours, theirs, goal, unit }: Row): string {
  if (ours === undefined || theirs === undefined || ours === 0 || theirs === 0) return "";
  if (goal?.kind === "times-at-most") return `${rounded(ours / theirs)} × as long`;
  const [better, worse] = unit === "MB" || unit === "KB" ? ["smaller", "larger"] : ["faster", "slower"];
  return theirs >= ours ? `${rounded(theirs / ours)} × ${better}` : `${rounded(ours / theirs)} × ${worse}`;
}

function figure(value: number, unit: string): string {
  return `${rounded(value)} ${unit}`;
}

/** Three figures are all that two shared cores can tell apart. */
function rounded(value: number): string {
  if (value >= 100) return String(Math.round(value));
  return String(Number(value.toPrecision(3)));
}
