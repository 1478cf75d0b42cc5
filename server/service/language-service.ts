/**
 * Every feature of the language on one screen. Pure: texts and books go in, plain LSP data comes out; files, clock,
 * settings and connection belong to the caller.
 */
import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  Diagnostic,
  DocumentHighlight,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  LocationLink,
  Position,
  Range,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SignatureHelp,
  TextEdit,
  WorkspaceSymbol,
} from "vscode-languageserver-types";
import type { Parse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../analysis/depth-memo.ts";
import type { SeverityChoices } from "../checks/run-checks.ts";
import type { BookFile } from "../model/gear-lines.ts";
import { NO_THRESHOLDS, type ThresholdWords } from "../model/thresholds.ts";
import { tokensWithMark, withMark, withoutMark } from "./byte-order-mark.ts";
import { codeActions, resolveCodeAction } from "./code-actions.ts";
import { codeLenses, resolveCodeLens } from "./code-lens.ts";
import { completion } from "./completion.ts";
import { resolveCompletion } from "./completion-docs.ts";
import { definition } from "./definition.ts";
import { diagnostics } from "./diagnostics.ts";
import { documentLinks } from "./document-links.ts";
import { documentSymbols } from "./document-symbols.ts";
import { type FileRename, fileRenameEdits } from "./file-renames.ts";
import { foldingRanges } from "./folding-ranges.ts";
import { formatting, rangesFormatting } from "./formatting.ts";
import { highlights } from "./highlights.ts";
import { hover } from "./hover.ts";
import { type HintChoice, inlayHints, resolveInlayHint } from "./inlay-hints.ts";
import { letOutMarkdownAt } from "./let-out-command.ts";
import type { Journals } from "./names/journals.ts";
import { type ClosedFiles, openJournals } from "./names/open-journals.ts";
import { onTypeFormatting } from "./on-type-formatting.ts";
import { references } from "./references.ts";
import { prepareRename, type Refusal, type Renamable, type Renaming, rename } from "./rename.ts";
import { selectionRanges } from "./selection-ranges.ts";
import { semanticTokens } from "./semantic-tokens.ts";
import { signatureHelp } from "./signature-help.ts";
import { readAgain, Snapshot } from "./snapshot.ts";
import { TokenResults } from "./token-changes.ts";
import { workspaceSymbols } from "./workspace-symbols.ts";

/** What the service asks of the world around it. */
export interface ServiceHost {
  /** Gear books within reach of a document, nearest first, itself left out. */
  booksNear(uri: string): readonly BookFile[];
  /** Severities the user chose. */
  severities(): SeverityChoices;
  /** The files of the workspace that are not open; without them, names are followed through open documents and books. */
  readonly closedFiles?: ClosedFiles;
  /** Thresholds the user chose for boats whose book does not state them. */
  thresholds?(): ThresholdWords;
  /** The clock, UTC ms, where a feature may know it. */
  now?(): number;
  /** The day it is, `2031-06-21`; nothing is said of days to come without it. */
  readonly today?: () => string;
}

/** An action that needs no second question. */
function withEdits(document: Snapshot, action: CodeAction): CodeAction {
  const { data: _, ...whole } = resolveCodeAction(document, action);
  return whole;
}

/** The document that something answered before is about. */
function uriOf({ data }: { data?: unknown }): string {
  const isOurs = typeof data === "object" && data !== null && "uri" in data && typeof data.uri === "string";
  return isOurs ? String(data.uri) : "";
}

/** The language service over a set of open documents. */
export class LanguageService {
  readonly #host: ServiceHost;
  readonly #memo = createDepthMemo();
  readonly #open = new Map<string, Snapshot>();
  readonly #tokens = new TokenResults();

  constructor(host: ServiceHost) {
    this.#host = host;
  }

  /** Takes a document's text at a version; unchanged lines are kept from the version before. */
  update(uri: string, version: number, text: string): Snapshot {
    return this.take(uri, version, readAgain(this.#open.get(uri), text));
  }

  /** Takes a document that was read already. */
  take(uri: string, version: number, parse: Parse): Snapshot {
    return this.#take({ uri, version, parse });
  }

  /** Computes a document anew with the books and settings as they are now. */
  refresh(uri: string): Snapshot | undefined {
    const known = this.#open.get(uri);
    if (known === undefined) return undefined;
    return this.#take(known);
  }

  #take(file: Pick<Snapshot, "uri" | "version" | "parse">): Snapshot {
    const { uri } = file;
    const chosen = {
      severities: this.#host.severities(),
      thresholds: this.#host.thresholds?.() ?? NO_THRESHOLDS,
      today: this.#host.today?.(),
    };
    const snapshot = new Snapshot(file, this.booksNear(uri), this.#memo, chosen);
    this.#open.set(uri, snapshot);
    return snapshot;
  }

  close(uri: string): void {
    this.#tokens.forget(uri);
    this.#open.delete(uri);
  }

  snapshot(uri: string): Snapshot | undefined {
    return this.#open.get(uri);
  }

  openUris(): string[] {
    return [...this.#open.keys()];
  }

  /** Gear books within reach, nearest first; an open one as it stands in the editor, not as it was saved. */
  booksNear(uri: string): readonly BookFile[] {
    return this.#host.booksNear(uri).map((book) => {
      const open = this.#open.get(book.uri);
      return open === undefined ? book : { uri: book.uri, parse: open.parse };
    });
  }

  diagnostics = (uri: string): Diagnostic[] => this.#answer(uri, [], diagnostics);
  hover = (uri: string, at: Position): Hover | null =>
    this.#answer(uri, null, (document, move) => hover(document, move(at)));
  inlayHints = (uri: string, range: Range, choice?: HintChoice): InlayHint[] =>
    this.#answer(uri, [], (document) => inlayHints(document, range, choice));
  /** A hint with its tooltip. */
  resolveInlayHint = (hint: InlayHint): InlayHint => {
    const document = this.#open.get(uriOf(hint));
    return document === undefined ? hint : resolveInlayHint(document, hint);
  };
  /** Lenses over the trips; `commands` are those that the client has. */
  codeLenses = (uri: string, commands: ReadonlySet<string>): CodeLens[] =>
    this.#answer(uri, [], (document) => codeLenses(document, commands));
  /** A lens with its words. */
  resolveCodeLens = (lens: CodeLens): CodeLens => {
    const document = this.#open.get(uriOf(lens));
    return document === undefined ? lens : resolveCodeLens(document, lens);
  };
  documentSymbols = (uri: string): DocumentSymbol[] => this.#answer(uri, [], documentSymbols);
  foldingRanges = (uri: string): FoldingRange[] => this.#answer(uri, [], foldingRanges);
  completion = (uri: string, at: Position): CompletionItem[] =>
    this.#answer(uri, [], (document, move) => completion(document, move(at), this.#host.now?.()));
  /** An item of a completion with its documentation. */
  resolveCompletion = (item: CompletionItem): CompletionItem => {
    const document = this.#open.get(uriOf(item));
    return document === undefined ? item : resolveCompletion(document, item);
  };
  formatting = (uri: string, range?: Range): TextEdit[] =>
    this.#answer(uri, [], (document) => formatting(document, range));
  rangesFormatting = (uri: string, ranges: readonly Range[]): TextEdit[] =>
    this.#answer(uri, [], (document) => rangesFormatting(document, ranges));
  /** `isLazy`: edits that may be big are left out, to be asked for when an action is chosen. */
  codeActions = (uri: string, range: Range, only?: readonly string[], isLazy = false): CodeAction[] =>
    this.#answer(uri, [], (document, move) => {
      const actions = codeActions(document, { start: move(range.start), end: move(range.end) }, only);
      return isLazy ? actions : actions.map((action) => withEdits(document, action));
    });
  /** An action with its edits. */
  resolveCodeAction = (action: CodeAction): CodeAction => {
    const made = (document: Snapshot) => resolveCodeAction(document, action).edit;
    const edit = this.#answer(uriOf(action), undefined, made);
    return edit === undefined ? action : { ...action, edit };
  };
  definition = (uri: string, at: Position): LocationLink[] =>
    this.#answer(uri, [], (document, move) => definition(document, move(at)));
  highlights = (uri: string, at: Position): DocumentHighlight[] =>
    this.#inJournals(uri, at, [], (journals, place) => highlights(journals, uri, place));
  references = (uri: string, at: Position, withDefinitions: boolean): Location[] =>
    this.#inJournals(uri, at, [], (journals, place) => references(journals, uri, place, withDefinitions));
  prepareRename = (uri: string, at: Position): Renamable | Refusal | null =>
    this.#inJournals(uri, at, null, (journals, place) => prepareRename(journals, uri, place));
  rename = (uri: string, at: Position, name: string): Renaming | Refusal | null =>
    this.#inJournals(uri, at, null, (journals, place) => rename(journals, uri, place, name));
  fileRenameEdits = (renames: readonly FileRename[]): Renaming => fileRenameEdits(this.#journals(), renames);
  workspaceSymbols = (query: string): WorkspaceSymbol[] => workspaceSymbols(this.#journals(), query);
  documentLinks = (uri: string): DocumentLink[] => this.#answer(uri, [], documentLinks);
  letOutTable = (uri: string, line: number): string | null =>
    this.#answer(uri, null, (document) => letOutMarkdownAt(document, line));
  signatureHelp = (uri: string, at: Position): SignatureHelp | null =>
    this.#answer(uri, null, (document, move) => signatureHelp(document, move(at)));
  selectionRanges = (uri: string, at: readonly Position[]): SelectionRange[] =>
    this.#answer(uri, [], (document, move) => selectionRanges(document, at.map(move)));
  onTypeFormatting = (uri: string, at: Position, typed: string): TextEdit[] =>
    this.#answer(uri, [], (document) => onTypeFormatting(document, at, typed));
  semanticTokens = (uri: string, range?: Range): number[] => {
    const document = this.#open.get(uri);
    if (document === undefined) return [];
    const data = semanticTokens(document, range?.start.line, range?.end.line);
    return document.parse.journal.bom ? tokensWithMark(data) : data;
  };
  allSemanticTokens = (uri: string): SemanticTokens =>
    this.#open.has(uri) ? this.#tokens.full(uri, this.semanticTokens(uri)) : { data: [] };
  /** What changed of them since a result sent before. */
  changedSemanticTokens = (uri: string, since: string): SemanticTokens | SemanticTokensDelta =>
    this.#open.has(uri) ? this.#tokens.delta(uri, since, this.semanticTokens(uri)) : { data: [] };

  #journals(): Journals {
    return openJournals(this.#open, (uri) => this.booksNear(uri), this.#host.closedFiles);
  }

  /** Asks about a name of an open document; what is found in any file has its columns as that file's client has them. */
  #inJournals<T>(uri: string, at: Position, none: T, ask: (journals: Journals, at: Position) => T): T {
    const document = this.#open.get(uri);
    if (document === undefined) return none;
    return ask(this.#journals(), document.parse.journal.bom ? withoutMark(at) : at);
  }

  /** Asks a feature about an open document; a byte order mark is taken out of what goes in and put back after. */
  #answer<T>(uri: string, none: T, ask: (document: Snapshot, move: (at: Position) => Position) => T): T {
    const document = this.#open.get(uri);
    if (document === undefined) return none;
    if (!document.parse.journal.bom) return ask(document, (at) => at);
    return withMark(ask(document, withoutMark), uri);
  }
}
