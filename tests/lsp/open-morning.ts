/** A client with a morning open beside its book, for the protocol tests. */
import { BOOK, BOOK_URI, MORNING, URI } from "../service/open-service.ts";
import { BookWorld, joinServer } from "./join-server.ts";
import type { ClientSetup, TestClient } from "./test-client.ts";

/** The document every request is about. */
export const DOCUMENT = { textDocument: { uri: URI } };
/** A range of all its lines. */
export const WHOLE = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
/** The morning with a slip in its last line. */
export const SLIP = `${MORNING}06:15 move P1 out 72,5 ft\n`;
/** The number of that line. */
export const SLIP_LINE = MORNING.split("\n").length - 1;

/** A client with the morning, or another text, open beside its book. */
export async function openMorning(
  text = MORNING,
  setup: ClientSetup = {},
): Promise<{ client: TestClient; world: BookWorld }> {
  const world = new BookWorld();
  world.books.set(BOOK_URI, BOOK);
  const client = joinServer(world);
  await client.initialize(setup);
  await client.open(URI, text);
  await client.published(URI);
  return { client, world };
}

/** The codes of diagnostics. */
export const codes = (diagnostics: readonly { code?: string | number | undefined }[]) =>
  diagnostics.map(({ code }) => code);
