/** Documents opened, changed and closed: diagnostics follow, whatever their address and line ends. */
import { describe, expect, test } from "vitest";
import type { CompletionItem, DocumentSymbol } from "vscode-languageserver-types";
import { MORNING, URI } from "../service/open-service.ts";
import { codes, DOCUMENT, openMorning, SLIP, SLIP_LINE } from "./open-morning.ts";

describe("documents", () => {
  test("opened, changed by a range, and closed", async () => {
    const { client } = await openMorning(SLIP);
    expect(await client.published(URI)).toMatchObject({
      version: 1,
      diagnostics: [{ code: "number-format" }],
    });
    const start = { line: SLIP_LINE, character: "06:15 move P1 out 72".length };
    const range = { start, end: { ...start, character: start.character + 1 } };
    await client.change(URI, 2, [{ range, text: "." }]);
    expect(await client.published(URI, ({ version }) => version === 2)).toMatchObject({ diagnostics: [] });
    client.forget();
    await client.close(URI);
    expect(await client.published(URI)).toEqual({ uri: URI, version: undefined, diagnostics: [] });
    expect(await client.request("textDocument/hover", { ...DOCUMENT, position: start })).toBeNull();
  });

  test("several ranges at once, each after the one before, whatever the line ends", async () => {
    const { client } = await openMorning("05:00 pull C1\r\n05:01 pull C1\r05:02 pull C1\n");
    const at = (line: number, from: number, to: number) => ({
      start: { line, character: from },
      end: { line, character: to },
    });
    await client.change(URI, 2, [
      { range: at(2, 0, 0), text: "# " },
      { range: at(1, 6, 10), text: "drift #" },
      { range: { start: { line: 0, character: 13 }, end: { line: 1, character: 0 } }, text: "\n" },
    ]);
    await client.published(URI, ({ version }) => version === 2);
    const symbols = await client.request<DocumentSymbol[]>("textDocument/documentSymbol", DOCUMENT);
    expect(symbols.map(({ name }) => name)).toEqual(["pull C1", "drift"]);
  });

  test("changes that come together are checked once, at their last", async () => {
    const { client } = await openMorning();
    client.forget();
    const versions = Array.from({ length: 20 }, (_, index) => index + 2);
    await Promise.all(versions.map((version) => client.change(URI, version, [{ text: SLIP }])));
    await client.published(URI, ({ version }) => version === 21);
    expect(client.publishedCount).toBeLessThan(20);
  });

  test("a request sent along with a change of a long file is answered before the checks", async () => {
    const day = (n: number) => MORNING.replaceAll("2031-06-21", `2031-07-${String(n).padStart(2, "0")}`);
    const long = Array.from({ length: 30 }, (_, index) => day(index + 1)).join("");
    const { client } = await openMorning();
    client.forget();
    const change = client.change(URI, 2, [{ text: `${long}06:15 mov` }]);
    const position = { line: long.split("\n").length - 1, character: 9 };
    const items = client.request<CompletionItem[]>("textDocument/completion", {
      textDocument: { uri: URI },
      position,
    });
    await change;
    expect((await items).map(({ label }) => label)).toContain("move");
    expect(client.publishedCount).toBe(0);
    await client.published(URI, ({ version }) => version === 2);
  });

  test("a whole new text", async () => {
    const { client } = await openMorning();
    await client.change(URI, 2, [{ text: SLIP }]);
    const { diagnostics } = await client.published(URI, ({ version }) => version === 2);
    expect(codes(diagnostics)).toEqual(["number-format"]);
  });

  test.each(["untitled:Untitled-1", "file:///nowhere/at/all.trip", "vscode-vfs://host/x.trip"])(
    "%s is checked too",
    async (uri) => {
      const { client } = await openMorning();
      await client.open(uri, SLIP);
      expect(codes((await client.published(uri)).diagnostics)).toEqual(["number-format"]);
    },
  );

  test("a byte order mark moves the first line by one column", async () => {
    const { client } = await openMorning("\ufeff05:00 move C1 out 72,5 ft\n");
    const { diagnostics } = await client.published(URI);
    expect(diagnostics.find(({ code }) => code === "number-format")?.range.start).toEqual({
      line: 0,
      character: 19,
    });
  });
});
