/** Diagnostics with a name for what they say: the same findings have the same name, after a restart too. */
import {
  type Diagnostic,
  DocumentDiagnosticReportKind,
  type FullDocumentDiagnosticReport,
  type UnchangedDocumentDiagnosticReport,
} from "vscode-languageserver";
import { contentHash } from "../workspace/content-hash.ts";

/** Findings and their name. */
export interface NamedFindings {
  readonly resultId: string;
  readonly diagnostics: readonly Diagnostic[];
}

/** A file of the workspace that isn't open, with what is found in it. */
export interface ClosedFile extends NamedFindings {
  readonly uri: string;
}

/** Gives findings their name. */
export function named(diagnostics: readonly Diagnostic[]): NamedFindings {
  return { resultId: contentHash(JSON.stringify(diagnostics)), diagnostics };
}

/** What a client is told that last heard the findings of that name. */
export function reportOf(
  { resultId, diagnostics }: NamedFindings,
  heard: string | undefined,
): FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport {
  if (heard === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
  return { kind: DocumentDiagnosticReportKind.Full, resultId, items: [...diagnostics] };
}
