/** Answers what is asked about names: where they are defined and used, and what they are called from now on. */
import {
  type CancellationToken,
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
import type { Desk } from "./desk.ts";

/**
 * Answers requests from the service; `client` gives the client's abilities once they are known. A question about every
 * file is given to `whole`, which asks it when every file was looked at and can be read: a rename must miss none.
 */
export function answerNames(
  connection: Connection,
  service: LanguageService,
  desk: Desk,
  client: () => ClientAbilities,
  whole: <Answer>(question: () => Answer | Promise<Answer>) => Promise<Answer>,
): void {
  const complete =
    <Params, Answer>(question: (params: Params, token?: CancellationToken) => Answer | Promise<Answer>) =>
    (params: Params, token?: CancellationToken): Promise<Answer> =>
      whole(() => question(params, token));
  connection.onDefinition(
    desk.ask("definition", null, ({ textDocument, position }): LocationLink[] | Location[] => {
      const links = service.definition(textDocument.uri, position);
      return client().followsLinks === true ? links : links.map(locationOf);
    }),
  );
  connection.onReferences(
    complete(
      desk.ask("references", [], ({ textDocument, position, context }) =>
        service.references(textDocument.uri, position, context.includeDeclaration),
      ),
    ),
  );
  connection.onDocumentHighlight(
    desk.ask("highlights", [], ({ textDocument, position }) =>
      service.highlights(textDocument.uri, position),
    ),
  );
  connection.onWorkspaceSymbol(
    complete(desk.ask("workspace symbols", [], ({ query }) => service.workspaceSymbols(query))),
  );
  connection.onPrepareRename(
    desk.ask("preparing a rename", null, ({ textDocument, position }) =>
      accepted(service.prepareRename(textDocument.uri, position)),
    ),
  );
  const editOf = (renaming: Renaming): WorkspaceEdit =>
    workspaceEdit(renaming, client().versionsEdits === true);
  connection.onRenameRequest(
    complete(
      desk.ask("renaming", null, ({ textDocument, position, newName }) => {
        const renaming = accepted(service.rename(textDocument.uri, position, newName));
        return renaming === null ? null : editOf(renaming);
      }),
    ),
  );
  connection.workspace.onWillRenameFiles(
    complete(desk.ask("renaming files", null, ({ files }) => editOf(service.fileRenameEdits(files)))),
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
