import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Area, type Effort, median, type Row } from "./figures.ts";
import { writeTripFolder } from "./generate.ts";
import { LanguageClient } from "./language-client.ts";
import { workFolder } from "./places.ts";
import { type BenchServer, benchServers } from "./servers.ts";

/** Samples of one server over a folder of trips: milliseconds, except the memory, which is MB. */
interface IndexSamples {
  cold: number[];
  warm: number[];
  checked: number[];
  memory: number[];
}

const tripCount = 1000;

/** A folder of 1,000 trips: until it can be searched, until all of it is checked, and what that holds in memory. */
export async function benchIndex({ quick }: Effort): Promise<Area> {
  const notes: string[] = [];
  const folder = join(workFolder, "thousand-trips");
  writeTripFolder(folder, tripCount);
  const servers = benchServers(notes).filter((server) => server.extension === "trip");
  const samples = new Map(servers.map((server): [BenchServer, IndexSamples] => [server, noSamples()]));
  for (let round = 0; round < (quick ? 1 : 3); round += 1)
    for (const server of servers)
      await indexOnce(server, folder, samples.get(server) ?? noSamples()).catch((error: Error) => {
        notes.push(`${server.name}: ${error.message}`);
      });
  notes.push(
    "Cold and warm: from the end of `initialize` to an answered `workspace/symbol`, with the saved index of the run before for the warm one. Checked: to an answered `workspace/diagnostic`.",
    "Logs repeat themselves: apart from their clocks the 150,000 lines are 25,000 different ones, of which ours reads each once.",
    "The YAML server has no workspace index; it is left out.",
  );
  return { title: "A folder of 1,000 trips, 150,000 events", rows: indexRows(samples), notes };
}

function noSamples(): IndexSamples {
  return { cold: [], warm: [], checked: [], memory: [] };
}

async function indexOnce(server: BenchServer, folder: string, into: IndexSamples): Promise<void> {
  const storage = join(workFolder, "index-storage");
  rmSync(storage, { recursive: true, force: true });
  mkdirSync(storage, { recursive: true });
  const setup = { ...server, initializationOptions: { storage } };
  await search(setup, folder, async (milliseconds, client, started) => {
    into.cold.push(milliseconds);
    if (server.ours) {
      await client.request("workspace/diagnostic", { previousResultIds: [] });
      into.checked.push(performance.now() - started);
    }
    const memory = client.memory();
    if (memory !== undefined) into.memory.push(memory);
  });
  if (server.ours) await search(setup, folder, async (milliseconds) => void into.warm.push(milliseconds));
}

/** Starts a server on the folder and asks for a symbol; hands over how long that took after `initialize`. */
async function search(
  server: BenchServer,
  folder: string,
  then: (milliseconds: number, client: LanguageClient, started: number) => Promise<void>,
): Promise<void> {
  const client = new LanguageClient(server, folder);
  try {
    await client.initialize();
    const started = performance.now();
    const found = await client.request<unknown[] | null>("workspace/symbol", { query: "glow-spoon" });
    if (!found?.length) throw new Error("the search found nothing");
    await then(performance.now() - started, client, started);
  } finally {
    await client.stop();
  }
}

function indexRows(samples: ReadonlyMap<BenchServer, IndexSamples>): Row[] {
  const servers = [...samples.keys()];
  const of = (server: BenchServer | undefined, key: keyof IndexSamples): number | undefined =>
    median((server && samples.get(server)?.[key]) ?? []);
  const ours = servers.find((server) => server.ours);
  const peer = servers.find((server) => !server.ours);
  const row = (measure: string, key: keyof IndexSamples, unit: Row["unit"], bound: number): Row => ({
    measure,
    unit,
    ours: of(ours, key),
    goal: { kind: "at-most", bound },
    ...(peer && of(peer, key) !== undefined ? { peer: peer.name, theirs: of(peer, key) } : {}),
  });
  return [
    row("cold index, searchable", "cold", "ms", 700),
    row("warm start, searchable", "warm", "ms", 100),
    row("all checks and depths", "checked", "ms", 5000),
    row("memory afterwards", "memory", "MB", 150),
  ];
}
