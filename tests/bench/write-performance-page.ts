import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { versionOf } from "./install-peers.ts";
import { peersFolder, projectFolder } from "./places.ts";

const start = "<!-- The bench writes what follows: npm run bench -- --write -->";
const end = "<!-- End of what the bench writes. -->";

const emptyPage = `# How fast

\`npm run bench\` measures this project next to general-purpose tools on the same events, in one run on one machine.
The ratios carry over to other machines; the milliseconds do not.

${start}
${end}
`;

/** Which machine and versions the figures belong to. */
export function machineLines(): string {
  const cores = cpus();
  const ours = ["chevrotain", "vscode-languageserver", "zod", "odex", "esbuild"];
  const peers = ["yaml-language-server", "langium", "yaml", "js-yaml"];
  const list = (names: readonly string[], folder: string): string =>
    names.map((name) => `${name} ${versionOf(name, folder)}`).join(", ");
  return [
    `Measured with Node ${process.versions.node} on ${cores.length} cores (${cores[0]?.model.trim() ?? "unknown"}).`,
    `Packages: ${list(ours, projectFolder)}. Peers: ${list(peers, peersFolder)}.`,
    "Times are medians unless a row says p95.",
    "",
  ].join("\n");
}

/** Puts the report into docs/performance.md, between its two markers; the rest of the page stays as it is. */
export function writePerformancePage(report: string): void {
  const file = join(projectFolder, "docs/performance.md");
  const page = existsSync(file) ? readFileSync(file, "utf8") : emptyPage;
  const from = page.indexOf(start);
  const to = page.indexOf(end);
  if (from < 0 || to < from)
    throw new Error("docs/performance.md has lost the markers that the bench writes between.");
  writeFileSync(file, `${page.slice(0, from)}${start}\n\n${report}\n${page.slice(to)}`);
}
