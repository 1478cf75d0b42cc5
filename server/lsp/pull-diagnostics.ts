/** Diagnostics for a client that asks for them: of one document with those that lean on it, and of the workspace. */
import {
  type CancellationToken,
  type Connection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  LSPErrorCodes,
  type RelatedFullDocumentDiagnosticReport,
  ResponseError,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { type Desk, refuseCancelled } from "./desk.ts";
import type { ClosedFile } from "./diagnostic-report.ts";
import { type NamedFindings, named, reportOf } from "./diagnostic-report.ts";

/** What is open, closed and found, as the server knows it now. */
export interface PullSource {
  openUris(): readonly string[];
  /** Open documents that lean on a book. */
  readersOf(uri: string): readonly string[];
  versionOf(uri: string): number | undefined;
  diagnostics(uri: string): Diagnostic[];
  /** Files that aren't open, with what is found in them, as it becomes known. */
  closedFiles(): AsyncIterable<ClosedFile>;
  closedFile(uri: string): NamedFindings | undefined;
  takesRelated(): boolean;
}

/** How many reports of a workspace go out at a time to a client that takes parts. */
const PART_SIZE = 100;

/** Answers what is asked for, and keeps in mind what the client has heard. */
export class DiagnosticPulls {
  readonly #desk: Desk;
  readonly #source: PullSource;
  /** The names of the findings that were sent for each document when it was asked for. */
  readonly #heard = new Map<string, string>();

  constructor(desk: Desk, source: PullSource) {
    this.#desk = desk;
    this.#source = source;
  }

  listen(connection: Connection): void {
    connection.languages.diagnostics.on(({ textDocument: { uri }, previousResultId }, token) =>
      this.#document(uri, previousResultId, token),
    );
    connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token, _, progress) => {
      const heard = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
      let items: WorkspaceDocumentDiagnosticReport[] = [];
      for await (const report of this.#workspace(heard, token)) {
        items.push(report);
        if (progress === undefined || items.length < PART_SIZE) continue;
        progress.report({ items });
        items = [];
      }
      return { items };
    });
  }

  /** True when the client has been told something else of one of these documents than what holds now. */
  async isStale(uris: readonly string[]): Promise<boolean> {
    for (const uri of uris) {
      const heard = this.#heard.get(uri);
      if (heard !== undefined && (await this.#isOther(uri, heard))) return true;
    }
    return false;
  }

  /** A document that changes meanwhile counts as changed. */
  async #isOther(uri: string, heard: string): Promise<boolean> {
    try {
      return (await this.#findings(uri, undefined)).resultId !== heard;
    } catch {
      return true;
    }
  }

  forget(uri: string): void {
    this.#heard.delete(uri);
  }

  async #document(
    uri: string,
    heard: string | undefined,
    token: CancellationToken,
  ): Promise<DocumentDiagnosticReport> {
    const findings = await retried(() => this.#findings(uri, token));
    this.#heard.set(uri, findings.resultId);
    const report = reportOf(findings, heard);
    if (!this.#source.takesRelated()) return report;
    const relatedDocuments: NonNullable<RelatedFullDocumentDiagnosticReport["relatedDocuments"]> = {};
    for (const reader of this.#source.readersOf(uri)) {
      const found = await retried(() => this.#findings(reader, token));
      if (found.resultId !== this.#heard.get(reader)) relatedDocuments[reader] = reportOf(found, undefined);
    }
    return Object.keys(relatedDocuments).length === 0 ? report : { ...report, relatedDocuments };
  }

  async *#workspace(
    heard: ReadonlyMap<string, string>,
    token: CancellationToken,
  ): AsyncGenerator<WorkspaceDocumentDiagnosticReport> {
    const open = new Set(this.#source.openUris());
    const told = new Set(open);
    for (const uri of open) {
      const findings = await retried(() => this.#findings(uri, token));
      yield { ...reportOf(findings, heard.get(uri)), uri, version: this.#source.versionOf(uri) ?? null };
    }
    for await (const { uri, ...findings } of this.#source.closedFiles()) {
      refuseCancelled(token);
      told.add(uri);
      if (!open.has(uri)) yield { ...reportOf(findings, heard.get(uri)), uri, version: null };
    }
    // A client keeps what it heard of a file that is gone until it hears that there is nothing.
    const nothing = named([]);
    for (const [uri, resultId] of heard)
      if (!told.has(uri) && resultId !== nothing.resultId)
        yield { ...reportOf(nothing, resultId), uri, version: null };
  }

  /** What is found in an open document, or was in a closed one; nothing in a file that isn't known. */
  async #findings(uri: string, token: CancellationToken | undefined): Promise<NamedFindings> {
    refuseCancelled(token);
    if (this.#source.openUris().includes(uri)) {
      await this.#desk.prepare(uri, token);
      return named(this.#source.diagnostics(uri));
    }
    return this.#source.closedFile(uri) ?? named([]);
  }
}

/** A document that changed meanwhile is asked for again by the client. */
async function retried<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof ResponseError) || error.code !== LSPErrorCodes.ContentModified) throw error;
    throw new ResponseError(LSPErrorCodes.ServerCancelled, error.message, { retriggerRequest: true });
  }
}
