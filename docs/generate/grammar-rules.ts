/** The grammar rule and the tokens in EBNF, from the parser itself. */
import { serializedGrammar } from "../../grammar/parser.ts";
import { Blank, Piece, Space, TOKENS } from "../../grammar/tokens.ts";

/** The part of a serialized grammar that this language's one rule uses. */
interface Production {
  readonly type: string;
  readonly name?: string;
  readonly definition?: readonly Production[];
}

/** The rule and the tokens. A token's expression is the one the lexer runs. */
export function grammarRules(): string {
  const rules = (serializedGrammar() as readonly Production[]).map(
    (rule) => `${rule.name ?? ""} = ${sequence(rule.definition)} ;`,
  );
  const pieces = TOKENS.filter((token) => token.CATEGORIES?.includes(Piece)).map((token) => token.name);
  const tokens = TOKENS.filter((token) => token !== Piece).map(
    (token) =>
      `${token.name.padEnd(12)} = ${expressionOf(token.PATTERN)}${token === Blank || token === Space ? "  (between the others)" : ""}`,
  );
  return [
    "```ebnf",
    ...rules,
    `${Piece.name} = ${pieces.join(" | ")} ;`,
    "```",
    "",
    "```text",
    ...tokens,
    "```",
  ].join("\n");
}

function sequence(productions: readonly Production[] | undefined): string {
  return (productions ?? []).map(write).join(" , ");
}

function write(production: Production): string {
  const inner = sequence(production.definition);
  switch (production.type) {
    case "Terminal":
    case "NonTerminal":
      return production.name ?? "";
    case "Option":
      return `[ ${inner} ]`;
    case "Repetition":
      return `{ ${inner} }`;
    case "RepetitionMandatory":
      return `${inner} , { ${inner} }`;
    case "Alternation":
      return (production.definition ?? []).map((one) => sequence(one.definition)).join(" | ");
    default:
      throw new Error(`a ${production.type} has no form here`);
  }
}

function expressionOf(pattern: unknown): string {
  if (!(pattern instanceof RegExp)) throw new Error("a token without an expression");
  return pattern.source;
}
