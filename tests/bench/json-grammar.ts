import { createToken, EmbeddedActionsParser, type IToken, Lexer } from "chevrotain";

/** The JSON example of the parser library's documentation, with actions that build the value: a peer for our parser. */
const True = createToken({ name: "True", pattern: /true/ });
const False = createToken({ name: "False", pattern: /false/ });
const Null = createToken({ name: "Null", pattern: /null/ });
const LCurly = createToken({ name: "LCurly", pattern: /{/ });
const RCurly = createToken({ name: "RCurly", pattern: /}/ });
const LSquare = createToken({ name: "LSquare", pattern: /\[/ });
const RSquare = createToken({ name: "RSquare", pattern: /]/ });
const Comma = createToken({ name: "Comma", pattern: /,/ });
const Colon = createToken({ name: "Colon", pattern: /:/ });
const Text = createToken({ name: "Text", pattern: /"(?:[^\\"]|\\(?:[bfnrtv"\\/]|u[0-9a-fA-F]{4}))*"/ });
const Digits = createToken({ name: "Digits", pattern: /-?(0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?/ });
const Blank = createToken({ name: "Blank", pattern: /[ \t\n\r]+/, group: Lexer.SKIPPED });
const tokens = [Blank, Digits, Text, LCurly, RCurly, LSquare, RSquare, Comma, Colon, True, False, Null];

class JsonParser extends EmbeddedActionsParser {
  constructor() {
    super(tokens, { recoveryEnabled: true });
    this.performSelfAnalysis();
  }

  readonly json = this.RULE("json", (): unknown => this.SUBRULE(this.value));

  readonly value = this.RULE("value", (): unknown =>
    this.OR([
      { ALT: () => textOf(this.CONSUME(Text)) },
      { ALT: () => Number(this.CONSUME(Digits).image) },
      { ALT: () => this.SUBRULE(this.object) },
      { ALT: () => this.SUBRULE(this.array) },
      { ALT: () => this.constant(True, true) },
      { ALT: () => this.constant(False, false) },
      { ALT: () => this.constant(Null, null) },
    ]),
  );

  readonly object = this.RULE("object", (): Record<string, unknown> => {
    const members: Record<string, unknown> = {};
    this.CONSUME(LCurly);
    this.MANY_SEP({ SEP: Comma, DEF: () => this.SUBRULE(this.member, { ARGS: [members] }) });
    this.CONSUME(RCurly);
    return members;
  });

  readonly member = this.RULE("member", (members: Record<string, unknown>): void => {
    const key = textOf(this.CONSUME(Text));
    this.CONSUME(Colon);
    const value = this.SUBRULE(this.value);
    this.ACTION(() => {
      members[key] = value;
    });
  });

  readonly array = this.RULE("array", (): unknown[] => {
    const entries: unknown[] = [];
    this.CONSUME(LSquare);
    this.MANY_SEP({
      SEP: Comma,
      DEF: () => {
        entries.push(this.SUBRULE(this.value));
      },
    });
    this.CONSUME(RSquare);
    return entries;
  });

  private constant<T>(token: typeof True, value: T): T {
    this.CONSUME(token);
    return value;
  }
}

function textOf(token: IToken): string {
  const { image } = token;
  return image.includes("\\") ? JSON.parse(image) : image.slice(1, -1);
}

/** Makes a function that parses JSON with that grammar and throws at the first error. */
export function makeJsonParser(): (text: string) => unknown {
  const lexer = new Lexer(tokens, { positionTracking: "full" });
  const parser = new JsonParser();
  return (text) => {
    parser.input = lexer.tokenize(text).tokens;
    const value = parser.json();
    if (parser.errors[0]) throw parser.errors[0];
    parser.input = [];
    return value;
  };
}
