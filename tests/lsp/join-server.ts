/** Client and server joined in one process by streams in memory. */
import { PassThrough } from "node:stream";
import { type Connection, createConnection } from "vscode-languageserver/node";
import { StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { parse } from "../../grammar/parse.ts";
import { connect } from "../../server/lsp/connect.ts";
import { gateMessages } from "../../server/lsp/message-gate.ts";
import type { ServerWorld } from "../../server/lsp/server-world.ts";
import { TestClient } from "./test-client.ts";

/** A world whose books are a map from address to text; every document reaches all of them. */
export class BookWorld implements ServerWorld {
  readonly books = new Map<string, string>();
  roots: readonly string[] = [];
  /** Thrown instead of an answer. */
  failure: Error | undefined;
  #parsed = new Map<string, ReturnType<typeof parse>>();

  booksNear(uri: string): { uri: string; parse: ReturnType<typeof parse> }[] {
    if (this.failure !== undefined) throw this.failure;
    return [...this.books].filter(([book]) => book !== uri).map(([book, text]) => this.#read(book, text));
  }

  setRoots(uris: readonly string[]): void {
    this.roots = uris;
  }

  forgetFiles(): void {
    this.#parsed = new Map();
  }

  #read(uri: string, text: string): { uri: string; parse: ReturnType<typeof parse> } {
    const read = this.#parsed.get(uri) ?? parse(text);
    this.#parsed.set(uri, read);
    return { uri, parse: read };
  }
}

/** A client whose server lives in this process, in a world that the test may change. */
export function joinServer(
  world: ServerWorld | ((connection: Connection) => ServerWorld) = new BookWorld(),
): TestClient {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const [reader, writer] = [new StreamMessageReader(toServer), new StreamMessageWriter(toClient)];
  const connection = createConnection(reader, writer, gateMessages());
  connect(connection, typeof world === "function" ? world(connection) : world);
  return new TestClient(new StreamMessageReader(toClient), new StreamMessageWriter(toServer));
}
