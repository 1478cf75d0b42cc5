/** Files for a server that has no disk, or whose workspace is on none: read through the editor, never written. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type {
  FileParams,
  FolderEntry,
  LIST_FOLDER as ListFolder,
  READ_FILE as ReadFile,
} from "../../server/lsp/protocol.ts";

const LIST_FOLDER: typeof ListFolder = "deepwake/listFolder";
const READ_FILE: typeof ReadFile = "deepwake/readFile";

/** Answers the server's requests for files. */
export function answerFileRequests(client: BaseLanguageClient): vscode.Disposable[] {
  return [
    client.onRequest(LIST_FOLDER, ({ uri }: FileParams) =>
      orNull(() => listFolder(client, client.protocol2CodeConverter.asUri(uri))),
    ),
    client.onRequest(READ_FILE, ({ uri }: FileParams) =>
      orNull(() => readFile(client.protocol2CodeConverter.asUri(uri))),
    ),
  ];
}

async function listFolder(client: BaseLanguageClient, folder: vscode.Uri): Promise<FolderEntry[]> {
  const entries = await vscode.workspace.fs.readDirectory(folder);
  return entries.map(([name, type]) => ({
    name,
    uri: client.code2ProtocolConverter.asUri(vscode.Uri.joinPath(folder, name)),
    isFile: (type & vscode.FileType.File) !== 0,
  }));
}

/** Strictly UTF-8 text; anything else is no book. */
async function readFile(uri: vscode.Uri): Promise<string | null> {
  const bytes = await vscode.workspace.fs.readFile(uri);
  const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  return text.includes("\0") ? null : text;
}

/** What can't be listed or read is null to the server. */
async function orNull<T>(ask: () => Promise<T>): Promise<T | null> {
  try {
    return await ask();
  } catch {
    return null;
  }
}
