/**
 * Starts the language server on the transport that the command line names (stdio, a pipe or a process channel).
 * For now it answers only what shows that client and server are joined: the word under the cursor, and a decimal
 * comma.
 */
import {
  createConnection,
  type Diagnostic,
  DiagnosticSeverity,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);

connection.onInitialize(() => ({
  capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental, hoverProvider: true },
  serverInfo: { name: "deepwake" },
}));

connection.onHover(({ textDocument, position }) => {
  const line =
    documents
      .get(textDocument.uri)
      ?.getText()
      .split(/\r\n|\n|\r/)[position.line] ?? "";
  const word = /\S*$/.exec(line.slice(0, position.character))?.[0] ?? "";
  return { contents: `${word}${/^\S*/.exec(line.slice(position.character))?.[0] ?? ""}` };
});

documents.onDidChangeContent(({ document }) => {
  const diagnostics = Array.from(document.getText().matchAll(/\b\d+,\d\b/g), (found): Diagnostic => {
    const start = document.positionAt(found.index);
    const end = document.positionAt(found.index + found[0].length);
    const message = "Write a decimal point, not a comma.";
    return { range: { start, end }, message, code: "decimal-comma", severity: DiagnosticSeverity.Error };
  });
  void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
});

documents.listen(connection);
connection.listen();
