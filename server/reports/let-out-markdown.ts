/** The let-out table as Markdown. */
import type { LetOutTable } from "./let-out-table.ts";

/** The whole page, with a line end. */
export function letOutMarkdown(table: LetOutTable): string {
  const row = (cells: readonly string[]): string => `| ${cells.map(plain).join(" | ")} |`;
  const lines = [
    `# ${table.title}`,
    "",
    ...table.facts.flatMap((fact) => [plain(fact), ""]),
    row(["depth", ...table.heads]),
    `|${" ---: |".repeat(table.heads.length + 1)}`,
    ...table.rows.map(({ depth, cells }) => row([depth, ...cells])),
    "",
    ...listed(
      "",
      table.notes.map((note, index) => `${index + 1}. ${plain(note)}`),
    ),
    ...listed(
      "How sure:",
      table.sure.map((sentence) => `- ${plain(sentence)}`),
    ),
    `*${plain(table.caution)}*`,
  ];
  return `${lines.join("\n")}\n`;
}

function listed(head: string, items: readonly string[]): string[] {
  if (items.length === 0) return [];
  return [...(head === "" ? [] : [head, ""]), ...items, ""];
}

/** Names come from the file: nothing in them may act as Markdown. */
function plain(text: string): string {
  return text.replaceAll(/[\\`*_[\]<>~#|&!]/gu, "\\$&").replaceAll(/\s+/gu, " ");
}
