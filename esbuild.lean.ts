/**
 * Makes the protocol's libraries lighter without changing what they do. They come as compiled modules of the older
 * format, each with its own copy of the compiler's helpers; here all share one. Of the library of types, which is
 * nearly all checking functions that nothing calls, only the parts in use are kept.
 */
import { readFile } from "node:fs/promises";
import type { OnLoadResult, Plugin } from "esbuild";

/** The parts of the library of types that the server or the protocol's library use when they run. */
const TYPES_IN_USE = new Set([
  ...["DocumentUri", "URI", "WorkspaceFolder", "integer", "uinteger"],
  ...["CodeActionKind", "CompletionItemKind", "DiagnosticSeverity", "DocumentHighlightKind"],
  ...["FoldingRangeKind", "InlayHintKind", "InsertTextFormat", "SymbolKind"],
]);

/** What the server does without: notebooks, tokens built by a builder, messages of many parameters. */
const NOT_IN_USE = [
  ...["CellTextDocumentConnection", "NotebookDocuments", "SemanticTokensBuilder", "SemanticTokensDiff"],
  ...["ErrorMessageTracker", "TextDocuments", "LRUCache"],
  ...["SharedArrayReceiverStrategy", "SharedArraySenderStrategy"],
  ...["Request", "Notification"].flatMap((kind) =>
    [2, 3, 4, 5, 6, 7, 8, 9].map((count) => `${kind}Type${count}`),
  ),
  ...["ExecutionSummary", "NotebookCell", "NotebookCellArrayChange", "NotebookDocument"],
].join("|");

/** Parts of the protocol that the server doesn't offer, by the names of their modules and of the feature. */
const NOT_OFFERED: ReadonlyMap<string, string | undefined> = new Map([
  ["callHierarchy", "CallHierarchyFeature"],
  ["colorProvider", undefined],
  ["declaration", undefined],
  ["files", undefined],
  ["implementation", undefined],
  ["inlineCompletion", "InlineCompletionFeature"],
  ["inlineValue", "InlineValueFeature"],
  ["linkedEditingRange", "LinkedEditingRangeFeature"],
  ["moniker", "MonikerFeature"],
  ["notebook", "NotebookSyncFeature"],
  ["showDocument", "ShowDocumentFeature"],
  ["textDocumentContent", "TextDocumentContentFeature"],
  ["typeDefinition", undefined],
  ["typeHierarchy", "TypeHierarchyFeature"],
]);
/** The same where they are asked for or passed on. */
const NOT_OFFERED_NAMES = [...NOT_OFFERED.keys()].join("|");
const PASSED_ON = new RegExp(
  `^Object\\.defineProperty\\(exports, "\\w+", \\{ enumerable: true, get: function \\(\\) \\{ return protocol_(?:${NOT_OFFERED_NAMES})_1\\.\\w+; \\} \\}\\);\n`,
  "gmu",
);
/** What the connection offers for them: a method each, of three lines. */
const NOT_LISTENED_TO = new RegExp(
  `^        on(?:${["Declaration", "TypeDefinition", "Implementation", "DocumentColor", "ColorPresentation"].join("|")}): \\(handler\\) => .*\n.*\n        \\}\\),\n`,
  "gmu",
);

/** What each message says of itself for those that write clients and documents. */
const SAID_OF_MESSAGES = /^ {4}\w+\.(?:capabilities|messageDirection) = messages_1\..*;\n/gmu;

const COMPILED =
  /node_modules[\\/]vscode-(?:jsonrpc|languageserver|languageserver-protocol)[\\/]lib[\\/].*\.js$/;
const TYPES = /node_modules[\\/]vscode-languageserver-types[\\/]lib[\\/].*\.js$/;
const UNUSED_CLASS = new RegExp(
  `^class (${NOT_IN_USE})(?: extends \\w+)? \\{\\n[\\s\\S]*?^\\}\\n(?:exports\\.\\1 = \\1;\\n)?`,
  "gmu",
);
const UNUSED_NAMESPACE = new RegExp(
  `^var (${NOT_IN_USE});\\n\\(function \\(\\1\\) \\{\\n[\\s\\S]*?^\\}\\)\\(\\1 .*\\n`,
  "gmu",
);
const HELPERS = "lean-helpers";

/** The compiler's helpers, written once: accessors that stay live, and what `export *` and `import` become. */
const HELPERS_SOURCE = `
exports.accessor = (to, name, get) => Object.defineProperty(to, name, { enumerable: true, get });
exports.exportStar = (from, to) => {
  for (const name in from)
    if (name !== "default" && !Object.hasOwn(to, name)) exports.accessor(to, name, () => from[name]);
};
exports.importStar = (from) => {
  if (from?.__esModule) return from;
  const all = {};
  for (const name of Object.getOwnPropertyNames(from ?? {}))
    if (name !== "default") exports.accessor(all, name, () => from[name]);
  exports.accessor(all, "default", () => from);
  return all;
};
exports.importDefault = (from) => (from?.__esModule ? from : { default: from });
`;

/** The plugin; what only the server does without stays in for the client. */
export function leanLibraries({ isServer }: { isServer: boolean }): Plugin {
  return {
    name: "lean-libraries",
    setup({ onLoad, onResolve }) {
      onResolve({ filter: new RegExp(`^${HELPERS}$`) }, () => ({ path: HELPERS, namespace: HELPERS }));
      onLoad({ filter: /.*/, namespace: HELPERS }, () => ({ contents: HELPERS_SOURCE, loader: "js" }));
      onLoad({ filter: COMPILED }, ({ path }) => load(path, isServer ? serverModule(path) : leanModule));
      if (isServer) onLoad({ filter: TYPES }, ({ path }) => load(path, serverTypes));
    },
  };
}

async function load(path: string, lean: (source: string) => string): Promise<OnLoadResult> {
  return { contents: lean(await readFile(path, "utf8")), loader: "js" };
}

/** How a module is made lean of which the server needs only part, or nothing but that it is there. */
function serverModule(path: string): (source: string) => string {
  const name = /[\\/](?:protocol\.)?(\w+)\.js$/u.exec(path)?.[1] ?? "";
  if (!NOT_OFFERED.has(name)) return serverPart;
  const feature = path.includes("protocol") ? undefined : NOT_OFFERED.get(name);
  return () => (feature === undefined ? "" : `exports.${feature} = (Base) => Base;`);
}

/** One compiled module with the shared helpers, without what the server does without. */
function serverPart(source: string): string {
  const dropped = [...source.matchAll(/languageserver_types_1\.(\w+)/gu)].find(
    ([, name = ""]) => !TYPES_IN_USE.has(name),
  );
  if (dropped !== undefined) throw new Error(`esbuild.lean.ts drops ${dropped[1]}, which is used`);
  return leanModule(
    [UNUSED_CLASS, UNUSED_NAMESPACE, PASSED_ON, NOT_LISTENED_TO, SAID_OF_MESSAGES].reduce(
      (rest, unused) => rest.replaceAll(unused, ""),
      source,
    ),
  );
}

/** One compiled module with the shared helpers in place of its own. */
function leanModule(source: string): string {
  const lean = source
    .replaceAll(/^var __\w+ = \(this && this\.__\w+\) \|\| [\s\S]*?^\}[)(]*;\n/gmu, "")
    .replaceAll(/^exports\.\w+ = (?:exports\.\w+ = )*void 0;\n/gmu, "")
    // Loading Node's own library of ciphers takes longer than all else of a library; it makes a few random names.
    .replaceAll(/^const crypto_1 = require\("crypto"\);\n/gmu, "")
    .replaceAll(/\bcrypto_1\./gu, 'require("crypto").')
    .replaceAll(
      /^Object\.defineProperty\(exports, ("\w+"), \{ enumerable: true, get: function \(\) \{ return ([\w.]+); \} \}\);$/gmu,
      "lean.accessor(exports, $1, () => $2);",
    )
    .replaceAll(/\b__(exportStar|importStar|importDefault)\(/gu, "lean.$1(");
  return lean.replace(/^("use strict";)?/u, `$1const lean = require("${HELPERS}");`);
}

/** The library of types without its classes, and without the parts that nothing uses. */
function serverTypes(source: string): string {
  return source
    .replaceAll(/^(?:export )?class \w+ \{\n[\s\S]*?^\}\n/gmu, "")
    .replaceAll(
      /^export var (\w+);\n(?:\/\*\*[\s\S]*?\*\/\n)?\(function \(\1\) \{\n[\s\S]*?^\}\)\(\1 \|\| \(\1 = \{\}\)\);\n/gmu,
      (block, name: string) => (TYPES_IN_USE.has(name) ? block : ""),
    );
}
