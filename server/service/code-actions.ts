/**
 * Quick fixes of the findings in a range, all of one kind at once, and everything that has one plain mend; and lengths
 * to let out for a depth.
 */
import { type CodeAction, CodeActionKind, type Range, type TextEdit } from "vscode-languageserver-types";
import type { Finding, Fix, FixEdit } from "../checks/check.ts";
import { diagnosticOf } from "./diagnostics.ts";
import { rangeOf, rangesMeet } from "./positions.ts";
import { SET_FOR_KIND, setForDepth } from "./set-for-depth.ts";
import type { Snapshot } from "./snapshot.ts";

/** The kind of the action that mends the whole file. */
export const FIX_ALL_KIND = `${CodeActionKind.SourceFixAll}.deepwake`;

/** Actions for a range; of the kinds in `only` and the kinds below them, where given. */
export function codeActions(snapshot: Snapshot, range: Range, only?: readonly string[]): CodeAction[] {
  const wants = (kind: string): boolean =>
    only === undefined || only.some((one) => kind === one || kind.startsWith(`${one}.`));
  return [
    ...(wants(CodeActionKind.QuickFix) ? quickFixes(snapshot, range) : []),
    ...(wants(SET_FOR_KIND) ? setForDepth(snapshot, range.start.line) : []),
    ...(only !== undefined && wants(FIX_ALL_KIND) ? fixFile(snapshot) : []),
  ];
}

function quickFixes(snapshot: Snapshot, range: Range): CodeAction[] {
  const here = snapshot.findings.filter((finding) => rangesMeet(rangeOf(finding), range));
  const single = here.flatMap((finding) => finding.fixes.map((fix) => actionOf(finding, fix)));
  const slugs = [...new Set(here.map((finding) => finding.slug))];
  return [...single, ...slugs.flatMap((slug) => fixAllOf(snapshot, slug))];
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
    edit: { changes: changesOf(fix.edits) },
  };
}

/** Every finding of one kind that has a preferred fix, where there is more than one. */
function fixAllOf(snapshot: Snapshot, slug: string): CodeAction[] {
  const mended = withoutOverlaps(snapshot.findings.filter((finding) => finding.slug === slug));
  if (mended.length < 2) return [];
  return [
    {
      title: `Mend all ${mended.length} of these (${slug})`,
      kind: CodeActionKind.QuickFix,
      diagnostics: mended.map(({ finding }) => diagnosticOf(finding)),
      edit: { changes: changesOf(mended.flatMap(({ fix }) => fix.edits)) },
    },
  ];
}

function fixFile(snapshot: Snapshot): CodeAction[] {
  const mended = withoutOverlaps(snapshot.findings);
  if (mended.length === 0) return [];
  const edit = { changes: changesOf(mended.flatMap(({ fix }) => fix.edits)) };
  return [{ title: "Mend everything that has one plain mend", kind: FIX_ALL_KIND, edit }];
}

/** Findings with their preferred fixes; one whose edits would meet those of another before it is left for later. */
function withoutOverlaps(findings: readonly Finding[]): { finding: Finding; fix: Fix }[] {
  const taken: FixEdit[] = [];
  return findings.flatMap((finding) => {
    const fix = preferredOf(finding);
    if (fix === undefined || fix.edits.some((edit) => taken.some((other) => editsMeet(edit, other))))
      return [];
    taken.push(...fix.edits);
    return [{ finding, fix }];
  });
}

function editsMeet(a: FixEdit, b: FixEdit): boolean {
  return a.uri === b.uri && rangesMeet(rangeOf(a), rangeOf(b));
}

function changesOf(edits: readonly FixEdit[]): Record<string, TextEdit[]> {
  const changes: Record<string, TextEdit[]> = {};
  for (const edit of edits) {
    const ofFile = changes[edit.uri] ?? [];
    ofFile.push({ range: rangeOf(edit), newText: edit.text });
    changes[edit.uri] = ofFile;
  }
  return changes;
}
