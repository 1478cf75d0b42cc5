/** The protocol's order of things, and requests that the client gives up. */

import { describe, expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import { MORNING, URI } from "../service/open-service.ts";
import { joinServer } from "./join-server.ts";
import { DOCUMENT, openMorning, SLIP, WHOLE } from "./open-morning.ts";

const HOVER = { ...DOCUMENT, position: { line: 7, character: 8 } };

describe("out of turn", () => {
  test("before initialize a request is refused and a notification is dropped", async () => {
    const client = joinServer();
    await client.open(URI, SLIP);
    await expect(client.request("textDocument/hover", HOVER)).rejects.toMatchObject({ code: -32002 });
    await expect(client.request("shutdown", undefined)).rejects.toMatchObject({ code: -32002 });
    await client.initialize();
    expect(await client.request("textDocument/hover", HOVER)).toBeNull();
    expect(client.publishedCount).toBe(0);
  });

  test("initialize comes once", async () => {
    const client = joinServer();
    await client.initialize();
    await expect(client.initialize()).rejects.toMatchObject({ code: -32600 });
  });

  test("after shutdown every request is refused", async () => {
    const { client } = await openMorning();
    expect(await client.request("shutdown", undefined)).toBeNull();
    await expect(client.request("textDocument/hover", HOVER)).rejects.toMatchObject({ code: -32600 });
    await expect(client.request("shutdown", undefined)).rejects.toMatchObject({ code: -32600 });
    client.forget();
    await client.change(URI, 2, [{ text: SLIP }]);
    await expect(client.request("initialize", {})).rejects.toMatchObject({ code: -32600 });
    expect(client.publishedCount).toBe(0);
  });

  test("a request that isn't known is answered so", async () => {
    const { client } = await openMorning();
    await expect(client.request("deepwake/none", {})).rejects.toMatchObject({ code: -32601 });
  });
});

describe("given up", () => {
  test("a request that waits its turn is not begun", async () => {
    const { client } = await openMorning();
    const source = new CancellationTokenSource();
    // The pair is read in one go: the cancellation is there before the request's turn comes.
    const hover = client.connection.sendRequest("textDocument/hover", HOVER, source.token);
    source.cancel();
    await expect(hover).rejects.toMatchObject({ code: -32800 });
    expect(await client.request("textDocument/hover", HOVER)).not.toBeNull();
  });

  const day = (n: number): string =>
    MORNING.replaceAll(
      "2031-06-21",
      `2031-${String(5 + Math.floor(n / 28)).padStart(2, "0")}-${10 + (n % 20)}`,
    );
  const LONG = Array.from({ length: 80 }, (_, index) => day(index)).join("");

  test("long work stops between two steps", async () => {
    const { client } = await openMorning();
    const uri = "file:///season/long.trip";
    await client.open(uri, LONG);
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri }, range: WHOLE };
    const hints = client.connection.sendRequest("textDocument/inlayHint", params, source.token);
    setTimeout(() => source.cancel(), 0);
    await expect(hints).rejects.toMatchObject({ code: -32800 });
  });

  test("work on a text that changed meanwhile is told to be stale", async () => {
    const { client } = await openMorning();
    const uri = "file:///season/long.trip";
    await client.open(uri, LONG);
    const hints = client.request("textDocument/inlayHint", { textDocument: { uri }, range: WHOLE });
    const change = new Promise((resolve) => setTimeout(resolve, 0)).then(() =>
      client.change(uri, 2, [{ text: MORNING }]),
    );
    await expect(hints).rejects.toMatchObject({ code: -32801 });
    await change;
  });
});
