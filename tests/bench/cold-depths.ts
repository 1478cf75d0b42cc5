import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { median, type Row } from "./figures.ts";
import { sampleTexts } from "./generate.ts";
import { projectFolder, workFolder } from "./places.ts";

const PROGRAM = "cold-depths-program.cjs";
const ROUNDS = { quick: 5, thorough: 11 } as const;

/** All depths of a day with their bands, in processes that just started: as ours start, and with nothing kept. */
export async function coldDepthRows(isQuick: boolean): Promise<Row[]> {
  const folder = join(workFolder, "cold-depths");
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  await bundleProgram(folder);
  const journal = join(folder, "day.trip");
  writeFileSync(journal, sampleTexts(150).journal);
  const rounds = isQuick ? ROUNDS.quick : ROUNDS.thorough;
  const measure = "all set, move and again lines of 149 events with bands, in a process that just started";
  // The first run is the one that keeps what it compiled.
  timeOnce(folder, journal, true);
  const [kept, fresh] = [true, false].map((isKept) =>
    median(Array.from({ length: rounds }, () => timeOnce(folder, journal, isKept))),
  );
  return [
    { measure, unit: "ms", ours: kept, goal: { kind: "at-most", bound: 60 } },
    { measure: `${measure}, the very first on a machine`, unit: "ms", ours: fresh },
  ];
}

/** As what ships is bundled: minified, and with the stamp by which compiled code is kept. */
async function bundleProgram(folder: string): Promise<void> {
  const { outputFiles } = await build({
    entryPoints: [join(projectFolder, "tests/bench/cold-depths-program.ts")],
    outfile: join(folder, PROGRAM),
    bundle: true,
    minify: true,
    charset: "ascii",
    format: "cjs",
    platform: "node",
    target: "node20",
    write: false,
  });
  const [{ contents } = { contents: new Uint8Array() }] = outputFiles;
  const stamp = createHash("sha256").update(contents).digest("hex");
  writeFileSync(join(folder, PROGRAM), Buffer.concat([Buffer.from(`/*${stamp}*/`), contents]));
}

function timeOnce(folder: string, journal: string, isKept: boolean): number {
  const loader = pathToFileURL(join(projectFolder, "server/files/kept-code.ts")).href;
  const script = `import { loadKept } from ${JSON.stringify(loader)};
const { timeDepths } = loadKept(${JSON.stringify(folder)}, "${PROGRAM}", "bench");
console.log(JSON.stringify(timeDepths(${JSON.stringify(journal)})));`;
  const off = isKept ? {} : { NODE_DISABLE_COMPILE_CACHE: "1" };
  const env = { ...process.env, TMPDIR: folder, TEMP: folder, TMP: folder, ...off };
  const args = ["--disable-warning=ExperimentalWarning", "--input-type=module", "-e", script];
  const { stdout, stderr } = spawnSync(process.execPath, args, { encoding: "utf8", env });
  const { lines, milliseconds } = JSON.parse(stdout || "{}");
  if (!(lines > 30)) throw new Error(`no depths of the day: ${stderr}`);
  return milliseconds;
}
