/** The one place where the grammar's tests touch its API. Each helper throws when what it needs is not there. */
import { expect } from "vitest";
import { formatText } from "../../grammar/format.ts";
import { type Parse, parse } from "../../grammar/parse.ts";
import { expectDiagnostics } from "../harness/expect-diagnostics.ts";
import type { LineDiagnostic } from "../harness/markers.ts";
import { describeIssues } from "./describe-issue.ts";
import { describeLine } from "./describe-line.ts";

/** Reads a text and fails when any line of it has an issue. */
export function parseClean(text: string): Parse {
  const parsed = parse(text);
  const issues = describeIssues(parsed);
  if (issues.length > 0) throw new Error(`an issue in ${JSON.stringify(text)}: ${JSON.stringify(issues)}`);
  return parsed;
}

/** The text reads without an issue, and its last line has that tree. */
export function checkTree(text: string, tree: string): void {
  const line = parseClean(text).journal.lines.at(-1);
  if (line === undefined) throw new Error("a text has at least one line");
  expect(describeLine(line)).toBe(tree);
}

/** Every line of the text, with the carets under it, has exactly the issues that the carets say. */
export function checkIssues(source: string): void {
  expectDiagnostics(source, (text): LineDiagnostic[] => describeIssues(parse(text)));
}

/** The text formats to the other one, and that one to itself. */
export function checkFormat(text: string, formatted: string): void {
  const once = formatText(parse(text));
  expect(once).toBe(formatted);
  expect(formatText(parse(once))).toBe(once);
}

/** The text is what the formatter would write. */
export function checkCanonical(text: string): void {
  expect(formatText(parseClean(text))).toBe(text);
}
