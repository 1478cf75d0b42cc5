/**
 * The main job on the example journal, `npm start`: bundles, checks the journal, prints the true depth of every line
 * and the trips' summaries, writes the installable extension, and says how to open the journal in the editor.
 */
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join, relative } from "node:path";

const ROOT = join(import.meta.dirname, "..");
const JOURNAL = "examples/bright-penny/trips";
const MORNING = `${JOURNAL}/2031-06-21.trip`;

/** Runs one of the project's own programs; stops the job when it fails. */
function run(title: string, script: string, args: readonly string[]): void {
  if (title !== "") console.log(`\n— ${title} —\n`);
  const { status } = spawnSync(process.execPath, [script, ...args], { cwd: ROOT, stdio: "inherit" });
  if (status !== 0) {
    console.error(`\nStopped: "${script} ${args.join(" ")}" ended with ${status}.`);
    process.exit(status ?? 1);
  }
}

const deepwake = join("dist", "deepwake.mjs");
run("The programs, bundled", "esbuild.config.ts", []);
run("The journal, checked", deepwake, ["check", "examples/bright-penny/bright-penny.gear", JOURNAL]);
run("True depth of every line of a king-salmon morning", deepwake, ["depth", MORNING]);
run("Every trip in figures", deepwake, ["summary", JOURNAL]);
run("The editor extension", "client/vscode/package-extension.ts", ["--bundled"]);

const packaged = readdirSync(join(ROOT, "dist")).find((name) => name.endsWith(".vsix")) ?? "";
console.log(`
To see the depths in the editor:
  code --install-extension ${relative(ROOT, join(ROOT, "dist", packaged))}
  code examples/bright-penny ${MORNING}
(or any editor that installs .vsix files: Extensions, …, Install from VSIX). A deliberately wrong day to look at:
  examples/bright-penny/wrong/2031-07-04.trip
`);
