/** Documents opened, changed and closed: diagnostics follow, whatever their address and line ends. */
import { describe, expect, test } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver-types";
import { URI } from "../service/open-service.ts";
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
