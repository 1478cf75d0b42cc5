/**
 * A byte order mark is no part of the first line in the core, but a column of it to a client whose text holds one.
 * Here columns of line 0 are moved by one, on the way in and on the way out.
 */
import type { Position } from "vscode-languageserver-types";

/** A position as the core counts it. */
export function withoutMark({ line, character }: Position): Position {
  return line === 0 ? { line, character: Math.max(0, character - 1) } : { line, character };
}

/** An answer with every position in line 0 as a client counts it. Places in other files are left as they are. */
export function withMark<T>(answer: T, uri: string): T {
  return shifted(answer, uri) as T;
}

/** Packed semantic tokens as a client counts them: the first one's column moves when it stands in line 0. */
export function tokensWithMark(data: number[]): number[] {
  const [line, start = 0, ...rest] = data;
  return line === 0 ? [line, start + 1, ...rest] : data;
}

function shifted(value: unknown, uri: string): unknown {
  if (Array.isArray(value)) return value.map((one) => shifted(one, uri));
  if (typeof value !== "object" || value === null) return value;
  if ("line" in value && "character" in value && typeof value.character === "number") {
    return value.line === 0 ? { ...value, character: value.character + 1 } : value;
  }
  if ("uri" in value && value.uri !== uri) return value;
  if ("targetUri" in value && value.targetUri !== uri) return withOriginMoved(value, uri);
  if ("changes" in value) return { ...value, changes: shiftedChanges(value.changes, uri) };
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, shifted(one, uri)]));
}

/** A link into another file starts in this one. */
function withOriginMoved(link: object, uri: string): unknown {
  if (!("originSelectionRange" in link)) return link;
  return { ...link, originSelectionRange: shifted(link.originSelectionRange, uri) };
}

function shiftedChanges(changes: unknown, uri: string): unknown {
  const entries = Object.entries(changes as Record<string, unknown>);
  return Object.fromEntries(
    entries.map(([file, edits]) => [file, file === uri ? shifted(edits, uri) : edits]),
  );
}
