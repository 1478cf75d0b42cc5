import { describe, expect, test } from "vitest";
import { type Diagnose, drawCarets, expectDiagnostics } from "./expect-diagnostics.ts";

/** A made-up check: every word `bad` is wrong. */
const findBad: Diagnose = (text) =>
  text.split(/\r?\n/u).flatMap((line, index) =>
    [...line.matchAll(/\bbad\b/gu)].map((m) => ({
      line: index,
      start: m.index,
      stop: m.index + 3,
      slug: "bad-word",
      message: "that word is bad",
    })),
  );

describe("passes", () => {
  test.each([
    "good",
    "a bad one\n  ^^^ bad-word",
    "a bad one\n  ^^^ bad-word that word is bad",
    "bad bad\n^^^ bad-word\n    ^^^ bad-word",
    "bad bad\n    ^^^ bad-word\n^^^ bad-word",
  ])("%j", (source) => {
    expectDiagnostics(source, findBad);
  });
});

describe("fails", () => {
  test.each([
    ["one too few expected", "a bad one"],
    ["one too many expected", "good\n^^^ bad-word"],
    ["one of two expected", "bad bad\n^^^ bad-word"],
    ["another start", "a bad one\n ^^^^ bad-word"],
    ["another stop", "a bad one\n  ^^ bad-word"],
    ["another line", "bad\n\n^^^ bad-word"],
    ["another slug", "bad\n^^^ bad-words"],
    ["another message", "bad\n^^^ bad-word that word is"],
    ["a cursor", "good<|>"],
    ["a range", "<|good|>"],
  ])("%s", (_, source) => {
    expect(() => expectDiagnostics(source, findBad)).toThrow();
  });

  test("on an empty diagnostic, whatever is expected", () => {
    const empty: Diagnose = () => [{ line: 0, start: 1, stop: 1, slug: "bad-word" }];
    expect(() => expectDiagnostics("a\n ^ bad-word", empty)).toThrow(" ! bad-word");
  });

  test("on a diagnostic that only one kind of line end brings", () => {
    const crlf: Diagnose = (text) => (text.includes("\r") ? [{ line: 0, start: 0, stop: 1, slug: "x" }] : []);
    expect(() => expectDiagnostics("a\nb", crlf)).toThrow();
  });

  test("with the carets as they are, ready to be pasted", () => {
    expect(() => expectDiagnostics("a bad one", findBad)).toThrow(
      "a bad one\n  ^^^ bad-word that word is bad",
    );
  });
});

test("carets are drawn under their lines", () => {
  expect(drawCarets("x\nbad\ny", findBad("x\nbad\ny"))).toBe("x\nbad\n^^^ bad-word that word is bad\ny");
});
