/** The let-out table as one page to print: black on white, nothing to load, no script. */
import { type LetOutTable, mark } from "../../../server/reports/let-out-table.ts";

const STYLE = `
  @page { margin: 12mm; }
  body { font: 11pt/1.35 system-ui, sans-serif; color: #000; background: #fff; max-width: 60em; margin: 1.5em auto; padding: 0 1em; }
  h1 { font-size: 16pt; margin: 0 0 .3em; }
  p { margin: .2em 0; }
  .scroll { overflow-x: auto; }
  table { border-collapse: collapse; margin: 1em 0; font-variant-numeric: tabular-nums; }
  th, td { border: 1px solid #000; padding: .25em .6em; text-align: right; }
  thead th { border-bottom-width: 2px; vertical-align: bottom; }
  thead { display: table-header-group; }
  tr, ol, ul { break-inside: avoid; }
  ol, ul { padding-left: 1.5em; margin: .4em 0; }
  .caution { font-weight: bold; margin-top: .8em; }
  @media print { body { margin: 0; padding: 0; max-width: none; font-size: 12pt; } .scroll { overflow: visible; } }
`;

/** The whole page. */
export function letOutPage(table: LetOutTable): string {
  const { title, facts, heads, rows, notes, sure, caution } = table;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${text(title)}</h1>
${facts.map((fact) => `<p>${text(fact)}</p>`).join("\n")}
<div class="scroll"><table>
<thead><tr>${["depth", ...heads].map((head) => `<th scope="col">${text(head)}</th>`).join("")}</tr></thead>
<tbody>
${rows.map(({ depth, cells }) => `<tr><th scope="row">${text(depth)}</th>${cells.map((cell) => `<td>${text(cell)}</td>`).join("")}</tr>`).join("\n")}
</tbody>
</table></div>
${notes.map((note, index) => `<p>${mark(index + 1)} ${text(note)}</p>`).join("\n")}
${list(sure)}
<p class="caution">${text(caution)}</p>
</body>
</html>
`;
}

function list(sentences: readonly string[]): string {
  return sentences.length === 0
    ? ""
    : `<ul>\n${sentences.map((one) => `<li>${text(one)}</li>`).join("\n")}\n</ul>`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function text(said: string): string {
  return said.replaceAll(/[&<>"]/gu, (found) => ENTITIES[found] ?? found);
}
