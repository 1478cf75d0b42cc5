/**
 * Runs the extension's tests inside a real editor, once with the server in a process and once, as in a browser, with
 * the server in a worker. The exit code is the verdict; the last line has the counts:
 *
 *     editor: 72 passed, 0 failed
 *
 * With `--web` only the second is run, with `--desktop` only the first.
 * The editor's own log is printed when something fails, or as it comes with `--verbose`. With `--packaged` the editor
 * is given only what the packaged extension holds, which shows that nothing is missing from it.
 */
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, dirname, join, resolve } from "node:path";
import { Writable } from "node:stream";
import { runTests } from "@vscode/test-electron";
import { listFiles } from "@vscode/vsce";
import { type ChosenHost, chooseHost } from "./choose-host.ts";
import type { TestResult } from "./suite/runner.ts";

/** How the extension runs in the editor: its name for the log, its tests, and what the editor is told. */
interface Kind {
  readonly name: string;
  readonly tests: string;
  readonly args: readonly string[];
}

const kinds: Readonly<Record<"desktop" | "web", Kind>> = {
  desktop: { name: "with a server process", tests: "index.cjs", args: [] },
  web: {
    name: "in the browser's worker",
    tests: "index-web.cjs",
    args: ["--extensionDevelopmentKind=web"],
  },
};

const verbose = process.argv.includes("--verbose");
const packaged = process.argv.includes("--packaged");
const projectFolder = resolve(import.meta.dirname, "..", "..");
/** The workspace: the example journal with its wrong trips, and a few files that show one thing each. */
const journal = join(projectFolder, "examples", "bright-penny");
const fixtures = join(import.meta.dirname, "fixtures");

/** Settings of the fresh profile: nothing is looked up, and nothing but the file is shown. */
const profileSettings = {
  "workbench.startupEditor": "none",
  "telemetry.telemetryLevel": "off",
  "extensions.autoCheckUpdates": false,
  "git.enabled": false,
  "chat.disableAIFeatures": true,
};

/** Runs the tests in `host`, with everything they write in `scratch`, and answers what they reported. */
async function runInHost(host: ChosenHost, kind: Kind, scratch: string): Promise<readonly TestResult[]> {
  const report = join(scratch, "report.json");
  const workspace = join(scratch, "workspace");
  const profile = join(scratch, "profile");
  for (const source of [journal, fixtures]) cpSync(source, workspace, { recursive: true });
  mkdirSync(join(profile, "User"), { recursive: true });
  writeFileSync(join(profile, "User", "settings.json"), JSON.stringify(profileSettings));
  // The browser host is a script for this very Node, which need not be the machine's own.
  const path = `${dirname(process.execPath)}${delimiter}${process.env.PATH ?? ""}`;
  const log = new HeldLog(verbose);
  const verdict = await runTests({
    stdout: log,
    stderr: log,
    vscodeExecutablePath: host.executable,
    extensionDevelopmentPath: packaged ? await copyPackaged(join(scratch, "extension")) : projectFolder,
    extensionTestsPath: join(projectFolder, "dist", "editor-tests", kind.tests),
    extensionTestsEnv: { PATH: path },
    launchArgs: [
      workspace,
      `--user-data-dir=${profile}`,
      `--extensions-dir=${join(scratch, "extensions")}`,
      "--disable-extensions",
      ...kind.args,
    ],
  }).then(
    () => undefined,
    (error: unknown) => (error instanceof Error ? error.message : String(error)),
  );
  const results: TestResult[] = existsSync(report) ? JSON.parse(readFileSync(report, "utf8")) : [];
  const unexplained = verdict !== undefined && results.every(({ failure }) => failure === undefined);
  if (verdict !== undefined) log.release();
  if (unexplained || results.length === 0) {
    return [
      ...results,
      { name: "the editor ran the tests", ms: 0, failure: verdict ?? "no test was reported" },
    ];
  }
  return results;
}

/** Copies the files that packaging would pack, and answers the folder they are in. */
async function copyPackaged(folder: string): Promise<string> {
  for (const file of await listFiles({ cwd: projectFolder, packagedDependencies: [] })) {
    cpSync(join(projectFolder, file), join(folder, file));
  }
  return folder;
}

/** Holds the editor's talkative log back until it is wanted. */
class HeldLog extends Writable {
  readonly #verbose: boolean;
  readonly #held: Buffer[] = [];

  constructor(verbose: boolean) {
    super();
    this.#verbose = verbose;
  }

  override _write(chunk: Buffer, _encoding: BufferEncoding, done: () => void): void {
    if (this.#verbose) process.stdout.write(chunk);
    else this.#held.push(chunk);
    done();
  }

  /** Prints everything held back. */
  release(): void {
    process.stdout.write(Buffer.concat(this.#held));
    this.#held.length = 0;
  }
}

/** Bundles the extension, the server and the tests, so that what is tested is what is written. */
function bundle(): void {
  const result = spawnSync(process.execPath, [join(projectFolder, "esbuild.config.ts"), "--tests"], {
    stdio: "inherit",
  });
  if (result.status !== 0) throw new Error("Bundling failed.");
}

/** Prints one kind's results, and answers how many passed and failed. */
function printResults(results: readonly TestResult[]): { passed: number; failed: number } {
  for (const { name, ms, failure, measured } of results) {
    console.log(
      failure === undefined
        ? `  ok      ${name} (${measured ?? `${ms} ms`})`
        : `  FAILED  ${name}\n${failure}`,
    );
  }
  const failed = results.filter(({ failure }) => failure !== undefined).length;
  return { passed: results.length - failed, failed };
}

/** Runs one kind in a folder of its own. */
async function runKind(host: ChosenHost, kind: Kind): Promise<{ passed: number; failed: number }> {
  const scratch = mkdtempSync(join(tmpdir(), "deepwake-editor-"));
  try {
    console.log(`editor tests: in ${host.name}, ${kind.name}`);
    return printResults(await runInHost(host, kind, scratch));
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

const wanted = (["desktop", "web"] as const).filter((kind) => process.argv.includes(`--${kind}`));
const total = { passed: 0, failed: 0 };
try {
  bundle();
  const host = await chooseHost(process.env);
  for (const kind of wanted.length === 0 ? (["desktop", "web"] as const) : wanted) {
    const { passed, failed } = await runKind(host, kinds[kind]);
    total.passed += passed;
    total.failed += failed;
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  total.failed++;
}
console.log(`editor: ${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;
