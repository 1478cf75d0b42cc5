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

/** Offers as completion items that replace the typed word, kept in their order. */
export function itemsAt(offers: readonly Offer[], line: number, typed: TypedWord): CompletionItem[] {
  const range = { start: { line, character: typed.start }, end: { line, character: typed.stop } };
  // A unit that runs into its number is set off with a blank.
  const gap = /\d$/u.test(typed.before) ? " " : "";
  return distinct(offers).map(({ label, kind, detail, example }, index) => ({
    label,
    kind,
    detail,
    sortText: String(index).padStart(4, "0"),
    filterText: typed.word.startsWith('"') ? label : label.replaceAll('"', ""),
    textEdit: { range, newText: gap + label },
    ...(example === undefined ? {} : { documentation: { kind: "markdown", value: `\`${example}\`` } }),
  }));
}
