import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import {
  createMessageConnection,
  type Diagnostic,
  type InitializeResult,
  type MessageConnection,
  type Range,
  type ServerCapabilities,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";

/** How to start a server and what to tell it. */
export interface ServerSetup {
  name: string;
  /** Arguments for Node: the server's file first. */
  args: readonly string[];
  languageId: string;
  extension: string;
  /** Settings by section, for servers that ask for them. */
  settings?: Record<string, unknown>;
  initializationOptions?: unknown;
}

/** What a server published last about a document. */
export interface Published {
  uri: string;
  version?: number;
  diagnostics: Diagnostic[];
  /** When it arrived, in the clock of performance.now(). */
  at: number;
}

/** A small language client over standard streams: starts a server, counts its time, reads its memory. */
export class LanguageClient {
  readonly spawnedAt = performance.now();
  readonly last = new Map<string, Published>();
  private readonly child: ChildProcess;
  private readonly connection: MessageConnection;
  private readonly setup: ServerSetup;
  private readonly folder: string;
  /** What the server said it can do. */
  capabilities: ServerCapabilities = {};
  private listener: (published: Published) => void = () => {};
  private version = 1;

  constructor(setup: ServerSetup, folder: string, node = process.execPath) {
    this.setup = setup;
    this.folder = folder;
    this.child = spawn(node, [...setup.args, "--stdio"], { stdio: ["pipe", "pipe", "ignore"] });
    const { stdout, stdin } = this.child;
    if (!stdout || !stdin) throw new Error("The server has no streams.");
    this.connection = createMessageConnection(
      new StreamMessageReader(stdout),
      new StreamMessageWriter(stdin),
    );
    this.connection.onNotification("textDocument/publishDiagnostics", (params: Omit<Published, "at">) => {
      const published = { ...params, at: performance.now() };
      this.last.set(params.uri, published);
      this.listener(published);
    });
    this.connection.onRequest("workspace/configuration", (params: { items: { section?: string }[] }) =>
      params.items.map((item) => setup.settings?.[item.section ?? ""] ?? null),
    );
    this.connection.onRequest(() => null);
    this.connection.listen();
  }

  /** Opens the session. The client takes pushed diagnostics and says nothing of pulled ones. */
  async initialize(): Promise<void> {
    const uri = pathToFileURL(this.folder).href;
    const { capabilities } = await this.request<InitializeResult>("initialize", {
      processId: process.pid,
      rootUri: uri,
      workspaceFolders: [{ uri, name: "bench" }],
      initializationOptions: this.setup.initializationOptions,
      capabilities: {
        workspace: { configuration: true, workspaceFolders: true, didChangeConfiguration: {} },
        textDocument: {
          publishDiagnostics: { relatedInformation: true, versionSupport: true },
          hover: { contentFormat: ["markdown"] },
          inlayHint: { resolveSupport: { properties: ["tooltip"] } },
          completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown"] } },
        },
      },
    });
    this.capabilities = capabilities;
    await this.notify("initialized", {});
    const { settings } = this.setup;
    if (settings) await this.notify("workspace/didChangeConfiguration", { settings });
  }

  /** Opens a document; resolves with the first diagnostics for it that pass the test. */
  async open(
    uri: string,
    text: string,
    test: (published: Published) => boolean = () => true,
  ): Promise<Published> {
    const arrives = this.diagnostics(uri, test);
    const textDocument = { uri, languageId: this.setup.languageId, version: this.version, text };
    await this.notify("textDocument/didOpen", { textDocument });
    return arrives;
  }

  /** Changes the open document; answers with the document's new version. */
  edit(uri: string, range: Range, text: string): number {
    this.version += 1;
    const textDocument = { uri, version: this.version };
    void this.notify("textDocument/didChange", { textDocument, contentChanges: [{ range, text }] });
    return this.version;
  }

  /** The next diagnostics for a document that pass the test. */
  diagnostics(uri: string, test: (published: Published) => boolean): Promise<Published> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`${this.setup.name} sent no diagnostics`)), 30_000);
      this.listener = (published) => {
        if (published.uri !== uri || !test(published)) return;
        clearTimeout(timer);
        this.listener = () => {};
        resolve(published);
      };
    });
  }

  request<Result>(method: string, params: unknown): Promise<Result> {
    return this.connection.sendRequest<Result>(method, params);
  }

  private notify(method: string, params: unknown): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  /** Resident memory of the server, MB; only where the system keeps it in a file. */
  memory(): number | undefined {
    if (process.platform !== "linux") return undefined;
    const status = readFileSync(`/proc/${this.child.pid}/status`, "utf8");
    return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024;
  }

  /** Ends the session, with force after two seconds. */
  async stop(): Promise<void> {
    const gone = new Promise((resolve) => this.child.once("exit", resolve));
    const timer = setTimeout(() => this.child.kill("SIGKILL"), 2000);
    this.request("shutdown", undefined)
      .then(() => this.notify("exit", undefined))
      .catch(() => {});
    if (this.child.exitCode === null) await gone;
    clearTimeout(timer);
    this.connection.dispose();
  }
}
