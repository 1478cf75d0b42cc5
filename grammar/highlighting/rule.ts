/** A rule of a TextMate grammar, and the pieces of expressions that rules are put together from. */

/** A rule as it stands in the file. */
export interface Rule {
  readonly name?: string;
  readonly scopeName?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<number, Rule>>;
  readonly beginCaptures?: Readonly<Record<number, Rule>>;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
  readonly repository?: Readonly<Record<string, Rule>>;
}

/** Where a word starts: at the line's start or after a blank. */
export const START = String.raw`(?<!\S)`;
/** Where a word stops: before a blank, a separating comma or the line's end. */
export const END = String.raw`(?=,?(?!\S))`;
export const DATE = String.raw`\d{4}-\d{2}-\d{2}`;
export const TIME = String.raw`~?\d{1,2}:\d{2}(?::\d{2})?(?:[+-]\d{2}:\d{2}|Z)?`;
/** A name, bare or in quotes. */
export const NAME = String.raw`(?:"(?:[^"]|"")*"|[^\s"#]\S*?)${END}`;

/** A rule that gives what it matches a scope. */
export function named(name: string, match: string): Rule {
  return { name, match };
}

/** An expression for any of the words, in any case; longer ones first, so that none hides another. */
export function eitherOf(words: readonly string[]): string {
  const sorted = [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?i:${sorted.map((word) => word.replaceAll(/[.*+?^$|(){}[\]\\/]/gu, String.raw`\$&`)).join("|")})`;
}
