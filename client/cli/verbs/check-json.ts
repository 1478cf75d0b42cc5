/** Findings for programs: ranges and severities as in the LSP, with its severities' names in lower case. */
import type { Finding } from "../../../server/checks/check.ts";
import { rangeOf } from "../../../server/service/positions.ts";
import { envelopeText } from "../envelope.ts";
import type { CheckFileJson, DiagnosticJson } from "../output-schemas.ts";
import { shownUri } from "../paths.ts";
import type { World } from "../world.ts";
import type { CheckedFile, CheckReport } from "./check-report.ts";

/** The report as JSON. A file that couldn't be used has its reason and no diagnostics. */
export function checkJson({ files, unusable }: CheckReport, world: World): string {
  const entries: CheckFileJson[] = [
    ...files.map((file) => ({
      path: file.shown,
      diagnostics: file.findings.map((finding) => diagnosticJson(finding, file, world)),
    })),
    ...unusable.map(({ shown, why }) => ({ path: shown, diagnostics: [], error: why })),
  ];
  return envelopeText("check", world, { files: entries });
}

function diagnosticJson(finding: Finding, file: CheckedFile, world: World): DiagnosticJson {
  const related = finding.related.map((place) => ({
    path: shownUri(place.uri, file, world),
    range: rangeOf(place),
    message: place.message,
  }));
  return {
    code: finding.slug,
    severity: finding.severity,
    message: finding.message,
    range: rangeOf(finding),
    ...(related.length === 0 ? {} : { related }),
  };
}
