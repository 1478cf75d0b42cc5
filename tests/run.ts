/**
 * All tests, one command: `npm test`. Bundles, checks style and types, runs the suite, then the tests inside the real
 * editor. Ends with one line that counts what ran: `N passed, N failed`.
 *
 *     npm test                  everything
 *     npm test -- --no-editor   without the real editor, and says so
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";

/** What one step counted. */
interface Count {
  readonly passed: number;
  readonly failed: number;
}

const ROOT = join(import.meta.dirname, "..");
const BIN = join(ROOT, "node_modules", ".bin");
const PROJECTS = ["tsconfig.json", "server/lsp", "server/files", "client", "tests"];

const { values: flags } = parseArgs({ options: { "no-editor": { type: "boolean", default: false } } });

/** Runs a command with its output shown; true when it succeeds. */
function succeeds(command: string, args: readonly string[]): boolean {
  return spawnSync(command, args, { cwd: ROOT, stdio: "inherit" }).status === 0;
}

function one(name: string, passed: boolean): Count {
  console.log(`${name}: ${passed ? "passed" : "FAILED"}\n`);
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1 };
}

function bundle(): Count {
  return one("bundles", succeeds(process.execPath, ["esbuild.config.ts", "--tests"]));
}

function style(): Count {
  return one("style", succeeds(join(BIN, "biome"), ["ci", "--reporter=summary"]));
}

function types(): Count {
  return one("types", PROJECTS.map((project) => succeeds(join(BIN, "tsc"), ["-p", project])).every(Boolean));
}

/** The suite; its own report is read back for the count, so that a run without tests fails. */
function suite(): Count {
  const folder = mkdtempSync(join(tmpdir(), "deepwake-suite-"));
  const report = join(folder, "report.json");
  const args = ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const passed = succeeds(join(BIN, "vitest"), args);
  const count = suiteCount(report);
  rmSync(folder, { recursive: true, force: true });
  return passed ? count : { passed: count.passed, failed: Math.max(1, count.failed) };
}

function suiteCount(report: string): Count {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, "utf8"));
    return numPassedTests > 0 ? { passed: numPassedTests, failed: numFailedTests } : { passed: 0, failed: 1 };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

/** The editor's tests end with `editor: N passed, M failed`. */
function editor(): Count {
  if (flags["no-editor"]) {
    console.log("The tests inside the real editor were left out (--no-editor).\n");
    return { passed: 0, failed: 0 };
  }
  const run = spawnSync(process.execPath, ["tests/editor/run-editor-tests.ts"], {
    cwd: ROOT,
    stdio: ["inherit", "pipe", "inherit"],
    encoding: "utf8",
  });
  process.stdout.write(run.stdout);
  const said = /editor: (\d+) passed, (\d+) failed/u.exec(run.stdout);
  const count = { passed: Number(said?.[1] ?? 0), failed: Number(said?.[2] ?? 0) };
  const isGood = run.status === 0 && count.passed > 0;
  return isGood ? count : { passed: count.passed, failed: Math.max(1, count.failed) };
}

let passed = 0;
let failed = 0;
for (const step of [bundle, style, types, suite, editor]) {
  const count = step();
  passed += count.passed;
  failed += count.failed;
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
