/** Findings as LSP diagnostics. */
import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver-types";
import type { Finding, Severity } from "../checks/check.ts";
import { withMark } from "./byte-order-mark.ts";
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

/** What was found in a file that isn't open. `bom` says that its text starts with a byte order mark. */
export function closedDiagnostics(
  uri: string,
  bom: boolean,
  findings: readonly Omit<Finding, "fixes">[],
): Diagnostic[] {
  const all = findings.map(diagnosticOf);
  return bom ? withMark(all, uri) : all;
}

/** One finding as a diagnostic. */
export function diagnosticOf(finding: Omit<Finding, "fixes">): Diagnostic {
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
