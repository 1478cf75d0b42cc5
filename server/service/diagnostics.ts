/** Findings as LSP diagnostics. */
import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver-types";
import type { Finding, Severity } from "../checks/check.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Name under which findings are shown. */
export const SOURCE = "deepwake";

/** Everything found in a document. */
export function diagnostics(snapshot: Snapshot): Diagnostic[] {
  return snapshot.findings.map(diagnosticOf);
}

/** One finding as a diagnostic. */
export function diagnosticOf(finding: Finding): Diagnostic {
  const related = finding.related.map((place) => ({
    location: { uri: place.uri, range: rangeOf(place) },
    message: place.message,
  }));
  return {
    range: rangeOf(finding),
    severity: SEVERITIES[finding.severity],
    code: finding.slug,
    source: SOURCE,
    message: finding.message,
    ...(related.length === 0 ? {} : { relatedInformation: related }),
  };
}
