/** What completion offers, before it is put at a place of the text. */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import { quote } from "../../grammar/print.ts";
import type { LinePlace, SlotRow } from "../../grammar/vocabulary.ts";
import type { TypedWord } from "./typed-word.ts";

/** One thing that may stand at the cursor. */
export interface Offer {
  /** Shown, and written as it is. */
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly detail: string;
  /** What is written, where it is more than the label. */
  readonly insert?: string;
  /** What its words are about, looked up when they are asked for. */
  readonly about?: OfferTopic;
}

/** What an offer's documentation is about. */
export type OfferTopic =
  | { readonly of: "verb"; readonly place: LinePlace; readonly verb: string }
  | { readonly of: "item"; readonly place: LinePlace; readonly verb: string; readonly word: string }
  | { readonly of: "name"; readonly kind: SlotRow["of"]; readonly name: string };

/** What a completion item carries so that its documentation can be made later. */
export type OfferData = OfferTopic & { readonly uri: string; readonly line: number };

/** A name, in quotes where it needs them; with the kind of name it is where there is more to be said of it. */
export function nameOffer(name: string, detail: string, kind?: SlotRow["of"]): Offer {
  const label = /^#|[\s"]/u.test(name) ? quote(name) : name;
  const offer = { label, kind: CompletionItemKind.Value, detail };
  return kind === undefined ? offer : { ...offer, about: { of: "name", kind, name } };
}

/** The first of each label. */
export function distinct(offers: readonly Offer[]): Offer[] {
  const seen = new Set<string>();
  return offers.filter(({ label }) => !seen.has(label) && seen.add(label));
}

/** Offers as completion items that replace the typed word, kept in their order; only names where a text is open. */
export function itemsAt(
  offers: readonly Offer[],
  { uri, line }: { uri: string; line: number },
  typed: TypedWord,
): CompletionItem[] {
  const range = { start: { line, character: typed.start }, end: { line, character: typed.stop } };
  const isText = typed.word.startsWith('"');
  // A unit that runs into its number is set off with a blank, and so is a word put right before another.
  const [gap, gapAfter] = [/\d$/u.test(typed.before) ? " " : "", typed.isGlued ? " " : ""];
  const fitting = isText ? offers.filter(({ kind }) => kind === CompletionItemKind.Value) : offers;
  return distinct(fitting).map(({ label, kind, detail, insert, about }, index) => ({
    label,
    kind,
    detail,
    sortText: String(index).padStart(4, "0"),
    filterText: `${isText ? '"' : ""}${label.replaceAll('"', "")}`,
    textEdit: { range, newText: gap + (insert ?? label) + gapAfter },
    ...(about === undefined ? {} : { data: { ...about, uri, line } satisfies OfferData }),
  }));
}
