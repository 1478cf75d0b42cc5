import { type Area, type Effort, type Goal, median, quantile, type Row } from "./figures.ts";
import { sampleTexts, sizes } from "./generate.ts";
import { loadPeer } from "./install-peers.ts";
import { makeJsonParser } from "./json-grammar.ts";
import { built, missing } from "./places.ts";

/** One parser under test: its name, the format it reads, how to call it, and how much faster we want to be. */
interface Case {
  name: string;
  format: "journal" | "yaml" | "json";
  parse: (text: string) => unknown;
  goal?: Goal;
}

/** Warm parsing of the same events by our parser and by general-purpose ones, in interleaved rounds. */
export async function benchParse({ quick }: Effort): Promise<Area> {
  const notes: string[] = [];
  const ours = await ourParser(notes);
  const cases = [...(ours ? [ours] : []), ...(await peers())];
  const rows: Row[] = [];
  for (const size of quick ? sizes.slice(0, 2) : sizes) {
    const texts = sampleTexts(size);
    const samples = timeInterleaved(cases, texts, quick ? 4 : 9);
    const of = (one: Case | undefined): number[] => (one && samples.get(one)) ?? [];
    const label = `${texts.events.toLocaleString("en-US")} events`;
    rows.push({ measure: `${label}, p95`, unit: "ms", ours: quantile(of(ours), 0.95) });
    for (const peer of cases.filter((one) => one !== ours)) {
      const row: Row = { measure: label, unit: "ms", ours: median(of(ours)), peer: peer.name };
      row.theirs = median(of(peer));
      rows.push(peer.goal ? { ...row, goal: peer.goal } : row);
    }
  }
  notes.push(
    "Each parser builds its own values from text it has read many times; ours recovers from errors.",
  );
  return { title: "Warm parse of a whole file", rows, notes };
}

async function ourParser(notes: string[]): Promise<Case | undefined> {
  const absent = missing(built.parser);
  if (absent) {
    notes.push(absent);
    return undefined;
  }
  const { parse } = await import("../../grammar/parse.ts");
  return { name: "ours", format: "journal", parse: (text) => parse(text) };
}

async function peers(): Promise<Case[]> {
  const yaml = await loadPeer<{ parse: (text: string) => unknown }>("yaml");
  const jsYaml = await loadPeer<{ load: (text: string) => unknown }>("js-yaml");
  const faster = (times: number): Goal => ({ kind: "times-faster", times });
  return [
    { name: "yaml", format: "yaml", parse: (text) => yaml.parse(text), goal: faster(15) },
    { name: "js-yaml", format: "yaml", parse: (text) => jsYaml.load(text), goal: faster(1.2) },
    { name: "chevrotain's JSON example", format: "json", parse: makeJsonParser(), goal: faster(1.4) },
    { name: "JSON.parse (a floor)", format: "json", parse: (text) => JSON.parse(text) },
  ];
}

/** Milliseconds a parse, a list for each case; a round measures every case once, some 60 ms each. */
function timeInterleaved(
  cases: readonly Case[],
  texts: Record<Case["format"], string>,
  rounds: number,
): Map<Case, number[]> {
  const repeats = new Map(cases.map((one) => [one, repeatsFor(one, texts[one.format])]));
  const samples = new Map(cases.map((one): [Case, number[]] => [one, []]));
  for (let round = 0; round < rounds; round += 1)
    for (const one of cases) {
      const count = repeats.get(one) ?? 1;
      samples.get(one)?.push(timeParses(one, texts[one.format], count) / count);
    }
  return samples;
}

/** Warms a parser up for a while and says how many parses fill a measurement. */
function repeatsFor(one: Case, text: string): number {
  let parses = 0;
  const start = performance.now();
  while (performance.now() - start < 250 || parses < 3) {
    one.parse(text);
    parses += 1;
  }
  return Math.max(1, Math.round(parses / 4));
}

function timeParses(one: Case, text: string, count: number): number {
  const start = performance.now();
  for (let done = 0; done < count; done += 1) one.parse(text);
  return performance.now() - start;
}
