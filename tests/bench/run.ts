/**
 * Measures this project side by side with general-purpose peers and prints the ratios.
 *
 *     npm run bench                        everything, about five minutes
 *     npm run bench -- --quick             fewer rounds, about a minute
 *     npm run bench -- --only parse,lsp    some areas: lsp, index, startup, parse, solver, size
 *     npm run bench -- --write             and put the tables into docs/performance.md
 */
import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { type AreaName, areas, isAreaName } from "./areas.ts";
import { type Area, isMet } from "./figures.ts";
import { installPeers } from "./install-peers.ts";
import { areaMarkdown } from "./print-tables.ts";
import { machineLines, writePerformancePage } from "./write-performance-page.ts";

const { values: flags } = parseArgs({
  options: {
    quick: { type: "boolean", default: false },
    only: { type: "string", default: Object.keys(areas).join(",") },
    write: { type: "boolean", default: false },
  },
});

await installPeers();
const report = [machineLines()];
console.log(report[0]);
const verdicts: (boolean | undefined)[] = [];
for (const name of flags.only.split(",")) {
  if (!isAreaName(name)) throw new Error(`There is no area named "${name}".`);
  const area = await measure(name);
  verdicts.push(...area.rows.filter((row) => row.goal).map(isMet));
  const text = areaMarkdown(area);
  console.log(`\n${text}`);
  report.push(text);
}
const count = (verdict: boolean | undefined): number => verdicts.filter((one) => one === verdict).length;
console.log(`Goals: ${count(true)} met, ${count(false)} missed, ${count(undefined)} not measured.`);
if (flags.write) writePerformancePage(report.join("\n"));

/** Measures one area in a process of its own. */
function measure(name: AreaName): Promise<Area> {
  const child = fork(fileURLToPath(new URL("measure-area.ts", import.meta.url)), [
    name,
    flags.quick ? "quick" : "full",
  ]);
  return new Promise((resolve, reject) => {
    child.once("message", (area) => resolve(area as Area));
    child.once("error", reject);
    child.once("exit", (code) => reject(new Error(`The ${name} area ended with exit code ${code}.`)));
  });
}
