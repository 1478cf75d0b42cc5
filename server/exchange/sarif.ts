/** Findings as SARIF 2.1.0 (OASIS standard), the form that code-review tools read. */
import type { CheckRow, Finding, Place, Severity } from "../checks/check.ts";

/** What goes into a log. */
interface SarifContent {
  /** Of the tool. */
  readonly version: string;
  /** The catalog; only checks that found something are listed. */
  readonly checks: readonly CheckRow<never>[];
  readonly files: readonly { readonly uri: string; readonly findings: readonly Finding[] }[];
  /** The URI to write for a related place's own. */
  readonly uriOf: (uri: string) => string;
  /** Sentences on inputs that could not be read. */
  readonly unusable: readonly string[];
}

const LEVELS: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

/** The whole log, ready for JSON. */
export function sarifLog(content: SarifContent): object {
  const found = new Set(content.files.flatMap((file) => file.findings.map((finding) => finding.slug)));
  const rules = content.checks.filter((check) => found.has(check.slug));
  const ruleIndex = new Map(rules.map((rule, index) => [rule.slug, index]));
  const results = content.files.flatMap(({ uri, findings }) =>
    findings.map((finding) => result(uri, finding, ruleIndex.get(finding.slug), content.uriOf)),
  );
  return {
    $schema: "https://json.schemastore.org/sarif-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: { driver: { name: "deepwake", version: content.version, rules: rules.map(ruleOf) } },
        columnKind: "utf16CodeUnits",
        invocations: [
          {
            executionSuccessful: content.unusable.length === 0,
            toolExecutionNotifications: content.unusable.map((text) => ({
              level: "error",
              message: { text },
            })),
          },
        ],
        results,
      },
    ],
  };
}

function ruleOf(row: CheckRow<never>): object {
  return {
    id: row.slug,
    shortDescription: { text: row.summary },
    ...(row.quietWhen === "" ? {} : { help: { text: `Keeps quiet when ${row.quietWhen}.` } }),
    defaultConfiguration: { level: LEVELS[row.severities[0]] },
  };
}

function result(
  uri: string,
  finding: Finding,
  ruleIndex: number | undefined,
  uriOf: SarifContent["uriOf"],
): object {
  const related = finding.related.map((place, index) => ({
    id: index,
    ...location(uriOf(place.uri), place),
    message: { text: place.message },
  }));
  return {
    ruleId: finding.slug,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: LEVELS[finding.severity],
    message: { text: finding.message },
    locations: [location(uri, finding)],
    ...(related.length === 0 ? {} : { relatedLocations: related }),
  };
}

/** SARIF counts lines and columns from 1; the end column is the one behind the last. */
function location(uri: string, place: Place): object {
  return {
    physicalLocation: {
      artifactLocation: { uri },
      region: {
        startLine: place.lineIndex + 1,
        startColumn: place.start + 1,
        endLine: place.lineIndex + 1,
        endColumn: place.stop + 1,
      },
    },
  };
}
