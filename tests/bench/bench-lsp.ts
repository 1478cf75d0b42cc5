import { type Area, type Effort, type Goal, quantile, type Row } from "./figures.ts";
import { sampleTexts } from "./generate.ts";
import { type LspCounts, type LspSamples, runSession } from "./lsp-session.ts";
import { type BenchServer, benchServers } from "./servers.ts";

/** What we hold ourselves to on one size of file. */
interface SizeGoals {
  change: { p50: number; p95: number; overYaml: number; overWorkbench: number };
  hover?: number;
  completion?: number;
  memory: number;
}

const goals: Record<number, SizeGoals> = {
  150: { change: { p50: 4, p95: 12, overYaml: 8, overWorkbench: 5 }, memory: 90 },
  5000: {
    change: { p50: 8, p95: 20, overYaml: 60, overWorkbench: 40 },
    hover: 5,
    completion: 10,
    memory: 140,
  },
};

/** Typing, hovering and completing in an open file: our server, the YAML server and a workbench's server. */
export async function benchLsp({ quick }: Effort): Promise<Area> {
  const notes: string[] = [];
  const servers = benchServers(notes);
  const rows: Row[] = [];
  for (const [size, goal] of Object.entries(goals)) {
    const sample = sampleTexts(Number(size));
    const counts: LspCounts = { changes: quick ? 4 : 10, hovers: 20, completions: quick ? 3 : 8 };
    const samples = new Map(servers.map((server): [BenchServer, LspSamples] => [server, noSamples()]));
    for (let round = 0; round < (quick ? 1 : 3); round += 1)
      for (const server of servers)
        await runSession(server, sample, counts, samples.get(server) ?? noSamples()).catch((error: Error) => {
          notes.push(`${server.name}, ${size} lines: ${error.message}`);
        });
    rows.push(...sizeRows(`${sample.events.toLocaleString("en-US")} events`, goal, samples));
  }
  notes.push(
    "A keystroke is one digit more, or less, in an amount of cable in the middle of the file. The clock stops at the diagnostics; ours stops when the inlay hints of 60 lines are answered too.",
    "The YAML server waits 200 ms before it works on a change; its keystroke figures are given without that wait.",
    "Completion is asked for right after the first letter of a new line's verb was typed, as an editor does.",
  );
  return { title: "Language server, one open file", rows, notes };
}

function noSamples(): LspSamples {
  return { change: [], hover: [], completion: [], memory: [] };
}

function sizeRows(label: string, goal: SizeGoals, samples: ReadonlyMap<BenchServer, LspSamples>): Row[] {
  const peers = [...samples.keys()].filter((server) => !server.ours);
  const figureOf = (
    server: BenchServer | undefined,
    key: keyof LspSamples,
    share: number,
  ): number | undefined => {
    const figure = server && quantile(samples.get(server)?.[key] ?? [], share);
    return figure === undefined || key !== "change" ? figure : figure - (server?.fixedWaitMs ?? 0);
  };
  const ours = [...samples.keys()].find((server) => server.ours);
  const rows = (what: string, key: keyof LspSamples, share: number, bound?: number): Row[] => {
    const unit = key === "memory" ? "MB" : "ms";
    const own: Row = { measure: `${label}: ${what}`, unit, ours: figureOf(ours, key, share) };
    const compared = peers.map((peer) => ({ ...own, peer: peer.name, theirs: figureOf(peer, key, share) }));
    return [bound === undefined ? own : { ...own, goal: { kind: "at-most", bound } }, ...compared];
  };
  const faster = (row: Row): Row => {
    const times = row.peer === "YAML server" ? goal.change.overYaml : goal.change.overWorkbench;
    const ratio: Goal = { kind: "times-faster", times };
    return row.peer === undefined ? row : { ...row, goal: ratio };
  };
  return [
    ...rows("keystroke to diagnostics", "change", 0.5, goal.change.p50).map(faster),
    ...rows("keystroke to diagnostics, p95", "change", 0.95, goal.change.p95),
    ...rows("hover, p95", "hover", 0.95, goal.hover),
    ...rows("completion, p95", "completion", 0.95, goal.completion),
    ...rows("memory afterwards", "memory", 0.5, goal.memory),
  ];
}
