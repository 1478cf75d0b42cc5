/** Settings given at the start, pushed, and asked for, take effect at once. */
import { describe, expect, test } from "vitest";
import type { InlayHint } from "vscode-languageserver-types";
import { URI } from "../service/open-service.ts";
import { codes, DOCUMENT, openMorning, SLIP, WHOLE } from "./open-morning.ts";
import type { TestClient } from "./test-client.ts";

describe("settings", () => {
  const OFF = { checks: { "number-format": "off" }, hints: { depth: false, temperature: false } };
  const hintsOf = (client: TestClient) =>
    client.request<InlayHint[]>("textDocument/inlayHint", { ...DOCUMENT, range: WHOLE });

  test("given at the start", async () => {
    const { client } = await openMorning(SLIP, { options: OFF });
    expect((await client.published(URI)).diagnostics).toEqual([]);
    expect(await hintsOf(client)).toEqual([]);
  });

  test("depths and temperatures are shown each by its own", async () => {
    const depth = await openMorning(SLIP, { options: { hints: { temperature: false } } });
    const temperature = await openMorning(SLIP, { options: { hints: { depth: false } } });
    const labels = async ({ client }: { client: TestClient }) => {
      await client.published(URI);
      return (await hintsOf(client)).map(({ label }) => String(label).replaceAll(/\d+/gu, "#"));
    };
    expect(await labels(depth)).toEqual(["↓ ball # ft, lure # ft", "↓ ball # ft, lure # ft"]);
    expect(await labels(temperature)).toEqual(["↓ # F", "↓ # F"]);
  });

  test("pushed later, back to the defaults when malformed", async () => {
    const { client } = await openMorning(SLIP);
    await client.notify("workspace/didChangeConfiguration", { settings: { deepwake: OFF } });
    await client.published(URI, ({ diagnostics }) => diagnostics.length === 0);
    expect(await hintsOf(client)).toEqual([]);
    client.forget();
    const malformed = { checks: { "number-format": "loud" }, hints: "yes" };
    await client.notify("workspace/didChangeConfiguration", { settings: { deepwake: malformed } });
    await client.published(URI, ({ diagnostics }) => codes(diagnostics).includes("number-format"));
    expect(await hintsOf(client)).toHaveLength(2);
  });

  test("asked for from a client that can be asked, and again when they change", async () => {
    const workspace = {
      configuration: true,
      didChangeConfiguration: { dynamicRegistration: true },
      inlayHint: { refreshSupport: true },
    };
    const { client } = await openMorning(SLIP, { capabilities: { workspace } });
    await client.until(
      "a registration",
      () => client.registered.includes("workspace/didChangeConfiguration") || undefined,
    );
    client.settings = { checks: { "number-format": "information" } };
    await client.notify("workspace/didChangeConfiguration", { settings: null });
    await client.published(URI, ({ diagnostics }) => diagnostics[0]?.severity === 3);
    await client.until("fresh hints", () => client.hintRefreshes > 0 || undefined);
  });
});
