import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import type { CompletionItem, CompletionList, InlayHint, Position, Range } from "vscode-languageserver/node";
import type { SampleTexts } from "./generate.ts";
import { LanguageClient, type Published } from "./language-client.ts";
import { type BenchServer, emptyWorkspace } from "./servers.ts";

/** Samples of one server on one size: milliseconds, except the memory, which is MB. */
export interface LspSamples {
  change: number[];
  hover: number[];
  completion: number[];
  memory: number[];
}

/** How many times a session does each thing. */
export interface LspCounts {
  changes: number;
  hovers: number;
  completions: number;
}

/** A server answers with diagnostics, and ours with inlay hints too, this many lines around the change. */
const linesInView = 60;

/** Starts a server afresh, opens the text, types in the middle of it, hovers and completes; adds to the samples. */
export async function runSession(
  server: BenchServer,
  sample: SampleTexts,
  counts: LspCounts,
  into: LspSamples,
): Promise<void> {
  const client = new LanguageClient(server, emptyWorkspace);
  try {
    await client.initialize();
    if (server.ours && !client.capabilities.inlayHintProvider)
      throw new Error("it offers no inlay hints yet, and no figure counts without them");
    const session = new Session(client, server, server.text(sample));
    await session.open();
    // The first few are not counted: nobody's first keystroke is his typical one.
    for (let round = -3; round < counts.changes; round += 1) {
      const milliseconds = [await session.change("1"), await session.change("")];
      if (round >= 0) into.change.push(...milliseconds);
    }
    for (let place = 0; place < counts.hovers; place += 1)
      into.hover.push(await session.hover((place + 0.5) / counts.hovers));
    for (let round = 0; round < counts.completions; round += 1)
      into.completion.push(await session.complete());
    const memory = client.memory();
    if (memory !== undefined) into.memory.push(memory);
  } finally {
    await client.stop();
  }
}

class Session {
  private readonly client: LanguageClient;
  private readonly server: BenchServer;
  private readonly lines: string[];
  private readonly text: string;
  private readonly uri: string;
  private readonly amountAt: Position;

  constructor(client: LanguageClient, server: BenchServer, text: string) {
    this.client = client;
    this.server = server;
    this.text = text;
    this.lines = text.split("\n");
    this.uri = pathToFileURL(`${emptyWorkspace}/bench.${server.extension}`).href;
    const middle = this.lines.length >> 1;
    const line = this.lines.findIndex((found, index) => index >= middle && server.amount.test(found));
    const match = server.amount.exec(this.lines[line] ?? "");
    if (!match) throw new Error(`${server.name}: no amount of cable below the middle of the text.`);
    this.amountAt = { line, character: match.index + match[0].length };
  }

  async open(): Promise<void> {
    // The peers' text is valid; ours may be given hints.
    await this.client.open(this.uri, this.text, (said) => this.server.ours || said.diagnostics.length === 0);
    await sleep(300);
  }

  /** Types a digit (or takes it out): milliseconds until the server has said all it says about that. */
  async change(digit: string): Promise<number> {
    const { line, character } = this.amountAt;
    const end = { line, character: character + (digit === "" ? 1 : 0) };
    const start = performance.now();
    const version = this.client.edit(this.uri, { start: this.amountAt, end }, digit);
    const expected = (said: Published): boolean =>
      this.server.ours
        ? (said.version ?? version) >= version
        : said.diagnostics.length > 0 === (digit !== "");
    const diagnostics = this.client.diagnostics(this.uri, expected);
    const hintsAt = this.server.ours ? await this.hints(line) : 0;
    let saidAt = (await diagnostics).at;
    await sleep(25);
    // A server that says more about the same version afterwards is timed to its last word.
    const last = this.client.last.get(this.uri);
    if (this.server.ours && last) saidAt = Math.max(saidAt, last.at);
    return Math.max(saidAt, hintsAt) - start;
  }

  /** Hovers over a word of an event line: milliseconds. */
  async hover(share: number): Promise<number> {
    const event = /\b(set|move|again|probe|gps|catch)\b/;
    const from = Math.floor(share * (this.lines.length - 10));
    const line = this.lines.findIndex((text, index) => index >= from && event.test(text));
    const character = (event.exec(this.lines[line] ?? "")?.index ?? 0) + 1;
    const [milliseconds] = await this.timed("textDocument/hover", { line: Math.max(0, line), character });
    return milliseconds;
  }

  /** Asks for completion right after a new line was typed, and takes the line out again: milliseconds. */
  async complete(): Promise<number> {
    const start = { line: this.amountAt.line, character: 0 };
    const end = { line: start.line + 1, character: 0 };
    this.client.edit(this.uri, { start, end: start }, this.server.typed.line);
    const [milliseconds, answer] = await this.timed<CompletionList | CompletionItem[]>(
      "textDocument/completion",
      {
        line: start.line,
        character: this.server.typed.column,
      },
    );
    const items = Array.isArray(answer) ? answer : answer?.items;
    if (!items?.length) throw new Error("nothing to complete on the new line");
    this.client.edit(this.uri, { start, end }, "");
    await this.timed("textDocument/hover", { line: 1, character: 3 });
    await sleep(25);
    return milliseconds;
  }

  private async timed<Result>(method: string, position: Position): Promise<[number, Result | null]> {
    const start = performance.now();
    const params = { textDocument: { uri: this.uri }, position };
    const answer = await this.client.request<Result | null>(method, params);
    return [performance.now() - start, answer];
  }

  private async hints(line: number): Promise<number> {
    const range: Range = {
      start: { line: Math.max(0, line - linesInView / 2), character: 0 },
      end: { line: line + linesInView / 2, character: 0 },
    };
    const textDocument = { uri: this.uri };
    const hints = await this.client.request<InlayHint[] | null>("textDocument/inlayHint", {
      textDocument,
      range,
    });
    if (!hints?.length) throw new Error("no inlay hints around the change");
    return performance.now();
  }
}
