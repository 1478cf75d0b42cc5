/** The open documents as the client edits them. Edits are only noted; the service takes the text when it is asked. */
import type { Connection, Position, TextDocumentContentChangeEvent } from "vscode-languageserver";
import { LineEditor } from "../../grammar/line-editor.ts";
import { type Parse, parse } from "../../grammar/parse.ts";

/** What is told of documents. */
export interface DocumentEvents {
  /** A document was opened or edited; its text may be taken now or later. */
  changed(uri: string): void;
  closed(uri: string): void;
}

interface OpenDocument {
  version: number;
  readonly editor: LineEditor;
}

/** How a client's column in a line is counted in UTF-16 code units. */
export type ReadColumn = (lineText: string, character: number) => number;

/** Documents by address. */
export class Documents {
  readonly #open = new Map<string, OpenDocument>();
  readonly #changed = new Set<string>();
  readonly #take: (uri: string, version: number, parse: Parse) => void;
  /** Set once the client has said how it counts. */
  readColumn: ReadColumn = (_, character) => character;

  /** `take` is given a document's text when `settle` is called. */
  constructor(take: (uri: string, version: number, parse: Parse) => void) {
    this.#take = take;
  }

  /** Follows what the client does to its documents. */
  listen(connection: Connection, events: DocumentEvents): void {
    connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
      this.#open.set(uri, { version, editor: new LineEditor(parse(text)) });
      this.#note(uri, events);
    });
    connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
      const document = this.#open.get(uri);
      if (document === undefined) return;
      document.version = version;
      for (const change of contentChanges) this.#edit(document, change);
      this.#note(uri, events);
    });
    connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
      this.#open.delete(uri);
      this.#changed.delete(uri);
      events.closed(uri);
    });
  }

  /** Hands over every text that changed since it was last taken. */
  settle(): void {
    for (const uri of this.#changed) {
      this.#changed.delete(uri);
      const document = this.#open.get(uri);
      if (document === undefined) continue;
      this.#take(uri, document.version, document.editor.parse());
    }
  }

  /** A line of an open document as the client has it; undefined where there is none. */
  lineText(uri: string, line: number): string | undefined {
    return this.#open.get(uri)?.editor.lineText(line);
  }

  #note(uri: string, events: DocumentEvents): void {
    this.#changed.add(uri);
    events.changed(uri);
  }

  #edit({ editor }: OpenDocument, change: TextDocumentContentChangeEvent): void {
    if (!("range" in change)) {
      editor.replaceAll(change.text);
      return;
    }
    // Each range is meant in the text as the changes before it left it.
    const place = ({ line, character }: Position): Position => ({
      line,
      character: this.readColumn(editor.lineText(line) ?? "", character),
    });
    editor.replace(place(change.range.start), place(change.range.end), change.text);
  }
}
