/** Findings for people: one line each, related places indented below, counts at the end. */
import type { Finding, RelatedPlace, Severity } from "../../../server/checks/check.ts";
import { countWords } from "../../../server/model/figures.ts";
import { humanPosition } from "../../../server/service/positions.ts";
import { shownUri } from "../paths.ts";
import { printable } from "../render/printable.ts";
import { type Paint, paintFor, widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import type { Call } from "../verb.ts";
import type { World } from "../world.ts";
import type { CheckedFile, CheckReport } from "./check-report.ts";

const SEVERITIES: readonly Severity[] = ["error", "warning", "information", "hint"];

/** The report as text. */
export async function checkText({ files, unusable }: CheckReport, call: Call, world: World): Promise<string> {
  const paint = await paintFor(world, call);
  const width = widthOf(world.out);
  const lines = files.flatMap((file) =>
    file.findings.flatMap((finding) => findingLines(file, finding, paint, world)),
  );
  if (files.length === 0 && unusable.length > 0) return "";
  const gap = lines.length > 0 && width < Number.POSITIVE_INFINITY ? [""] : [];
  const counts = countsLine(
    files.flatMap((file) => file.findings),
    files.length,
  );
  return [...lines.flatMap(({ text, hang }) => wrap(text, width, hang)), ...gap, ...wrap(counts, width, 2)]
    .map((line) => `${line}\n`)
    .join("");
}

interface HangingLine {
  readonly text: string;
  readonly hang: number;
}

function findingLines(file: CheckedFile, finding: Finding, paint: Paint, world: World): HangingLine[] {
  const where = paint.strong(printable(`${file.shown}:${humanPosition(finding)}`));
  const severity = severityWord(finding.severity, paint);
  const text = `${where}  ${severity}  ${printable(finding.message)}  ${paint.faint(`[${finding.slug}]`)}`;
  return [{ text, hang: 4 }, ...finding.related.map((place) => relatedLine(place, file, world))];
}

function severityWord(severity: Severity, paint: Paint): string {
  if (severity === "error") return paint.error(severity);
  return severity === "warning" ? paint.warning(severity) : paint.note(severity);
}

function relatedLine(place: RelatedPlace, file: CheckedFile, world: World): HangingLine {
  const path = shownUri(place.uri, file, world);
  return { text: printable(`    ${path}:${humanPosition(place)}  ${place.message}`), hang: 8 };
}

/** `2 errors, 1 hint in 3 files.` */
function countsLine(findings: readonly Finding[], fileCount: number): string {
  const counted = SEVERITIES.map(
    (severity) => [severity, findings.filter((finding) => finding.severity === severity).length] as const,
  ).filter(([, count]) => count > 0);
  const files = countWords(fileCount, "file");
  if (counted.length === 0) return `${files} checked, nothing found.`;
  const words = counted.map(([severity, count]) =>
    severity === "information" ? `${count} for information` : countWords(count, severity),
  );
  return `${words.join(", ")} in ${files}.`;
}
