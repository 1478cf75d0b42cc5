/** Writes every generated document anew: `npm run docs`. Prints the ones that changed. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { DOCUMENTS } from "./documents.ts";

const project = join(import.meta.dirname, "../..");

for (const { path, render } of DOCUMENTS) {
  const file = join(project, path);
  const current = existsSync(file) ? readFileSync(file, "utf8") : "";
  const text = render(current);
  if (text === current) continue;
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  console.log(`wrote ${path}`);
}
