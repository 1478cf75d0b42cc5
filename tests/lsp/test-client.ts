/** A client for the protocol tests: joined to a server by any pair of streams, it awaits what the server says. */
import {
  ApplyWorkspaceEditRequest,
  createProtocolConnection,
  type Diagnostic,
  DiagnosticRefreshRequest,
  type InitializeParams,
  type InitializeResult,
  InlayHintRefreshRequest,
  LogMessageNotification,
  type MessageReader,
  type MessageWriter,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  RegistrationRequest,
  WorkDoneProgress,
  type WorkDoneProgressBegin,
  WorkDoneProgressCreateRequest,
  type WorkDoneProgressEnd,
  type WorkDoneProgressReport,
  type WorkspaceEdit,
} from "vscode-languageserver-protocol/node";

/** What the client is able to do, what it is set to, and where it works. */
export interface ClientSetup {
  readonly capabilities?: InitializeParams["capabilities"];
  readonly options?: unknown;
  readonly folders?: InitializeParams["workspaceFolders"];
}

/** Diagnostics as they came for one document. */
export interface Published {
  readonly uri: string;
  readonly version: number | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** What a modern editor can do; tests of one that can less bring their own abilities. */
export const ABLE: NonNullable<InitializeParams["capabilities"]["textDocument"]> = {
  hover: { contentFormat: ["markdown", "plaintext"] },
  completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown"] } },
  documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } } },
  publishDiagnostics: { relatedInformation: true },
};

/** How long anything may take before the test fails. */
const BOUND_MS = 20_000;

/** A client with its documents. */
export class TestClient {
  readonly connection: ProtocolConnection;
  readonly logged: string[] = [];
  readonly registered: string[] = [];
  /** Requests that the server sent, beside those with a place of their own. */
  readonly asked: string[] = [];
  readonly applied: WorkspaceEdit[] = [];
  /** Progress of the server's own work, whichever. */
  readonly progress: (WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd)[] = [];
  hintRefreshes = 0;
  diagnosticRefreshes = 0;
  settings: unknown = {};
  #published: Published[] = [];
  #changed: (() => void)[] = [];

  constructor(reader: MessageReader, writer: MessageWriter) {
    this.connection = createProtocolConnection(reader, writer);
    this.connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, version, diagnostics }) => {
      this.#published.push({ uri, version, diagnostics });
      this.#tell();
    });
    this.connection.onNotification(LogMessageNotification.type, ({ message }) => {
      this.logged.push(message);
      this.#tell();
    });
    this.connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
      this.registered.push(...registrations.map(({ method }) => method));
      this.#tell();
    });
    this.connection.onRequest(InlayHintRefreshRequest.type, () => {
      this.hintRefreshes++;
      this.#tell();
    });
    this.connection.onRequest(DiagnosticRefreshRequest.type, () => {
      this.diagnosticRefreshes++;
      this.#tell();
    });
    this.connection.onRequest(ApplyWorkspaceEditRequest.type, ({ edit }) => {
      this.applied.push(edit);
      this.#tell();
      return { applied: true };
    });
    this.connection.onRequest(WorkDoneProgressCreateRequest.type, ({ token }) => {
      this.connection.onProgress(WorkDoneProgress.type, token, (value) => {
        this.progress.push(value);
        this.#tell();
      });
    });
    this.connection.onRequest("workspace/configuration", (_: unknown) => {
      this.asked.push("workspace/configuration");
      return [this.settings];
    });
    this.connection.listen();
  }

  async initialize({
    capabilities = {},
    options,
    folders = null,
  }: ClientSetup = {}): Promise<InitializeResult> {
    const able = { textDocument: ABLE, ...capabilities };
    const params = { processId: null, rootUri: null, capabilities: able, workspaceFolders: folders };
    const result: InitializeResult = await this.connection.sendRequest("initialize", {
      ...params,
      ...(options === undefined ? {} : { initializationOptions: options }),
    });
    await this.notify("initialized", {});
    return result;
  }

  notify(method: string, params: unknown): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  request<T>(method: string, params: unknown): Promise<T> {
    return this.connection.sendRequest(method, params);
  }

  async open(uri: string, text: string, version = 1): Promise<void> {
    const languageId = uri.endsWith(".gear") ? "deepwake-gear" : "deepwake-trip";
    await this.notify("textDocument/didOpen", { textDocument: { uri, languageId, version, text } });
  }

  /** Replaces the whole text, or the ranges given. */
  async change(uri: string, version: number, contentChanges: readonly object[]): Promise<void> {
    await this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges });
  }

  async close(uri: string): Promise<void> {
    await this.notify("textDocument/didClose", { textDocument: { uri } });
  }

  /** Waits for diagnostics of a document that satisfy a condition, among those that came since `forget`. */
  published(uri: string, accept: (published: Published) => boolean = () => true): Promise<Published> {
    return this.until(`diagnostics of ${uri}`, () =>
      this.#published.findLast((one) => one.uri === uri && accept(one)),
    );
  }

  /** The diagnostics that came last for a document since `forget`. */
  lastPublished(uri: string): readonly Diagnostic[] | undefined {
    return this.#published.findLast((one) => one.uri === uri)?.diagnostics;
  }

  /** How often diagnostics came since `forget`. */
  get publishedCount(): number {
    return this.#published.length;
  }

  /** Diagnostics that came before don't count any more. */
  forget(): void {
    this.#published = [];
  }

  /** Waits until a question has an answer, asking again whenever something comes from the server. */
  async until<T>(what: string, ask: () => T | undefined): Promise<T> {
    const deadline = AbortSignal.timeout(BOUND_MS);
    for (;;) {
      const answer = ask();
      if (answer !== undefined) return answer;
      await new Promise<void>((resolve, reject) => {
        this.#changed.push(resolve);
        deadline.addEventListener("abort", () => reject(new Error(`${what} did not come`)), { once: true });
      });
    }
  }

  /** Says goodbye as the protocol wants it. */
  async end(): Promise<void> {
    await this.connection.sendRequest("shutdown");
    await this.notify("exit", undefined);
    this.connection.end();
  }

  #tell(): void {
    const waiting = this.#changed;
    this.#changed = [];
    for (const resolve of waiting) resolve();
  }
}
