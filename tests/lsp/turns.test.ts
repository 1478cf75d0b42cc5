/** Work that nobody waits for rests while somebody types. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createGuard } from "../../server/lsp/guard.ts";
import { BackgroundTurns, Preparer } from "../../server/lsp/turns.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Whether the work may go on after each of these times, ms, from the last key on. */
async function goesOn(keysAtMs: readonly number[], looksAtMs: readonly number[]): Promise<boolean[]> {
  const guard = createGuard((message) => expect.unreachable(message));
  const preparer = new Preparer(
    () => undefined,
    () => undefined,
    guard,
  );
  const turns = new BackgroundTurns(preparer, () => false);
  await vi.advanceTimersByTimeAsync(1);
  let isOn = false;
  const begun = performance.now();
  for (const key of keysAtMs) {
    await vi.advanceTimersByTimeAsync(key - (performance.now() - begun));
    preparer.typed();
    if (key === keysAtMs[0])
      void turns.pause()?.then(() => {
        isOn = true;
      });
  }
  const seen: boolean[] = [];
  for (const look of looksAtMs) {
    await vi.advanceTimersByTimeAsync(look - (performance.now() - begun));
    seen.push(isOn);
  }
  return seen;
}

test("between two keys it rests, and goes on once the keys are quiet", async () => {
  expect(await goesOn([0], [100, 200, 400])).toEqual([false, false, true]);
  expect(await goesOn([0, 100, 200, 300], [310, 500, 700])).toEqual([false, false, true]);
});

test("where nobody types it goes on at once", async () => {
  const guard = createGuard(() => undefined);
  const turns = new BackgroundTurns(
    new Preparer(
      () => undefined,
      () => undefined,
      guard,
    ),
    () => false,
  );
  expect(turns.pause()).toBeUndefined();
});
