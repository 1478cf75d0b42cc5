/**
 * The one place where positions cross between a client that doesn't count in UTF-16 and the service that does. It goes
 * through whole messages: a position belongs to the file whose address stands nearest around it.
 */
import { type Position, PositionEncodingKind } from "vscode-languageserver";
import { fromClient, toClient } from "./position-encoding.ts";

/** A line of a file, without its end; undefined where the file or the line isn't known. */
export type LineText = (uri: string, line: number) => string | undefined;

/** Both directions, for one client. */
export interface Translator {
  /** What a client sent, with columns as the service counts them. */
  incoming<T>(params: T): T;
  /** An answer about a file, with columns as the client counts them. */
  outgoing<T>(answer: T, uri: string | undefined): T;
}

type Column = (line: string, character: number) => number;
type Members = Readonly<Record<string, unknown>>;

/** Members whose keys are the addresses of files. */
const BY_FILE = ["changes", "relatedDocuments"];
/** How many numbers one semantic token is packed into. */
const TOKEN_SIZE = 5;

/** A translator for a way of counting; for UTF-16 it does nothing. */
export function createTranslator(encoding: PositionEncodingKind, lineText: LineText): Translator {
  if (encoding === PositionEncodingKind.UTF16)
    return { incoming: (params) => params, outgoing: (answer) => answer };
  const through = (count: (encoding: PositionEncodingKind, line: string, character: number) => number) =>
    new Walk((line, character) => count(encoding, line, character), lineText);
  const [inward, outward] = [through(fromClient), through(toClient)];
  return {
    incoming: (params) => inward.of(params, undefined) as typeof params,
    outgoing: (answer, uri) => outward.of(answer, uri) as typeof answer,
  };
}

/** The address of the file that a message is about. */
export function fileOf(params: unknown): string | undefined {
  if (!isObject(params)) return undefined;
  const { textDocument, uri } = params;
  if (isObject(textDocument) && typeof textDocument.uri === "string") return textDocument.uri;
  return typeof uri === "string" ? uri : undefined;
}

class Walk {
  readonly #column: Column;
  readonly #lineText: LineText;

  constructor(column: Column, lineText: LineText) {
    this.#column = column;
    this.#lineText = lineText;
  }

  of(value: unknown, around: string | undefined): unknown {
    if (Array.isArray(value)) return value.map((one) => this.of(one, around));
    if (!isObject(value)) return value;
    if (isPosition(value)) return this.#position(value, around);
    const uri = fileOf(value) ?? around;
    if (isTokens(value)) return { ...value, data: this.#tokens(value.data, uri) };
    const members = Object.entries(value).map(([key, member]) => [
      key,
      this.#member(key, member, value, uri),
    ]);
    return { ...Object.fromEntries(members), ...this.#fold(value, uri) };
  }

  #member(key: string, member: unknown, { targetUri }: Members, uri: string | undefined): unknown {
    if (BY_FILE.includes(key) && isObject(member)) {
      const files = Object.entries(member).map(([file, inside]) => [file, this.of(inside, file)]);
      return Object.fromEntries(files);
    }
    const isTarget = typeof targetUri === "string" && key.startsWith("target");
    return this.of(member, isTarget ? targetUri : uri);
  }

  #position({ line, character }: Position, uri: string | undefined): Position {
    return { line, character: this.#count(uri, line, character) };
  }

  #count(uri: string | undefined, line: number, character: number): number {
    const text = uri === undefined ? undefined : this.#lineText(uri, line);
    return text === undefined ? character : this.#column(text, character);
  }

  /** A folding range has its columns beside its lines. */
  #fold(value: Members, uri: string | undefined): Members {
    const { startLine, startCharacter, endLine, endCharacter } = value;
    if (typeof startLine !== "number" || typeof endLine !== "number") return {};
    return {
      ...(typeof startCharacter === "number"
        ? { startCharacter: this.#count(uri, startLine, startCharacter) }
        : {}),
      ...(typeof endCharacter === "number" ? { endCharacter: this.#count(uri, endLine, endCharacter) } : {}),
    };
  }

  /** Tokens are packed as steps from one to the next: they are unpacked, counted and packed again. */
  #tokens(data: readonly number[], uri: string | undefined): number[] {
    const packed: number[] = [];
    let [line, start, startBefore] = [0, 0, 0];
    for (let at = 0; at + TOKEN_SIZE <= data.length; at += TOKEN_SIZE) {
      const [lines = 0, step = 0, length = 0, type = 0, modifiers = 0] = data.slice(at, at + TOKEN_SIZE);
      line += lines;
      start = lines === 0 ? start + step : step;
      const from = this.#count(uri, line, start);
      const to = this.#count(uri, line, start + length);
      packed.push(lines, lines === 0 ? from - startBefore : from, to - from, type, modifiers);
      startBefore = from;
    }
    return packed;
  }
}

function isObject(value: unknown): value is Members {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isPosition(value: Members): value is Members & Position {
  return typeof value.line === "number" && typeof value.character === "number";
}

function isTokens(value: Members): value is Members & { data: number[] } {
  const isPacked = Array.isArray(value.data) && value.data.every((one) => typeof one === "number");
  return isPacked && Object.keys(value).every((key) => key === "data" || key === "resultId");
}
