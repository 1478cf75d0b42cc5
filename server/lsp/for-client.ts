/** Answers in the shapes that a client understands, where it lacks an ability that it may lack. */
import {
  type CodeAction,
  type Command,
  type CompletionItem,
  type Diagnostic,
  type DocumentSymbol,
  type Hover,
  InsertTextFormat,
  type MarkupContent,
  type SymbolInformation,
} from "vscode-languageserver";
import { APPLY_COMMAND, type ClientAbilities } from "./capabilities.ts";
import { plainText } from "./plain-text.ts";

/** A hover; without markdown as plain text. */
export function hoverFor(client: ClientAbilities, hover: Hover | null): Hover | null {
  if (client.hoversMarkdown || hover === null || !isMarkup(hover.contents)) return hover;
  return { ...hover, contents: { kind: "plaintext", value: plainText(hover.contents.value) } };
}

/** Completion items; without snippets and without markdown as plain text. */
export function completionFor(client: ClientAbilities, items: readonly CompletionItem[]): CompletionItem[] {
  return items.map((item) => withPlainDocs(client, client.fillsSnippets ? item : withoutSnippet(item)));
}

/** Symbols as a tree, or one after another with the name of the one around each. */
export function symbolsFor(
  client: ClientAbilities,
  uri: string,
  symbols: readonly DocumentSymbol[],
): DocumentSymbol[] | SymbolInformation[] {
  return client.nestsSymbols ? [...symbols] : symbols.flatMap((symbol) => flat(uri, symbol, undefined));
}

/** Code actions, or commands that apply their edits when the client sends them back. */
export function actionsFor(
  client: ClientAbilities,
  actions: readonly CodeAction[],
): (CodeAction | Command)[] {
  if (client.takesActions) return [...actions];
  if (!client.appliesEdits) return [];
  return actions.flatMap(({ title, edit, command }) => {
    if (edit !== undefined) return [{ title, command: APPLY_COMMAND, arguments: [edit] }];
    return command === undefined ? [] : [command];
  });
}

/** Diagnostics; where related places aren't shown, their words follow the message. */
export function diagnosticsFor(client: ClientAbilities, diagnostics: readonly Diagnostic[]): Diagnostic[] {
  if (client.relatesPlaces) return [...diagnostics];
  return diagnostics.map(({ relatedInformation, ...diagnostic }) => {
    const related = (relatedInformation ?? []).map(
      ({ message, location }) => `${message} (line ${location.range.start.line + 1})`,
    );
    return { ...diagnostic, message: [diagnostic.message, ...related].join("\n") };
  });
}

function isMarkup(content: unknown): content is MarkupContent {
  return typeof content === "object" && content !== null && "kind" in content;
}

/** An item with its documentation; without markdown as plain text. */
export function withPlainDocs(client: ClientAbilities, item: CompletionItem): CompletionItem {
  if (client.completesMarkdown || !isMarkup(item.documentation)) return item;
  return { ...item, documentation: { kind: "plaintext", value: plainText(item.documentation.value) } };
}

function withoutSnippet(item: CompletionItem): CompletionItem {
  if (item.insertTextFormat !== InsertTextFormat.Snippet) return item;
  const { insertTextFormat: _, textEdit, insertText, ...rest } = item;
  return {
    ...rest,
    ...(insertText === undefined ? {} : { insertText: filled(insertText) }),
    ...(textEdit === undefined ? {} : { textEdit: { ...textEdit, newText: filled(textEdit.newText) } }),
  };
}

/** Places of a snippet, with a choice, a suggestion or nothing, and escaped signs. */
const SNIPPET_PARTS =
  /\\([$}\\,|])|\$\{\d+\|((?:\\.|[^,|\\])*)[^}]*\|\}|\$\{\d+:((?:\\.|[^}\\])*)\}|\$(?:\d+|\{\d+\})/gu;

/** A snippet with what its places suggest. */
function filled(snippet: string): string {
  return snippet.replaceAll(
    SNIPPET_PARTS,
    (_, escaped?: string, choice?: string, suggested?: string) => escaped ?? choice ?? suggested ?? "",
  );
}

function flat(uri: string, symbol: DocumentSymbol, around: string | undefined): SymbolInformation[] {
  const { name, kind, range, children = [] } = symbol;
  const container = around === undefined ? {} : { containerName: around };
  const own: SymbolInformation = { name, kind, location: { uri, range }, ...container };
  return [own, ...children.flatMap((child) => flat(uri, child, name))];
}
