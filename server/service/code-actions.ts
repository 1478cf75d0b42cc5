/** Quick fixes of the findings in a range, and all fixes of one kind at once. */
import { type CodeAction, CodeActionKind, type Range, type TextEdit } from "vscode-languageserver-types";
import type { Finding, Fix } from "../checks/check.ts";
import { diagnosticOf } from "./diagnostics.ts";
import { rangeOf, rangesMeet } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

/** Actions for a range. */
export function codeActions(snapshot: Snapshot, range: Range): CodeAction[] {
  const here = snapshot.findings.filter((finding) => rangesMeet(rangeOf(finding), range));
  const actions = here.flatMap((finding) => finding.fixes.map((fix) => actionOf(finding, fix)));
  for (const slug of new Set(here.map((finding) => finding.slug))) {
    const all = snapshot.findings.filter(
      (finding) => finding.slug === slug && preferredOf(finding) !== undefined,
    );
    if (all.length > 1) actions.push(fixAll(slug, all));
  }
  return actions;
}

function preferredOf(finding: Finding): Fix | undefined {
  return finding.fixes.find((fix) => fix.isPreferred);
}

function actionOf(finding: Finding, fix: Fix): CodeAction {
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnosticOf(finding)],
    isPreferred: fix.isPreferred,
    edit: { changes: changesOf([fix]) },
  };
}

function fixAll(slug: string, findings: readonly Finding[]): CodeAction {
  const fixes = findings.flatMap((finding) => preferredOf(finding) ?? []);
  return {
    title: `Mend all ${findings.length} of these (${slug})`,
    kind: CodeActionKind.QuickFix,
    diagnostics: findings.map(diagnosticOf),
    edit: { changes: changesOf(fixes) },
  };
}

function changesOf(fixes: readonly Fix[]): Record<string, TextEdit[]> {
  const changes: Record<string, TextEdit[]> = {};
  for (const edit of fixes.flatMap((fix) => fix.edits)) {
    changes[edit.uri] = [...(changes[edit.uri] ?? []), { range: rangeOf(edit), newText: edit.text }];
  }
  return changes;
}
