/** How clients count the columns of a line: UTF-16 code units like the service, bytes of UTF-8, or characters. */
import { type InitializeParams, PositionEncodingKind } from "vscode-languageserver";

/** One way of counting: how many units a character, given by its code point, has. */
type UnitsOf = (codePoint: number) => number;

const UTF8_LIMITS = [0x80, 0x800, 0x10000];

const WAYS: ReadonlyMap<PositionEncodingKind, UnitsOf> = new Map([
  [PositionEncodingKind.UTF16, utf16Units],
  [PositionEncodingKind.UTF8, (code) => 1 + UTF8_LIMITS.filter((limit) => code >= limit).length],
  [PositionEncodingKind.UTF32, () => 1],
]);

/** The first that the client would like and that is known; a client that says nothing counts in UTF-16. */
export function chooseEncoding({ capabilities }: InitializeParams): PositionEncodingKind {
  const offered = capabilities.general?.positionEncodings ?? [];
  return offered.find((encoding) => WAYS.has(encoding)) ?? PositionEncodingKind.UTF16;
}

/** A client's column in UTF-16 code units; inside of a character it is the character's start. */
export function fromClient(encoding: PositionEncodingKind, line: string, character: number): number {
  if (encoding === PositionEncodingKind.UTF16) return character;
  const units = WAYS.get(encoding) ?? utf16Units;
  let [at, counted] = [0, 0];
  for (const sign of line) {
    counted += units(sign.codePointAt(0) ?? 0);
    if (counted > character) break;
    at += sign.length;
  }
  return at;
}

/** A column in UTF-16 code units as the client counts; behind the line's end it is the end. */
export function toClient(encoding: PositionEncodingKind, line: string, character: number): number {
  if (encoding === PositionEncodingKind.UTF16) return character;
  const units = WAYS.get(encoding) ?? utf16Units;
  let counted = 0;
  for (const sign of line.slice(0, character)) counted += units(sign.codePointAt(0) ?? 0);
  return counted;
}

function utf16Units(codePoint: number): number {
  return codePoint >= 0x10000 ? 2 : 1;
}
