/** The edges between folders, as docs/architecture.md draws them: dependencies point one way. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "..");

/** Folder → what it may import: folders of ours, and packages. */
const ALLOWED: Readonly<Record<string, { ours: readonly string[]; packages: readonly string[] }>> = {
  grammar: { ours: ["grammar"], packages: ["chevrotain", "zod"] },
  "server/physics": { ours: ["server/physics"], packages: [] },
  "server/model": { ours: ["grammar", "server/model"], packages: ["@date-fns/tz"] },
  "server/analysis": {
    ours: ["grammar", "server/model", "server/physics", "server/analysis"],
    packages: ["geographiclib-geodesic", "suncalc"],
  },
  "server/checks": {
    ours: ["grammar", "server/model", "server/analysis", "server/checks"],
    packages: ["fastest-levenshtein"],
  },
  "server/workspace": {
    ours: ["grammar", "server/model", "server/analysis", "server/checks", "server/workspace"],
    packages: [],
  },
  "server/reports": { ours: ["grammar", "server/model", "server/analysis", "server/reports"], packages: [] },
  "server/exchange": {
    ours: [
      "grammar",
      "server/model",
      "server/physics",
      "server/analysis",
      "server/checks",
      "server/exchange",
    ],
    packages: ["zod"],
  },
  "server/service": {
    ours: [
      "grammar",
      "server/model",
      "server/analysis",
      "server/checks",
      "server/workspace",
      "server/reports",
      "server/service",
    ],
    packages: ["vscode-languageserver-types"],
  },
  "server/files": {
    ours: ["grammar", "server/model", "server/workspace", "server/files"],
    packages: ["node:*"],
  },
  "server/lsp": {
    ours: ["grammar", "server/service", "server/checks", "server/workspace", "server/files", "server/lsp"],
    packages: ["node:*", "vscode-languageserver", "zod"],
  },
  "client/cli": {
    ours: [
      "grammar",
      "server/model",
      "server/analysis",
      "server/checks",
      "server/reports",
      "server/exchange",
      "server/service",
      "server/files",
      "server/lsp/main-node.ts",
      "client/cli",
    ],
    packages: ["node:*", "picocolors", "zod", "fastest-levenshtein"],
  },
  "client/vscode": {
    ours: ["client/vscode", "server/lsp/protocol.ts"],
    packages: ["node:*", "vscode", "vscode-languageclient", "@vscode/vsce"],
  },
};

function sources(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
}

function importsOf(file: string): string[] {
  const text = readFileSync(join(ROOT, file), "utf8");
  return [...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/gu)].map((match) => match[1] ?? "");
}

/** What is wrong with one import; undefined when it is allowed. */
function wrongImport(folder: string, file: string, target: string): string | undefined {
  const { ours, packages } = ALLOWED[folder] ?? { ours: [], packages: [] };
  if (target.startsWith(".")) {
    const path = relative(ROOT, join(ROOT, dirname(file), target)).replaceAll("\\", "/");
    const isAllowed =
      ours.some((own) => path === own || path.startsWith(`${own}/`)) || path.endsWith("package.json");
    return isAllowed ? undefined : `${file} imports ${path}`;
  }
  const isNode = target.startsWith("node:") && packages.includes("node:*");
  const isAllowed = isNode || packages.some((name) => target === name || target.startsWith(`${name}/`));
  return isAllowed ? undefined : `${file} imports ${target}`;
}

test.each(Object.keys(ALLOWED))("%s imports only what it may", (folder) => {
  const files = sources(folder);
  expect(files.length).toBeGreaterThan(0);
  expect(
    files.flatMap((file) => importsOf(file).flatMap((target) => wrongImport(folder, file, target) ?? [])),
  ).toEqual([]);
});

test("the rule can fail", () => {
  expect(wrongImport("grammar", "grammar/parse.ts", "../server/model/gear.ts")).toBeDefined();
  expect(wrongImport("server/physics", "server/physics/water.ts", "node:fs")).toBeDefined();
  expect(wrongImport("server/model", "server/model/gear.ts", "zod")).toBeDefined();
});

test("every folder of sources has its rule", () => {
  const folders = ["grammar", ...["server", "client"].flatMap((top) => subfolders(top))];
  expect(folders.filter((folder) => sources(folder).length > 0 && ALLOWED[folder] === undefined)).toEqual([]);
});

function subfolders(top: string): string[] {
  return readdirSync(join(ROOT, top), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => `${top}/${entry.name}`);
}
