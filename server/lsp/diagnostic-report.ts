/** Diagnostics with a name for what they say: the same findings have the same name, after a restart too. */
import {
  type Diagnostic,
  DocumentDiagnosticReportKind,
  type FullDocumentDiagnosticReport,
  type UnchangedDocumentDiagnosticReport,
} from "vscode-languageserver";

/** Findings and their name. */
export interface NamedFindings {
  readonly resultId: string;
  readonly diagnostics: readonly Diagnostic[];
}

/** Gives findings their name. */
export function named(diagnostics: readonly Diagnostic[]): NamedFindings {
  return { resultId: hashOf(JSON.stringify(diagnostics)), diagnostics };
}

/** What a client is told that last heard the findings of that name. */
export function reportOf(
  { resultId, diagnostics }: NamedFindings,
  heard: string | undefined,
): FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport {
  if (heard === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
  return { kind: DocumentDiagnosticReportKind.Full, resultId, items: [...diagnostics] };
}

/** Two rounds of FNV-1a, 32 bits each: public domain, by Fowler, Noll and Vo. */
function hashOf(text: string): string {
  let [one, other] = [0x811c9dc5, 0xcbf29ce4];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ (code + at), 0x01000193);
  }
  return `${(one >>> 0).toString(36)}-${(other >>> 0).toString(36)}-${text.length.toString(36)}`;
}
