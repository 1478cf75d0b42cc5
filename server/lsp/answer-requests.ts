/** Puts every feature of the service on its request. */
import type { Connection } from "vscode-languageserver";
import type { LanguageService } from "../service/language-service.ts";
import { LET_OUT_COMMAND } from "../service/let-out-command.ts";
import { APPLY_COMMAND, type ClientAbilities } from "./capabilities.ts";
import type { Desk } from "./desk.ts";
import { actionsFor, completionFor, hoverFor, symbolsFor, withPlainDocs } from "./for-client.ts";
import type { Settings } from "./settings.ts";

/** What answers depend on beside the documents. */
export interface RequestContext {
  /** The settings in use. */
  settings(): Settings;
  /** What the client can do. */
  client(): ClientAbilities;
  /** Has the client apply an edit, which came from it. */
  applyEdit(edit: unknown): void;
}

/** Answers requests from the service. */
export function answerRequests(
  connection: Connection,
  service: LanguageService,
  desk: Desk,
  { settings, client, applyEdit }: RequestContext,
): void {
  connection.onHover(
    desk.ask("hover", null, ({ textDocument, position }) =>
      hoverFor(client(), service.hover(textDocument.uri, position)),
    ),
  );
  connection.onCompletion(
    desk.ask("completion", [], ({ textDocument, position }) =>
      completionFor(client(), service.completion(textDocument.uri, position)),
    ),
  );
  connection.onCompletionResolve((item) =>
    desk.ask("completion documentation", item, () =>
      withPlainDocs(client(), service.resolveCompletion(item)),
    )(undefined),
  );
  connection.onDocumentLinks(
    desk.ask("links", [], ({ textDocument }) => service.documentLinks(textDocument.uri)),
  );
  connection.onDocumentSymbol(
    desk.ask("symbols", [], ({ textDocument: { uri } }) =>
      symbolsFor(client(), uri, service.documentSymbols(uri)),
    ),
  );
  connection.onFoldingRanges(
    desk.ask("folding", [], ({ textDocument }) => service.foldingRanges(textDocument.uri)),
  );
  connection.onDocumentFormatting(
    desk.ask("formatting", [], ({ textDocument }) => service.formatting(textDocument.uri)),
  );
  connection.onDocumentRangeFormatting(
    desk.ask("range formatting", [], ({ textDocument, range }) =>
      service.formatting(textDocument.uri, range),
    ),
  );
  connection.onDocumentRangesFormatting(
    desk.ask("range formatting", [], ({ textDocument, ranges }) =>
      service.rangesFormatting(textDocument.uri, ranges),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    desk.ask("formatting while typing", [], ({ textDocument, position, ch }) =>
      service.onTypeFormatting(textDocument.uri, position, ch),
    ),
  );
  connection.onSelectionRanges(
    desk.ask("selection ranges", [], ({ textDocument, positions }) =>
      service.selectionRanges(textDocument.uri, positions),
    ),
  );
  connection.onSignatureHelp(
    desk.ask("signature help", null, ({ textDocument, position }) =>
      service.signatureHelp(textDocument.uri, position),
    ),
  );
  connection.onCodeAction(
    desk.askLong("code actions", [], ({ textDocument, range, context }) => {
      const isLazy = client().resolvesActions;
      return actionsFor(client(), service.codeActions(textDocument.uri, range, context.only, isLazy));
    }),
  );
  connection.onCodeActionResolve((action) =>
    desk.ask("code action", action, () => service.resolveCodeAction(action))(undefined),
  );
  connection.onExecuteCommand(
    desk.ask("command", null, ({ command, arguments: words }) => {
      const [uri, line]: readonly unknown[] = words ?? [];
      if (command === APPLY_COMMAND) applyEdit(uri);
      if (command !== LET_OUT_COMMAND || typeof uri !== "string") return null;
      return service.letOutTable(uri, Number.isInteger(line) ? Number(line) : 0);
    }),
  );
  connection.languages.inlayHint.on(
    desk.askLong("inlay hints", [], ({ textDocument, range }) =>
      service.inlayHints(textDocument.uri, range, {
        parts: settings().hints,
        isLazy: client().resolvesHints,
      }),
    ),
  );
  connection.languages.inlayHint.resolve((hint) =>
    desk.ask("inlay hint tooltip", hint, () => service.resolveInlayHint(hint))(undefined),
  );
  connection.onCodeLens(
    desk.ask("code lenses", [], ({ textDocument }) =>
      service.codeLenses(textDocument.uri, client().commands),
    ),
  );
  connection.onCodeLensResolve((lens) =>
    desk.ask("code lens", lens, () => service.resolveCodeLens(lens))(undefined),
  );
  connection.languages.semanticTokens.on(
    desk.ask("semantic tokens", { data: [] }, ({ textDocument }) =>
      service.allSemanticTokens(textDocument.uri),
    ),
  );
  connection.languages.semanticTokens.onDelta(
    desk.ask("semantic tokens", { data: [] }, ({ textDocument, previousResultId }) =>
      service.changedSemanticTokens(textDocument.uri, previousResultId),
    ),
  );
  connection.languages.semanticTokens.onRange(
    desk.ask("semantic tokens", { data: [] }, ({ textDocument, range }) => ({
      data: service.semanticTokens(textDocument.uri, range),
    })),
  );
}
