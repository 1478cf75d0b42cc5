/** Go to definition: from a name on a line to the line that defines it on that day. */
import type { Location, Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import { slotPlace } from "../checks/places.ts";
import { definitionOf } from "./definitions.ts";
import { nameAt } from "./name-at.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

/** Where the name at a position is defined; null where it is no defined name. */
export function definition(snapshot: Snapshot, position: Position): Location | null {
  const line = snapshot.parse.journal.lines[position.line];
  if (line === undefined || !isRead(line)) return null;
  const name = nameAt(line, position.character);
  const found = name === undefined ? undefined : definitionOf(snapshot, position.line, name.of, name.text);
  if (found === undefined) return null;
  return { uri: found.uri, range: rangeOf(slotPlace(found.lineIndex, found.line)) };
}
