/** Questions that an editor asks while somebody types. */
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Random } from "../../bench/random.ts";

/** A request. */
export interface Question {
  readonly method: string;
  readonly params: object;
}

/** Asked of a place. */
const OF_A_PLACE = [
  "hover",
  "completion",
  "definition",
  "references",
  "documentHighlight",
  "signatureHelp",
  "prepareRename",
];
/** Asked of a whole document. */
const OF_A_DOCUMENT = [
  "documentSymbol",
  "foldingRange",
  "semanticTokens/full",
  "diagnostic",
  "documentLink",
  "codeLens",
];

/** A question about a document, at any place. */
export function randomQuestion(random: Random, document: TextDocument): Question {
  const textDocument = { uri: document.uri };
  const position = document.positionAt(Math.floor(random.next() * document.getText().length));
  const range = { start: position, end: document.positionAt(document.getText().length) };
  const ask = (name: string, params: object): Question => ({
    method: `textDocument/${name}`,
    params: { textDocument, ...params },
  });
  switch (random.pick(["place", "place", "document", "hints", "actions", "format"])) {
    case "place":
      return ask(random.pick(OF_A_PLACE), { position, context: { includeDeclaration: true } });
    case "document":
      return ask(random.pick(OF_A_DOCUMENT), {});
    case "hints":
      return ask("inlayHint", { range });
    case "actions":
      return ask("codeAction", { range, context: { diagnostics: [] } });
    default:
      return ask("formatting", { options: { tabSize: 2, insertSpaces: true } });
  }
}
