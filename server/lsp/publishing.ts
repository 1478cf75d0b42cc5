/** What the client hears unasked about open documents: findings, and that what it asked for may have changed. */
import { CodeLensRefreshRequest, type Connection, type Diagnostic } from "vscode-languageserver";
import type { LanguageService } from "../service/language-service.ts";
import type { ClientAbilities } from "./capabilities.ts";
import { diagnosticsFor } from "./for-client.ts";
import type { Guard } from "./guard.ts";
import type { DiagnosticPulls } from "./pull-diagnostics.ts";
import type { Preparer } from "./turns.ts";

/** What publishing needs from around it. */
export interface PublishingParts {
  readonly connection: Connection;
  readonly guard: Guard;
  readonly service: LanguageService;
  readonly preparer: Preparer;
  readonly pulls: () => DiagnosticPulls;
  readonly client: () => ClientAbilities;
  /** Diagnostics of a file with columns as this client counts them. */
  readonly translated: (diagnostics: Diagnostic[], uri: string) => Diagnostic[];
}

/** Tells one client. */
export class Publishing {
  readonly #parts: PublishingParts;

  constructor(parts: PublishingParts) {
    this.#parts = parts;
  }

  /** What is found in an open document, as this client takes it. */
  diagnostics(uri: string): Diagnostic[] {
    const { guard, service } = this.#parts;
    return guard.ask("checks", [], () => this.forClient(uri, service.diagnostics(uri)))(undefined);
  }

  forClient(uri: string, diagnostics: readonly Diagnostic[]): Diagnostic[] {
    const { client, translated } = this.#parts;
    return translated(diagnosticsFor(client(), diagnostics), uri);
  }

  /** Sends a document's findings, which cost no more time; a client that asks for them does so itself. */
  checked(uri: string): void {
    if (!this.#parts.client().pullsDiagnostics) this.#publish(uri);
  }

  /** A document is closed: nothing is said of it any more. */
  closed(uri: string): void {
    const { client, connection, guard } = this.#parts;
    if (client().pullsDiagnostics) return;
    guard.background("clearing diagnostics", connection.sendDiagnostics({ uri, diagnostics: [] }));
  }

  /** Has the client hear of documents that changed without being edited. */
  tell(uris: readonly string[]): void {
    if (uris.length === 0) return;
    const { connection, guard } = this.#parts;
    const client = this.#parts.client();
    if (client.refreshesHints) guard.background("refreshing hints", connection.languages.inlayHint.refresh());
    if (client.refreshesLenses)
      guard.background("refreshing lenses", connection.sendRequest(CodeLensRefreshRequest.type));
    if (!client.pullsDiagnostics) guard.background("sending diagnostics", this.#publishAll(uris));
    else if (client.refreshesDiagnostics)
      guard.background("refreshing diagnostics", this.#refreshDiagnostics(uris));
  }

  async #refreshDiagnostics(uris: readonly string[]): Promise<void> {
    const { connection, pulls } = this.#parts;
    if (await pulls().isStale(uris)) await connection.languages.diagnostics.refresh();
  }

  /** One after another, in turns; what changes meanwhile is checked by whoever changed it. */
  async #publishAll(uris: readonly string[]): Promise<void> {
    const { preparer, service } = this.#parts;
    for (const uri of uris) {
      const how = await preparer.prepare(uri);
      if (how === "ready" && service.snapshot(uri) !== undefined) this.#publish(uri);
    }
  }

  #publish(uri: string): void {
    const { connection, guard, service } = this.#parts;
    const version = service.snapshot(uri)?.version;
    const found = {
      uri,
      diagnostics: this.diagnostics(uri),
      ...(version === undefined ? {} : { version }),
    };
    guard.background("sending diagnostics", connection.sendDiagnostics(found));
  }
}
