/** Answers what is asked about names: where they are defined and used, and what they are called from now on. */
import {
  type Connection,
  type Location,
  type LocationLink,
  LSPErrorCodes,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { LanguageService } from "../service/language-service.ts";
import { type Refusal, type Renaming, workspaceEdit } from "../service/rename.ts";
import type { ClientAbilities } from "./capabilities.ts";
import type { Guard } from "./guard.ts";

/** Answers requests from the service; `client` gives the client's abilities once they are known. */
export function answerNames(
  connection: Connection,
  service: LanguageService,
  guard: Guard,
  client: () => ClientAbilities | undefined,
): void {
  connection.onDefinition(
    guard.ask("definition", null, ({ textDocument, position }): LocationLink[] | Location[] => {
      const links = service.definition(textDocument.uri, position);
      return client()?.followsLinks === true ? links : links.map(locationOf);
    }),
  );
  connection.onReferences(
    guard.ask("references", [], ({ textDocument, position, context }) =>
      service.references(textDocument.uri, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(
    guard.ask("highlights", [], ({ textDocument, position }) =>
      service.highlights(textDocument.uri, position),
    ),
  );
  connection.onWorkspaceSymbol(
    guard.ask("workspace symbols", [], ({ query }) => service.workspaceSymbols(query)),
  );
  connection.onPrepareRename(
    guard.ask("preparing a rename", null, ({ textDocument, position }) =>
      accepted(service.prepareRename(textDocument.uri, position)),
    ),
  );
  const editOf = (renaming: Renaming): WorkspaceEdit =>
    workspaceEdit(renaming, client()?.versionsEdits === true);
  connection.onRenameRequest(
    guard.ask("renaming", null, ({ textDocument, position, newName }) => {
      const renaming = accepted(service.rename(textDocument.uri, position, newName));
      return renaming === null ? null : editOf(renaming);
    }),
  );
  connection.workspace.onWillRenameFiles(
    guard.ask("renaming files", null, ({ files }) => editOf(service.fileRenameEdits(files))),
  );
}

/** An answer, or the captain's reason why there is none. */
function accepted<T extends object>(answer: T | Refusal | null): T | null {
  if (answer !== null && "refused" in answer)
    throw new ResponseError(LSPErrorCodes.RequestFailed, answer.refused);
  return answer;
}

function locationOf({ targetUri, targetSelectionRange }: LocationLink): Location {
  return { uri: targetUri, range: targetSelectionRange };
}
