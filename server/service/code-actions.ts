/**
 * Quick fixes of the findings in a range, all of one kind at once, and everything that has one plain mend; lengths to
 * let out for a depth, other units, canonical form and order of time.
 */
import { type CodeAction, CodeActionKind, type Range, type TextEdit } from "vscode-languageserver-types";
import type { Finding, Fix, FixEdit } from "../checks/check.ts";
import { convertUnits } from "./convert-units.ts";
import { diagnosticOf } from "./diagnostics.ts";
import { rangeOf, rangesMeet } from "./positions.ts";
import { SET_FOR_KIND, setForDepth } from "./set-for-depth.ts";
import type { Snapshot } from "./snapshot.ts";
import { isUnsorted, sortEdits } from "./sort-by-time.ts";
import { isUntidy, tidyEdits, tripLines } from "./tidy-actions.ts";

/** The kind of the action that mends the whole file. */
export const FIX_ALL_KIND = "source.fixAll.deepwake";

/** What an action carries whose edits are made when it is chosen. */
interface ActionData {
  readonly uri: string;
  readonly name: keyof typeof LATER;
  /** A line of the trip or the lines it is about. */
  readonly lines: readonly [first: number, last: number];
  /** The check whose findings are mended. */
  readonly slug?: string;
}

/** The edits of actions that may be big, made from the text as it is when they are chosen. */
const LATER = {
  "mend-kind": (snapshot: Snapshot, { slug }: ActionData) => mendingEdits(snapshot, slug),
  "mend-file": (snapshot: Snapshot) => mendingEdits(snapshot),
  tidy: (snapshot: Snapshot, { lines }: ActionData) => ({ [snapshot.uri]: tidyEdits(snapshot, ...lines) }),
  sort: (snapshot: Snapshot, { lines: [line] }: ActionData) => {
    const day = snapshot.tripAt(line);
    return { [snapshot.uri]: day === undefined ? [] : sortEdits(snapshot, day) };
  },
} satisfies Record<string, (snapshot: Snapshot, data: ActionData) => Record<string, TextEdit[]>>;

/** Actions for a range; of the kinds in `only` and the kinds below them, where given. Big edits are still to be made. */
export function codeActions(snapshot: Snapshot, range: Range, only?: readonly string[]): CodeAction[] {
  const wants = (kind: string): boolean =>
    only === undefined || only.some((one) => kind === one || kind.startsWith(`${one}.`));
  const { start } = range;
  return [
    ...(wants(CodeActionKind.QuickFix) ? quickFixes(snapshot, range) : []),
    ...(wants(SET_FOR_KIND) ? setForDepth(snapshot, start.line) : []),
    ...(wants(CodeActionKind.RefactorRewrite)
      ? [...convertUnits(snapshot, start), ...rewrites(snapshot, range)]
      : []),
    ...(only !== undefined && wants(FIX_ALL_KIND) ? fixFile(snapshot) : []),
    ...(only ?? []).flatMap((kind) => fixKind(snapshot, kind)),
  ];
}

/** An action with its edits. */
export function resolveCodeAction(snapshot: Snapshot, action: CodeAction): CodeAction {
  const data: ActionData | undefined = action.data;
  const make = data === undefined ? undefined : LATER[data.name];
  return data === undefined || make === undefined
    ? action
    : { ...action, edit: { changes: make(snapshot, data) } };
}

/** Canonical form and order of time, where they would change something. */
function rewrites(snapshot: Snapshot, { start, end }: Range): CodeAction[] {
  const later = (title: string, name: ActionData["name"], lines: ActionData["lines"]): CodeAction =>
    laterAction(title, CodeActionKind.RefactorRewrite, { uri: snapshot.uri, name, lines });
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  const trip = tripLines(snapshot, start.line);
  const day = trip === undefined ? undefined : snapshot.tripAt(start.line);
  return [
    ...(isUntidy(snapshot, start.line, last)
      ? [later(last === start.line ? "Tidy this line" : "Tidy these lines", "tidy", [start.line, last])]
      : []),
    ...(trip !== undefined && isUntidy(snapshot, ...trip) ? [later("Tidy this trip", "tidy", trip)] : []),
    ...(day !== undefined && isUnsorted(day) && sortEdits(snapshot, day).length > 0
      ? [later("Sort this trip by time", "sort", [start.line, start.line])]
      : []),
  ];
}

function laterAction(title: string, kind: string, data: ActionData): CodeAction {
  return { title, kind, data };
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
  const mended = mendable(snapshot, slug);
  if (mended.length < 2) return [];
  const title = `Mend all ${mended.length} of these (${slug})`;
  const data: ActionData = { uri: snapshot.uri, name: "mend-kind", lines: [0, 0], slug };
  const diagnostics = mended.map(({ finding }) => diagnosticOf(finding));
  return [{ ...laterAction(title, CodeActionKind.QuickFix, data), diagnostics }];
}

/** The same, asked for by its own kind: `source.fixAll.deepwake.number-format`. */
function fixKind(snapshot: Snapshot, kind: string): CodeAction[] {
  const slug = kind.startsWith(`${FIX_ALL_KIND}.`) ? kind.slice(FIX_ALL_KIND.length + 1) : "";
  if (slug === "" || mendable(snapshot, slug).length === 0) return [];
  return [
    laterAction(`Mend all of these (${slug})`, kind, {
      uri: snapshot.uri,
      name: "mend-kind",
      lines: [0, 0],
      slug,
    }),
  ];
}

function fixFile(snapshot: Snapshot): CodeAction[] {
  if (mendable(snapshot).length === 0) return [];
  const data: ActionData = { uri: snapshot.uri, name: "mend-file", lines: [0, 0] };
  return [laterAction("Mend everything that has one plain mend", FIX_ALL_KIND, data)];
}

function mendingEdits(snapshot: Snapshot, slug?: string): Record<string, TextEdit[]> {
  return changesOf(mendable(snapshot, slug).flatMap(({ fix }) => fix.edits));
}

/** Findings that can be mended at once, of one check or of all. */
function mendable({ findings }: Snapshot, slug?: string): { finding: Finding; fix: Fix }[] {
  return withoutOverlaps(slug === undefined ? findings : findings.filter((finding) => finding.slug === slug));
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
