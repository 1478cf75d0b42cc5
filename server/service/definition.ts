/** Go to definition: from a name on a line to the line that defines it on that day. */
import type { LocationLink, Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import { slotPlace, wholeLine } from "../checks/places.ts";
import { type Definition, definitionsOf } from "./definitions.ts";
import { nameAt } from "./name-at.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

/** Where the name at a position is defined, nearest book first; empty where it is no defined name. */
export function definition(snapshot: Snapshot, position: Position): LocationLink[] {
  const line = snapshot.parse.journal.lines[position.line];
  if (line === undefined || !isRead(line)) return [];
  const name = nameAt(line, position.character);
  if (name === undefined) return [];
  const { start, stop } = name;
  const originSelectionRange = rangeOf({ lineIndex: position.line, start, stop });
  return definitionsOf(snapshot, position.line, name.of, name.text).map((found) => ({
    originSelectionRange,
    ...targetOf(found),
  }));
}

function targetOf({ uri, lineIndex, line }: Definition): Omit<LocationLink, "originSelectionRange"> {
  return {
    targetUri: uri,
    targetRange: rangeOf(wholeLine(lineIndex, line)),
    targetSelectionRange: rangeOf(slotPlace(lineIndex, line)),
  };
}
