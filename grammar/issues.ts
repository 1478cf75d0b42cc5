/** What can be wrong with the reading of a line. Facts only: the words for the captain are in the checks' catalog. */
import type { ByHowMuch } from "./by-how-much.ts";
import type { Span } from "./journal.ts";
import type { Dimension } from "./units.ts";
import type { LinePlace, ValueType } from "./vocabulary.ts";

/** Why a line could not be read as it stands. */
export type SyntaxReason =
  | {
      readonly reason: "missing-slot";
      readonly verb: string;
      readonly label: string;
      readonly before: string;
    }
  | {
      readonly reason: "missing-value";
      readonly word: string;
      readonly wants: ValueType;
      readonly found: string;
    }
  | {
      readonly reason: "missing-item";
      readonly verb: string;
      readonly needs: readonly string[];
      readonly example: string;
    }
  | { readonly reason: "nothing-happened" }
  | { readonly reason: "stamp-in-property"; readonly verb: string }
  | { readonly reason: "too-long"; readonly length: number; readonly longest: number }
  | { readonly reason: "open-quote" }
  | { readonly reason: "stray-text"; readonly text: string; readonly verb: string }
  | { readonly reason: "no-range"; readonly word: string }
  | { readonly reason: "exclusive"; readonly word: string; readonly other: string }
  | { readonly reason: "repeated"; readonly word: string }
  | { readonly reason: "bad-clock"; readonly text: string }
  | { readonly reason: "bad-date"; readonly text: string }
  | { readonly reason: "bad-position"; readonly text: string }
  | { readonly reason: "bad-bearing"; readonly text: string }
  | { readonly reason: "bad-count"; readonly text: string }
  | { readonly reason: "out-of-place"; readonly verb: string; readonly belongs: LinePlace }
  | ({ readonly reason: "by-how-much"; readonly word: string } & ByHowMuch)
  | { readonly reason: "which-measure"; readonly number: string; readonly words: readonly string[] };

/** At most one issue is reported for a line. */
export type Issue =
  | ({ readonly code: "syntax"; readonly span: Span } & SyntaxReason)
  | {
      readonly code: "unknown-word";
      readonly span: Span;
      readonly role: "verb" | "item" | "unit";
      readonly word: string;
      readonly verb: string;
      readonly candidates: readonly string[];
    }
  | {
      readonly code: "unit-mismatch";
      readonly span: Span;
      readonly word: string;
      readonly unit: string;
      readonly wants: Dimension;
    }
  | {
      readonly code: "number-format";
      readonly span: Span;
      readonly text: string;
      readonly mend: string | null;
    };
