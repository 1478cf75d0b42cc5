/** What completion offers, before it is put at a place of the text. */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import { quote } from "../../grammar/print.ts";
import type { TypedWord } from "./typed-word.ts";

/** One thing that may stand at the cursor. */
export interface Offer {
  /** Shown, and written as it is. */
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly detail: string;
  /** A line as it is typed, shown beside. */
  readonly example?: string;
}

/** A name, in quotes where it needs them. */
export function nameOffer(name: string, detail: string): Offer {
  return { label: /^#|[\s"]/u.test(name) ? quote(name) : name, kind: CompletionItemKind.Value, detail };
}

/** The first of each label. */
export function distinct(offers: readonly Offer[]): Offer[] {
  const seen = new Set<string>();
  return offers.filter(({ label }) => !seen.has(label) && seen.add(label));
}

/** Offers as completion items that replace the typed word, kept in their order; only names where a text is open. */
export function itemsAt(offers: readonly Offer[], line: number, typed: TypedWord): CompletionItem[] {
  const range = { start: { line, character: typed.start }, end: { line, character: typed.stop } };
  const isText = typed.word.startsWith('"');
  // A unit that runs into its number is set off with a blank, and so is a word put right before another.
  const [gap, gapAfter] = [/\d$/u.test(typed.before) ? " " : "", typed.isGlued ? " " : ""];
  const fitting = isText ? offers.filter(({ kind }) => kind === CompletionItemKind.Value) : offers;
  return distinct(fitting).map(({ label, kind, detail, example }, index) => ({
    label,
    kind,
    detail,
    sortText: String(index).padStart(4, "0"),
    filterText: `${isText ? '"' : ""}${label.replaceAll('"', "")}`,
    textEdit: { range, newText: gap + label + gapAfter },
    ...(example === undefined ? {} : { documentation: { kind: "markdown", value: `\`${example}\`` } }),
  }));
}
