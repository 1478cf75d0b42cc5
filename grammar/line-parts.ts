/** A line split into what it is made of, before any word of it has a meaning. */

/** What a piece looks like; what it means depends on where it stands. */
export type PieceKind = "word" | "text" | "date" | "clock";

/** A word, a text in quotes, a date or a clock time. */
export interface Piece {
  readonly kind: PieceKind;
  /** As it is typed, with its quotes. */
  readonly image: string;
  readonly startOffset: number;
}

/** A line split into its stamp, its words and its comment. */
export interface LineParts {
  readonly date: Piece | undefined;
  readonly clock: Piece | undefined;
  /** Everything between the stamp and the comment. */
  readonly words: readonly Piece[];
  /** With its `#`. */
  readonly comment: string | undefined;
}
