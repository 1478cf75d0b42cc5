/** The TextMate grammar, run as an editor runs it. A case is a line, and each colored word with its scope. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";
import { DOCUMENTS } from "../../docs/generate/documents.ts";
import { textmateGrammar } from "../../grammar/highlighting/textmate-grammar.ts";
import { EXAMPLES } from "../properties/grammar-settings.ts";

const wasm = readFileSync(createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm"));

async function loadGrammar(): Promise<textmate.IGrammar> {
  await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(JSON.stringify(textmateGrammar()), "deepwake.json"),
  });
  const grammar = await registry.loadGrammar("source.deepwake");
  if (grammar === null) throw new Error("the grammar was not loaded");
  return grammar;
}

const grammar = await loadGrammar();

const SHORT: Record<string, string> = {
  "keyword.control": "verb",
  "support.function.attribute": "word",
  "constant.language": "flag",
  "variable.other": "name",
  "constant.numeric": "number",
  "keyword.other.unit": "unit",
  "string.quoted.double": "text",
  "string.unquoted.note": "note",
  "comment.line.number-sign": "comment",
  "constant.other.date": "date",
  "constant.other.time": "time",
  "constant.numeric.position": "position",
  "keyword.operator.range": "range",
  "constant.character.escape": "escape",
};

/** `verb pull · name P1` for the last line of a text. */
function colors(text: string): string {
  let state = textmate.INITIAL;
  let shown: string[] = [];
  for (const line of text.split("\n")) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    shown = tokens.flatMap(({ startIndex, endIndex, scopes }) => {
      const scope = scopes.at(-1)?.replace(".deepwake", "") ?? "";
      const word = line.slice(startIndex, endIndex).trim();
      if (scope === "source" || word === "") return word === "" ? [] : [word];
      return [`${SHORT[scope] ?? `(${scope})`} ${word}`];
    });
  }
  return shown.join(" · ");
}

describe("colors", () => {
  test.each([
    ["pull P1", "verb pull · name P1"],
    [
      "05:14 set out OUT 90 ft, lure lure # c",
      "time 05:14 · verb set · name out · word OUT · number 90 · unit ft · , · word lure · name lure · comment # c",
    ],
    ["set P1 slider mini", "verb set · name P1 · word slider · name mini"],
    ["strike P1 slider", "verb strike · name P1 · flag slider"],
    ["SET C1 72ft", "verb SET · name C1 · number 72 · unit ft"],
    ['set "P 1" lure "a ""b"""', 'verb set · text "P 1" · word lure · text "a ""b"""'],
    [
      "catch P1 king 17 lb 8 oz kept by G1",
      "verb catch · name P1 · name king · number 17 · unit lb · number 8 · unit oz · flag kept · word by · name G1",
    ],
    [
      "2031-06-15 ~00:20-04:00 turn right to 130 true",
      "date 2031-06-15 · time ~00:20-04:00 · verb turn · flag right · word to · number 130 · flag true",
    ],
    ["sonar marks 65 to 80 ft", "verb sonar · word marks · number 65 · range to · number 80 · unit ft"],
    [
      "gps at 44 46.1N 086 21.7W",
      "verb gps · word at · number 44 · position 46.1N · number 086 · position 21.7W",
    ],
    ['lost P1 fish "never, saw it"', 'verb lost · name P1 · name fish · text "never, saw it"'],
    ["trip 2031-06-21 Skiff charter", "verb trip · date 2031-06-21 · name Skiff · flag charter"],
    ["trip 2031-06-21 Skiff\n  anglers 6", "verb anglers · number 6"],
    [
      "trip 2031-06-21 Skiff\n  official 06:00 to 13:00",
      "verb official · time 06:00 · range to · time 13:00",
    ],
    ["boat Skiff\n  units ft mph", "verb units · unit ft · unit mph"],
    ["# a comment", "comment # a comment"],
    ["pull P#1", "verb pull · name P#1"],
    ["05:45", "time 05:45"],
    ["pul P1 72 ft", "pul P1 · number 72 · unit ft"],
  ])("%j", (text, shown) => {
    expect(colors(text)).toBe(shown);
  });
});

describe("a note", () => {
  test.each([
    ["note private\n  06:00 drift # c", "note 06:00 drift # c"],
    ["note\n\n  text", "note text"],
    ["note\n# c\n  text", "note text"],
    ["note\n# c", "comment # c"],
    ["note private", "verb note · flag private"],
    ["note\n  text\ndrift", "verb drift"],
    ["09:40 note\n  text\n09:50 drift", "time 09:50 · verb drift"],
  ])("%j", (text, shown) => {
    expect(colors(text)).toBe(shown);
  });
});

test("the extension's languages are colored by the generated file", () => {
  const { contributes } = JSON.parse(readFileSync(join(import.meta.dirname, "../../package.json"), "utf8"));
  const paths = DOCUMENTS.map((document) => `./${document.path}`);
  for (const { scopeName, path } of contributes.grammars) {
    expect([scopeName, paths.includes(path)]).toEqual([textmateGrammar().scopeName, true]);
  }
  expect(contributes.grammars).toHaveLength(contributes.languages.length);
});

test("every scope is one that themes know", () => {
  const scopes = JSON.stringify(textmateGrammar()).matchAll(/"name":"([^"]+)\.deepwake"/gu);
  for (const [, scope = ""] of scopes) expect(Object.keys(SHORT)).toContain(scope);
});

test("every line of the examples that starts with a word has it colored as a verb", () => {
  for (const text of EXAMPLES) {
    let state = textmate.INITIAL;
    for (const line of text.split("\n")) {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
      state = ruleStack;
      const scopes = tokens.flatMap((token) => token.scopes);
      if (/^\s*[\w~]/u.test(line))
        expect(scopes.join(" "), line).toMatch(/keyword\.control|string\.unquoted/u);
    }
  }
});
