import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Area, type Effort, median, type Row } from "./figures.ts";
import { type SampleTexts, sampleTexts } from "./generate.ts";
import { LanguageClient } from "./language-client.ts";
import { built, missing, workFolder } from "./places.ts";
import { type BenchServer, benchServers, emptyWorkspace } from "./servers.ts";

/** A thing to start again and again, and the times that it took. */
interface Probe {
  name: string;
  run: () => Promise<number> | number;
  samples: number[];
}

/** From a started process to its first use, over starting Node alone in the same run. */
export async function benchStartup({ quick }: Effort): Promise<Area> {
  const notes: string[] = [];
  const sample = sampleTexts(150);
  const rows: Row[] = [];
  const servers = benchServers(notes);
  const absent = missing(built.commandLine);
  if (absent) notes.push(absent);
  for (const node of nodes()) {
    const version = spawnSync(node, ["--version"], { encoding: "utf8" }).stdout.trim();
    const alone = probe(`Node ${version} alone`, () => startNode(node, ["-e", "0"]));
    const check = absent ? undefined : probe("check", () => startNode(node, checkArguments(sample)));
    const starts = servers.map((server) => probe(server.name, () => firstDiagnostics(server, sample, node)));
    await interleave([alone, ...(check ? [check] : []), ...starts], quick ? 4 : 11, notes);
    const overNode = (measure: string, times: number, samples: readonly number[]): Row => {
      const row: Row = { measure: `${measure}, Node ${version}`, unit: "ms", peer: alone.name };
      return {
        ...row,
        ours: median(samples),
        theirs: median(alone.samples),
        goal: { kind: "times-at-most", times },
      };
    };
    rows.push(overNode("`deepwake check` of one file, 150 lines", 2.2, check?.samples ?? []));
    const ours = starts.find((one) => one.name === "ours")?.samples ?? [];
    const measure = "spawn to first diagnostics, 150 lines";
    rows.push(overNode(measure, 3, ours));
    for (const peer of starts.filter((one) => one.name !== "ours"))
      rows.push({
        measure: `${measure}, Node ${version}`,
        unit: "ms",
        ours: median(ours),
        peer: peer.name,
        theirs: median(peer.samples),
      });
  }
  notes.push(
    "All servers are bundled and minified by the same bundler. Ours, and the command line, keep what Node compiled of them, and what ran, between runs; the peers don't.",
  );
  return { title: "Start", rows, notes };
}

/** This Node, and the one that started npm if that is another. */
function nodes(): string[] {
  const starter = process.env.npm_node_execpath;
  return [...new Set([process.execPath, ...(starter ? [starter] : [])])];
}

function probe(name: string, run: Probe["run"]): Probe {
  return { name, run, samples: [] };
}

/** Runs the probes in rounds; the first round fills the system's caches and is not counted. */
async function interleave(probes: readonly Probe[], rounds: number, notes: string[]): Promise<void> {
  const failed = new Set<Probe>();
  for (let round = -1; round < rounds; round += 1)
    for (const one of probes.filter((candidate) => !failed.has(candidate))) {
      try {
        const milliseconds = await one.run();
        if (round >= 0) one.samples.push(milliseconds);
      } catch (error) {
        failed.add(one);
        notes.push(`${one.name}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
}

function checkArguments(sample: SampleTexts): string[] {
  const file = join(workFolder, "one-trip.trip");
  writeFileSync(file, sample.journal);
  return [built.commandLine, "check", file];
}

/** Milliseconds from a process's start to its exit. Exit code 1 means findings, not a failure. */
function startNode(node: string, args: readonly string[]): number {
  const start = performance.now();
  const { status } = spawnSync(node, args, { stdio: "ignore" });
  if (status !== 0 && status !== 1) throw new Error(`exit code ${status}`);
  return performance.now() - start;
}

async function firstDiagnostics(server: BenchServer, sample: SampleTexts, node: string): Promise<number> {
  const client = new LanguageClient(server, emptyWorkspace, node);
  try {
    await client.initialize();
    const uri = pathToFileURL(join(emptyWorkspace, `bench.${server.extension}`)).href;
    const { at } = await client.open(uri, server.text(sample));
    return at - client.spawnedAt;
  } finally {
    await client.stop();
  }
}
