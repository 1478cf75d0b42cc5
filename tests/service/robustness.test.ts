/**
 * What holds for every file: each request at each place of each example answers without throwing, typing step by step
 * comes to the same as opening the final text, and line ends and byte order marks change no answer.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Position } from "vscode-languageserver-types";
import type { LanguageService } from "../../server/service/language-service.ts";
import { EVERYTHING, MORNING, openService, positionAt, URI } from "./open-service.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "examples", "bright-penny");
const BOOK = readFileSync(join(EXAMPLES, "bright-penny.gear"), "utf8");

/** Every journal and book of the examples, by name. */
const examples = readdirSync(EXAMPLES, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.(?:trip|gear)$/u.test(name))
  .sort()
  .map((name) => [name, readFileSync(join(EXAMPLES, name), "utf8")] as const);

/** Asks everything that is asked of a place. */
function askAt(service: LanguageService, at: Position): void {
  service.hover(URI, at);
  service.completion(URI, at);
  service.definition(URI, at);
  service.highlights(URI, at);
  service.references(URI, at, true);
  service.prepareRename(URI, at);
  service.rename(URI, at, "other one");
  service.signatureHelp(URI, at);
  service.selectionRanges(URI, [at]);
  service.onTypeFormatting(URI, at, "\n");
  service.codeActions(URI, { start: at, end: at });
}

/** Everything that is said of a whole file. */
function answers(service: LanguageService): unknown {
  return {
    diagnostics: service.diagnostics(URI),
    hints: service.inlayHints(URI, EVERYTHING),
    symbols: service.documentSymbols(URI),
    links: service.documentLinks(URI),
    folds: service.foldingRanges(URI),
    tokens: service.semanticTokens(URI),
    format: service.formatting(URI),
    fixes: service.codeActions(URI, EVERYTHING, ["source.fixAll", "quickfix"]),
  };
}

describe("every request answers at every place", () => {
  test.each(examples)("of %s", (_, text) => {
    const service = openService(text, { book: BOOK });
    // Each line is asked at as many places as it has columns, and one beyond.
    const lines = text.split("\n");
    lines.forEach((line, index) => {
      for (let character = 0; character <= line.length + 1; character++) {
        askAt(service, { line: index, character });
      }
    });
    answers(service);
  });

  test("beyond the end of the file", () => {
    const at = { line: 999, character: 5 };
    const service = openService(MORNING);
    expect(service.hover(URI, at)).toBeNull();
    expect(service.completion(URI, at)).toEqual([]);
    expect(service.definition(URI, at)).toEqual([]);
    expect(service.references(URI, at, true)).toEqual([]);
    expect(service.highlights(URI, at)).toEqual([]);
    expect(service.prepareRename(URI, at)).toBeNull();
    expect(service.rename(URI, at, "X1")).toBeNull();
    expect(service.formatting(URI, { start: at, end: at })).toEqual([]);
  });

  test("of any text", () => {
    const words = fc.constantFrom(
      ...[
        "trip",
        "2031-06-21",
        '"Bright Penny"',
        "05:14",
        "set",
        "P1",
        "out",
        "90",
        "ft",
        "72,5",
        "lure",
        "again",
      ],
      ...[
        "note",
        "#",
        '"',
        "\n",
        "\n",
        "\n  ",
        "\r",
        "\r\n",
        "~",
        "to",
        "\ufeff",
        "\u2028",
        "\ud83d\ude00",
        "\ud800",
      ],
      ...["all", "pull", "catch", "king", "boat", "rig", "threshold", "units", "-", "1e9", "\u0000", "\t"],
    );
    const text = fc.array(words, { maxLength: 40 }).map((parts) => parts.join(" "));
    fc.assert(
      fc.property(text, fc.nat(), (written, place) => {
        const service = openService(written);
        askAt(service, positionAt(written, place % (written.length + 1)));
        answers(service);
      }),
      { seed: 20310621, numRuns: 300 },
    );
  });
});

describe("typed step by step it comes to the same as opened at once", () => {
  /** Opens `from`, makes the edits one after another, and compares with the final text opened at once. */
  function checkSteps(
    from: string,
    edits: readonly (readonly [place: number, cut: number, put: string])[],
  ): void {
    const service = openService(from, { book: BOOK });
    let text = from;
    edits.forEach(([place, cut, put], step) => {
      const at = place % (text.length + 1);
      text = text.slice(0, at) + put + text.slice(at + cut);
      service.update(URI, step + 2, text);
      service.diagnostics(URI);
    });
    expect(answers(service)).toEqual(answers(openService(text, { book: BOOK })));
  }

  const put = fc.constantFrom(
    "0",
    "1",
    " ",
    "\n",
    "  ",
    "# ",
    "P1",
    "06:20 again P1\n",
    "note\n",
    "trip ",
    '"',
    "",
  );
  const edit = fc.tuple(fc.nat(), fc.integer({ min: 0, max: 30 }), put);

  test.each(examples)("%s", (_, text) => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => checkSteps(text, edits)),
      { seed: 20310621, numRuns: 12 },
    );
  });

  test("several trips and a boat in one file", () => {
    const days = ["2031-06-21", "2031-06-21", "2031-06-22"].map((day) =>
      MORNING.replaceAll("2031-06-21", day),
    );
    const text = [days[0], "boat b\nrig X1 downrigger ball none\n", ...days.slice(1)].join("\n# next\n");
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => checkSteps(text, edits)),
      { seed: 20310621, numRuns: 60 },
    );
  });

  test("a line typed letter by letter", () => {
    const line = "06:14 again P1 out 80 ft  # slow\n";
    checkSteps(
      MORNING,
      [...line].map((letter, index) => [MORNING.length + index, 0, letter] as const),
    );
  });
});

describe("line ends and a byte order mark change no answer", () => {
  const trips = examples.filter(([name]) => name.startsWith("trips/") || name.startsWith("wrong/"));

  test.each(trips)("line ends of %s", (_, text) => {
    const wanted = openService(text, { book: BOOK });
    for (const end of ["\r\n", "\r"]) {
      const service = openService(text.replaceAll("\n", end), { book: BOOK });
      expect(service.diagnostics(URI)).toEqual(wanted.diagnostics(URI));
      expect(service.inlayHints(URI, EVERYTHING)).toEqual(wanted.inlayHints(URI, EVERYTHING));
      expect(service.semanticTokens(URI)).toEqual(wanted.semanticTokens(URI));
    }
  });

  test("a byte order mark is a column of the first line, and of no other", () => {
    const text = '5:14  set P1 out 72,5 ft\n5:15  set P1 out 72,5 ft\ntrip 2031-06-21 "Bright Penny"\n';
    const [plain, marked] = [openService(text), openService(`\ufeff${text}`)];
    const columns = (service: LanguageService) =>
      service
        .diagnostics(URI)
        .map(({ range }) => [range.start.line, range.start.character, range.end.character]);
    expect(columns(marked)).toEqual(
      columns(plain).map(([line, start = 0, end = 0]) =>
        line === 0 ? [0, start + 1, end + 1] : [line, start, end],
      ),
    );
    const shift = (line: number) => ({ line, character: 8 });
    expect(marked.hover(URI, shift(0))).toEqual(plain.hover(URI, { line: 0, character: 7 }));
    expect(marked.hover(URI, shift(1))).toEqual(plain.hover(URI, shift(1)));
    expect(marked.semanticTokens(URI).slice(0, 5)).toEqual([0, 1, 4, 4, 0]);
    expect(marked.documentSymbols(URI)[0]?.range.start).toEqual({ line: 0, character: 1 });
    expect(marked.documentSymbols(URI).slice(1)).toEqual(plain.documentSymbols(URI).slice(1));
    const edits = marked.completion(URI, shift(0)).map(({ textEdit }) => textEdit);
    expect(edits[0]).toHaveProperty("range.start", { line: 0, character: 7 });
  });
});

test("a file of gear alone is checked and answered", () => {
  const service = openService(BOOK, { book: "" });
  expect(service.diagnostics(URI)).toEqual([]);
  expect(service.documentSymbols(URI).map(({ name }) => name)).toEqual(["boat Bright Penny"]);
});

test("two trips of a file have each their own hints and hovers", () => {
  const second = MORNING.replaceAll("2031-06-21", "2031-06-22").replace("probe C1", "probe P1");
  const service = openService(MORNING + second);
  const hints = service.inlayHints(URI, EVERYTHING);
  expect(hints.map(({ position }) => position.line)).toEqual([6, 7, 17, 18]);
  expect(String(hints[2]?.tooltip)).toContain("at P1's probe");
});
