/** A reading issue as a slug and a short text of its facts, so that a caret line can say all of it. */
import type { Issue } from "../../grammar/issues.ts";
import type { Parse } from "../../grammar/parse.ts";
import type { ValueType } from "../../grammar/vocabulary.ts";
import type { LineDiagnostic } from "../harness/markers.ts";

/** Every issue of a parse as a diagnostic. */
export function describeIssues(parsed: Parse): LineDiagnostic[] {
  return parsed.issues.flatMap((issue, line) => {
    if (issue === null) return [];
    const [start, stop] = issue.span;
    return [{ line, start, stop, ...describeIssue(issue) }];
  });
}

/** An issue's slug, and its facts in words. */
export function describeIssue(issue: Issue): { slug: string; message: string } {
  switch (issue.code) {
    case "syntax":
      return { slug: issue.reason, message: describeReason(issue) };
    case "unknown-word":
      return { slug: issue.code, message: `${issue.role} ${issue.word}` };
    case "unit-mismatch":
      return { slug: issue.code, message: `${issue.word} wants ${issue.wants}, not ${issue.unit}` };
    case "number-format":
      return {
        slug: issue.code,
        message: issue.mend === null ? issue.text : `${issue.text} meant ${issue.mend}`,
      };
  }
}

function describeReason(issue: Issue & { code: "syntax" }): string {
  switch (issue.reason) {
    case "missing-slot":
      return `${issue.verb} needs ${issue.label}${issue.before === "" ? "" : ` before ${issue.before}`}`;
    case "missing-value":
      return `${issue.word} needs ${describeType(issue.wants)}${issue.found === "" ? "" : `, found ${issue.found}`}`;
    case "missing-item":
      return `${issue.verb} needs ${issue.needs.join(" or ")}`;
    case "stamp-in-property":
      return issue.verb;
    case "too-long":
      return `${issue.length} of ${issue.longest}`;
    case "exclusive":
      return `${issue.word} after ${issue.other}`;
    case "by-how-much":
      return `${issue.word} ${issue.way > 0 ? "more" : "less"} by ${issue.parts.map(({ number, unit }) => `${number} ${unit ?? "?"}`).join(" ")}`;
    case "no-range":
    case "repeated":
      return issue.word;
    case "stray-text":
    case "bad-clock":
    case "bad-date":
    case "bad-position":
    case "bad-bearing":
    case "bad-count":
      return issue.text;
    case "out-of-place":
      return `${issue.verb} belongs to ${issue.belongs}`;
    case "which-measure":
      return `${issue.number} could be ${issue.words.join(" or ")}`;
    case "nothing-happened":
    case "open-quote":
      return "";
  }
}

function describeType(type: ValueType): string {
  switch (type.kind) {
    case "quantity":
      return type.dimension;
    case "number":
      return type.what;
    case "name":
      return `name of ${type.of}`;
    default:
      return type.kind;
  }
}
