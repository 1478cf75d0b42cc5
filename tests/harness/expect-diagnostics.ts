/** Compares diagnostics with the carets under a text, strictly both ways: one too many fails like one too few. */
import { type LineDiagnostic, readMarks } from "./markers.ts";

/** What is under test: a text in, its diagnostics out. */
export type Diagnose = (text: string) => readonly LineDiagnostic[];

/**
 * Runs the text without its carets and compares. Throws an Error that shows the text with the carets as they are,
 * ready to be pasted if they are right.
 */
export function expectDiagnostics(source: string, diagnose: Diagnose): void {
  const { text, expected, cursors, ranges } = readMarks(source);
  if (cursors.length + ranges.length > 0) throw new Error("only carets are read here");
  for (const ends of ["\n", "\r\n"]) {
    const actual = diagnose(text.replaceAll("\n", ends));
    if (!isMatch(expected, actual)) {
      throw new Error(`other diagnostics than expected; as it is:\n\n${drawCarets(text, actual)}\n`);
    }
  }
}

/** The text with a line of carets under each diagnostic's line. An empty one is drawn as `!`: nothing matches it. */
export function drawCarets(text: string, diagnostics: readonly LineDiagnostic[]): string {
  return text
    .split("\n")
    .flatMap((line, index) => [
      line,
      ...inOrder(diagnostics.filter((d) => d.line === index)).map((d) =>
        `${" ".repeat(d.start)}${"^".repeat(d.stop - d.start) || "!"} ${d.slug} ${d.message ?? ""}`.trimEnd(),
      ),
    ])
    .join("\n");
}

function isMatch(expected: readonly LineDiagnostic[], actual: readonly LineDiagnostic[]): boolean {
  if (expected.length !== actual.length) return false;
  const found = inOrder(actual);
  return inOrder(expected).every((want, index) => {
    const got = found[index];
    if (got === undefined) return false;
    const isPlace = want.line === got.line && want.start === got.start && want.stop === got.stop;
    return isPlace && want.slug === got.slug && (want.message === undefined || want.message === got.message);
  });
}

function inOrder(diagnostics: readonly LineDiagnostic[]): LineDiagnostic[] {
  return [...diagnostics].sort(
    (a, b) => a.line - b.line || a.start - b.start || a.stop - b.stop || (a.slug < b.slug ? -1 : 1),
  );
}
