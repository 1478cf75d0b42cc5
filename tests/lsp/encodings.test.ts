/** Clients that count columns in another way than the service: every position, in both directions. */
import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  DocumentSymbol,
  InlayHint,
  Location,
  SemanticTokens,
  TextEdit,
} from "vscode-languageserver-types";
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import { DOCUMENT } from "./open-morning.ts";
import { ABLE, type TestClient } from "./test-client.ts";

/** A name with a character of four bytes, one of two and one of three, in front of what the positions are about. */
const FAR = '"🎣é日"';
const BOOK_FAR = BOOK.replace('lure "Ash Wednesday"', `lure ${FAR}`);
const DAY = MORNING.replace('lure "Ash Wednesday"', `lure ${FAR}`);

const bytes = (text: string): number => Buffer.from(text).length;
const signs = (text: string): number => [...text].length;

async function openIn(positionEncodings: string[], text: string): Promise<TestClient> {
  const world = new BookWorld();
  world.books.set(BOOK_URI, BOOK_FAR);
  const client = joinServer(world);
  await client.initialize({ capabilities: { general: { positionEncodings }, textDocument: ABLE } });
  await client.open(URI, text);
  await client.published(URI);
  return client;
}

test.each([
  [undefined, undefined],
  [[], undefined],
  [["utf-16"], undefined],
  [["utf-16", "utf-8"], undefined],
  [["utf-8", "utf-16"], "utf-8"],
  [["utf-8"], "utf-8"],
  [["utf-32", "utf-16"], "utf-32"],
  [["ebcdic"], undefined],
])("a client that offers %j is answered %s", async (positionEncodings, answered) => {
  const general = positionEncodings === undefined ? {} : { positionEncodings };
  const { capabilities } = await joinServer().initialize({ capabilities: { general } });
  expect(capabilities.positionEncoding).toBe(answered);
});

describe.each([
  ["utf-8", bytes],
  ["utf-32", signs],
  ["utf-16", (text: string) => text.length],
])("in %s", (encoding, units) => {
  const SLIP = `06:15 change C1 lure ${FAR} out `;
  const LINE = DAY.split("\n").length - 1;

  test("a diagnostic stands where it is, and edits put their text where they are", async () => {
    const client = await openIn([encoding], `${DAY}${SLIP}72,5 ft\n`);
    const { diagnostics } = await client.published(URI);
    const range = {
      start: { line: LINE, character: units(SLIP) },
      end: { line: LINE, character: units(`${SLIP}72,5`) },
    };
    expect(diagnostics.find(({ code }) => code === "number-format")?.range).toEqual(range);
    const context = { diagnostics };
    const [fix] = await client.request<CodeAction[]>("textDocument/codeAction", {
      ...DOCUMENT,
      range,
      context,
    });
    expect(fix?.edit?.changes?.[URI]?.[0]).toEqual({ range, newText: "72.5" });

    await client.change(URI, 2, [
      { range: { start: { line: LINE, character: 0 }, end: { line: LINE, character: 0 } }, text: "# 🎣\n" },
      {
        range: {
          start: { line: LINE + 1, character: units(`${SLIP}72`) },
          end: { line: LINE + 1, character: units(`${SLIP}72,`) },
        },
        text: ".",
      },
    ]);
    expect((await client.published(URI, ({ version }) => version === 2)).diagnostics).toEqual([]);
  });

  test("a name behind such a character leads to the book, where columns are counted likewise", async () => {
    const client = await openIn([encoding], DAY);
    const at = (column: number) => ({ ...DOCUMENT, position: { line: 6, character: column } });
    const before = "05:14 set C1 out 90 ft setback 20 ft lure ";
    const last = await client.request<Location>("textDocument/definition", at(units(`${before}${FAR}`) - 1));
    expect(last.uri).toBe(BOOK_URI);
    const line = BOOK_FAR.split("\n").findIndex((text) => text.startsWith(`lure ${FAR}`));
    expect(last.range.start).toEqual({ line, character: units("lure ") });
    expect(last.range.end).toEqual({ line, character: units(`lure ${FAR}`) });
  });

  test("hints, symbols, tokens and completions are at their places", async () => {
    const client = await openIn([encoding], `${DAY}${SLIP}90 f`);
    const text = `${DAY}${SLIP}90 f`.split("\n");
    const whole = { start: { line: 0, character: 0 }, end: { line: LINE + 1, character: 0 } };
    const hints = await client.request<InlayHint[]>("textDocument/inlayHint", { ...DOCUMENT, range: whole });
    expect(hints[0]?.position).toEqual({ line: 6, character: units(text[6] ?? "") });

    const [trip] = await client.request<DocumentSymbol[]>("textDocument/documentSymbol", DOCUMENT);
    const set = trip?.children?.find(({ name }) => name === "set C1");
    expect(set?.range.end).toEqual({ line: 6, character: units(text[6] ?? "") });

    const { data } = await client.request<SemanticTokens>("textDocument/semanticTokens/full", DOCUMENT);
    const tokens = unpack(data).filter(({ line }) => line === 6);
    const before = "05:14 set C1 out 90 ft setback 20 ft lure ";
    expect(tokens).toContainEqual({ line: 6, start: units(before), length: units(FAR) });

    const position = { line: LINE, character: units(`${SLIP}90 f`) };
    const [offer] = await client.request<CompletionItem[]>("textDocument/completion", {
      ...DOCUMENT,
      position,
    });
    const start = { line: LINE, character: units(`${SLIP}90 `) };
    expect(offer?.textEdit).toMatchObject({ range: { start, end: position } });
  });
});

test("a column inside of a character is its start, and one behind the line's end is the end", async () => {
  const client = await openIn(["utf-8"], `${DAY}# 🎣`);
  const line = DAY.split("\n").length - 1;
  const put = (character: number, text: string) => ({
    range: { start: { line, character }, end: { line, character } },
    text,
  });
  await client.change(URI, 2, [put(4, "a"), put(99, "b")]);
  const edits = await client.request<TextEdit[]>("textDocument/formatting", { ...DOCUMENT, options: {} });
  expect(edits).toEqual([]);
  await client.change(URI, 3, [put(8, "\n06:15 move C1 out 9,5 ft #")]);
  const { diagnostics } = await client.published(URI, ({ version }) => version === 3);
  expect(diagnostics[0]?.range.start).toEqual({ line: line + 1, character: 18 });
});

test("a byte order mark is three bytes of the first line", async () => {
  const client = await openIn(["utf-8"], "\ufeff05:00 move C1 out 72,5 ft\n");
  const { diagnostics } = await client.published(URI);
  expect(diagnostics.find(({ code }) => code === "number-format")?.range.start.character).toBe(21);
});

/** Packed tokens by their lines and columns. */
function unpack(data: readonly number[]): { line: number; start: number; length: number }[] {
  let [line, start] = [0, 0];
  const tokens = [];
  for (let at = 0; at < data.length; at += 5) {
    const [lines = 0, step = 0, length = 0] = data.slice(at, at + 3);
    start = lines === 0 ? start + step : step;
    line += lines;
    tokens.push({ line, start, length });
  }
  return tokens;
}
