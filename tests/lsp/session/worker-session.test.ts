/**
 * In a browser's worker, ten thousand random steps leave the server in the very state that a fresh start gives. What
 * runs is the bundle that is shipped to browsers, in a thread without Node's names, its files and messages with the
 * client; trips are saved, indexed and checked after they were shut.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { makeRandom } from "../../bench/random.ts";
import { BOOK, BOOK_URI } from "../../service/open-service.ts";
import type { TestClient } from "../test-client.ts";
import { bundleWorker, joinWorker } from "./join-worker.ts";
import { RandomEditor, type SessionDisk } from "./random-editor.ts";
import { stateOf, workspaceState } from "./session-state.ts";

const SEEDS = [5, 17, 31, 71];
const STEPS = 2500;
/** Everything asked is waited for this often, in steps, so that the queue of messages stays short. */
const BREATH = 20;
/** The server's state is compared with a fresh start's this often, in steps. */
const STOP = 250;
const FOLDERS = [{ uri: "file:///season", name: "season" }];

beforeAll(bundleWorker);

/** Plays a session, compares at every stop, and answers how much was found. `change` may spoil the client. */
async function play(seed: number, change: (client: TestClient) => void = () => undefined): Promise<number> {
  const disk: SessionDisk = { books: new Map([[BOOK_URI, BOOK]]), keepsTrips: true };
  const { client, end } = joinWorker(disk.books);
  try {
    await client.initialize({ folders: FOLDERS });
    change(client);
    const editor = new RandomEditor(makeRandom(seed), client, disk);
    let found = 0;
    for (let step = 1; step <= STEPS; step++) {
      // The last things before a stop are those that change what is found in documents nobody touches.
      await editor.step(step % STOP > STOP - 4 || undefined);
      if (step % BREATH === 0) await editor.answered();
      if (step % STOP === STOP - 1) found += await compareWithFreshStart(client, disk, editor);
    }
    expect(client.logged).toEqual([]);
    return found;
  } finally {
    await end();
  }
}

describe("a random session", () => {
  test.each(SEEDS)("of seed %i is at every stop as a fresh start would be", async (seed) => {
    // The sessions have something to say.
    expect(await play(seed)).toBeGreaterThan(STEPS / STOP);
  });

  test("of a server that is told of no change on disk is not", async () => {
    const deafen = (client: TestClient): void => {
      const notify = client.notify.bind(client);
      client.notify = async (method, params) => {
        if (method !== "workspace/didChangeWatchedFiles") await notify(method, params);
      };
    };
    await expect(play(SEEDS[0] ?? 0, deafen)).rejects.toThrow(/deeply equal/u);
  });
});

/** How much was found in the documents, which is the same in both. */
async function compareWithFreshStart(
  client: TestClient,
  disk: SessionDisk,
  editor: RandomEditor,
): Promise<number> {
  await editor.answered();
  const { client: fresh, end } = joinWorker(disk.books);
  await fresh.initialize({ options: editor.settings, folders: FOLDERS });
  const documents = [...editor.open.values()];
  for (const document of documents) await fresh.open(document.uri, document.getText(), document.version);
  expect(await workspaceState(client)).toEqual(await workspaceState(fresh));
  let found = 0;
  for (const document of documents) {
    const expected = await stateOf(fresh, document);
    expect(await stateOf(client, document)).toEqual(expected);
    found += (expected.diagnostic as { items: readonly unknown[] }).items.length;
  }
  await end();
  return found;
}
