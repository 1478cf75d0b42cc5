/**
 * The grammar: one small rule for a line. Which words a line may hold is the vocabulary's business, read by
 * `read-items.ts`; the rule only tells the stamp, the words and the comment apart. Embedded actions, no tree kept.
 */
import { EmbeddedActionsParser, type IToken } from "chevrotain";
import { CalendarDate, ClockTime, Comment, LINE_LEXER, Piece, TOKENS } from "./tokens.ts";

/** A line split into its stamp, its words and its comment. */
export interface LineParts {
  date: IToken | undefined;
  clock: IToken | undefined;
  words: IToken[];
  comment: IToken | undefined;
}

class LineParser extends EmbeddedActionsParser {
  constructor() {
    super(TOKENS, { maxLookahead: 1, recoveryEnabled: false, skipValidations: true });
    this.performSelfAnalysis();
  }

  readonly line = this.RULE("line", (): LineParts => {
    const date = this.OPTION(() => this.CONSUME(CalendarDate));
    const clock = this.OPTION1(() => this.CONSUME(ClockTime));
    const words: IToken[] = [];
    this.MANY(() => {
      words.push(this.CONSUME(Piece));
    });
    const comment = this.OPTION2(() => this.CONSUME(Comment));
    return { date, clock, words, comment };
  });
}

let parser: LineParser | undefined;

/** Splits one line, given without its line end. Total: every string splits. */
export function splitLine(raw: string): LineParts {
  parser ??= new LineParser();
  parser.input = LINE_LEXER.tokenize(raw).tokens;
  return parser.line();
}

/** The grammar in Chevrotain's serialized form, for the railroad page of the docs. */
export function serializedGrammar(): unknown {
  parser ??= new LineParser();
  return parser.getSerializedGastProductions();
}
