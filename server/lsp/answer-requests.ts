/** Puts every feature of the service on its request. */
import type { Connection } from "vscode-languageserver";
import type { LanguageService } from "../service/language-service.ts";
import { LET_OUT_COMMAND } from "../service/let-out-command.ts";
import type { ClientAbilities } from "./capabilities.ts";
import type { Guard } from "./guard.ts";
import type { Settings } from "./settings.ts";

/** Answers requests from the service; `settings` gives those in use at the time, `client` what the client can do. */
export function answerRequests(
  connection: Connection,
  service: LanguageService,
  guard: Guard,
  settings: () => Settings,
  client: () => ClientAbilities | undefined,
): void {
  connection.onHover(
    guard.ask("hover", null, ({ textDocument, position }) => service.hover(textDocument.uri, position)),
  );
  connection.onCompletion(
    guard.ask("completion", [], ({ textDocument, position }) =>
      service.completion(textDocument.uri, position),
    ),
  );
  connection.onCompletionResolve((item) =>
    guard.ask("completion documentation", item, () => service.resolveCompletion(item))(undefined),
  );
  connection.onDefinition(
    guard.ask("definition", null, ({ textDocument, position }) =>
      service.definition(textDocument.uri, position),
    ),
  );
  connection.onDocumentSymbol(
    guard.ask("symbols", [], ({ textDocument }) => service.documentSymbols(textDocument.uri)),
  );
  connection.onFoldingRanges(
    guard.ask("folding", [], ({ textDocument }) => service.foldingRanges(textDocument.uri)),
  );
  connection.onDocumentFormatting(
    guard.ask("formatting", [], ({ textDocument }) => service.formatting(textDocument.uri)),
  );
  connection.onDocumentRangeFormatting(
    guard.ask("range formatting", [], ({ textDocument, range }) =>
      service.formatting(textDocument.uri, range),
    ),
  );
  connection.onDocumentRangesFormatting(
    guard.ask("range formatting", [], ({ textDocument, ranges }) =>
      service.rangesFormatting(textDocument.uri, ranges),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    guard.ask("formatting while typing", [], ({ textDocument, position, ch }) =>
      service.onTypeFormatting(textDocument.uri, position, ch),
    ),
  );
  connection.onSelectionRanges(
    guard.ask("selection ranges", [], ({ textDocument, positions }) =>
      service.selectionRanges(textDocument.uri, positions),
    ),
  );
  connection.onSignatureHelp(
    guard.ask("signature help", null, ({ textDocument, position }) =>
      service.signatureHelp(textDocument.uri, position),
    ),
  );
  connection.onCodeAction(
    guard.ask("code actions", [], ({ textDocument, range, context }) =>
      service.codeActions(textDocument.uri, range, context.only, client()?.resolvesActions === true),
    ),
  );
  connection.onCodeActionResolve((action) =>
    guard.ask("code action", action, () => service.resolveCodeAction(action))(undefined),
  );
  connection.onExecuteCommand(
    guard.ask("command", null, ({ command, arguments: words }) => {
      const [uri, line]: readonly unknown[] = words ?? [];
      if (command !== LET_OUT_COMMAND || typeof uri !== "string") return null;
      return service.letOutTable(uri, Number.isInteger(line) ? Number(line) : 0);
    }),
  );
  connection.languages.inlayHint.on(
    guard.ask("inlay hints", [], ({ textDocument, range }) =>
      service.inlayHints(textDocument.uri, range, {
        parts: settings().hints,
        isLazy: client()?.resolvesHints === true,
      }),
    ),
  );
  connection.languages.inlayHint.resolve((hint) =>
    guard.ask("inlay hint tooltip", hint, () => service.resolveInlayHint(hint))(undefined),
  );
  connection.onCodeLens(
    guard.ask("code lenses", [], ({ textDocument }) =>
      service.codeLenses(textDocument.uri, client()?.commands ?? new Set()),
    ),
  );
  connection.onCodeLensResolve((lens) =>
    guard.ask("code lens", lens, () => service.resolveCodeLens(lens))(undefined),
  );
  connection.languages.semanticTokens.on(
    guard.ask("semantic tokens", { data: [] }, ({ textDocument }) =>
      service.allSemanticTokens(textDocument.uri),
    ),
  );
  connection.languages.semanticTokens.onDelta(
    guard.ask("semantic tokens", { data: [] }, ({ textDocument, previousResultId }) =>
      service.changedSemanticTokens(textDocument.uri, previousResultId),
    ),
  );
  connection.languages.semanticTokens.onRange(
    guard.ask("semantic tokens", { data: [] }, ({ textDocument, range }) => ({
      data: service.semanticTokens(textDocument.uri, range),
    })),
  );
}
