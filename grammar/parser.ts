/**
 * The grammar: one small rule for a line. Which words a line may hold is the vocabulary's business, read by
 * `read-items.ts`; the rule only tells the stamp, the words and the comment apart. Embedded actions, no tree kept.
 */
import { EmbeddedActionsParser, type IToken } from "chevrotain";
import type { LineParts, Piece } from "./line-parts.ts";
import {
  Piece as AnyPiece,
  CalendarDate,
  ClockTime,
  Comment,
  kindOfToken,
  LINE_LEXER,
  TOKENS,
} from "./tokens.ts";

class LineParser extends EmbeddedActionsParser {
  constructor() {
    super(TOKENS, { maxLookahead: 1, recoveryEnabled: false, skipValidations: true });
    this.performSelfAnalysis();
  }

  readonly line = this.RULE("line", (): LineParts => {
    const date = this.OPTION(() => this.CONSUME(CalendarDate));
    const clock = this.OPTION1(() => this.CONSUME(ClockTime));
    const words: Piece[] = [];
    this.MANY(() => {
      words.push(pieceOf(this.CONSUME(AnyPiece)));
    });
    const comment = this.OPTION2(() => this.CONSUME(Comment));
    return {
      date: date && pieceOf(date),
      clock: clock && pieceOf(clock),
      words,
      comment: comment?.image,
    };
  });
}

function pieceOf(token: IToken): Piece {
  return { kind: kindOfToken(token.tokenType), image: token.image, startOffset: token.startOffset };
}

let parser: LineParser | undefined;

/** Splits one line, given without its line end, by the grammar. Total: every string splits. */
export function parseLine(raw: string): LineParts {
  parser ??= new LineParser();
  parser.input = LINE_LEXER.tokenize(raw).tokens;
  return parser.line();
}

/** The grammar in Chevrotain's serialized form, for the railroad page of the docs. */
export function serializedGrammar(): unknown {
  parser ??= new LineParser();
  return parser.getSerializedGastProductions();
}
