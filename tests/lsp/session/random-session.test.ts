/** In Node, ten thousand random steps leave the server in the very state that a fresh start on the final texts gives. */
import { describe, expect, test } from "vitest";
import { makeRandom } from "../../bench/random.ts";
import { BOOK, BOOK_URI } from "../../service/open-service.ts";
import { BookWorld, joinServer } from "../join-server.ts";
import type { TestClient } from "../test-client.ts";
import { RandomEditor } from "./random-editor.ts";
import { stateOf } from "./session-state.ts";

const SEEDS = [11, 29, 47, 83];
const STEPS = 2500;
/** Everything asked is waited for this often, in steps, so that the queue of messages stays short. */
const BREATH = 20;
/** The server's state is compared with a fresh start's this often, in steps. */
const STOP = 125;

describe("a random session", () => {
  test.each(SEEDS)("of seed %i is at every stop as a fresh start would be", async (seed) => {
    const world = new BookWorld();
    world.books.set(BOOK_URI, BOOK);
    const client = joinServer(world);
    await client.initialize();
    const editor = new RandomEditor(makeRandom(seed), client, world);
    let found = 0;
    for (let step = 1; step <= STEPS; step++) {
      // The last things before a stop are those that change what is found in documents nobody touches.
      await editor.step(step % STOP > STOP - 4 || undefined);
      if (step % BREATH === 0) await editor.answered();
      if (step % STOP === STOP - 1) found += await compareWithFreshStart(client, world, editor);
    }
    expect(client.logged).toEqual([]);
    // The sessions have something to say.
    expect(found).toBeGreaterThan(STEPS / STOP);
  });
});

/** How much was found in the documents, which is the same in both. */
async function compareWithFreshStart(
  client: TestClient,
  world: BookWorld,
  editor: RandomEditor,
): Promise<number> {
  await editor.answered();
  const fresh = joinServer(world);
  await fresh.initialize({ options: editor.settings });
  const documents = [...editor.open.values()];
  for (const document of documents) await fresh.open(document.uri, document.getText(), document.version);
  let found = 0;
  for (const document of documents) {
    const { uri } = document;
    const expected = await stateOf(fresh, document);
    expect(await stateOf(client, document)).toEqual(expected);
    const { items } = expected.diagnostic as { items: readonly unknown[] };
    const said = JSON.stringify(items);
    const isSaid = () => JSON.stringify(client.lastPublished(uri)) === said || undefined;
    await client.until(`the last diagnostics of ${uri}`, isSaid);
    found += items.length;
  }
  fresh.connection.end();
  return found;
}
