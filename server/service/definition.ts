/** Go to definition: from a name on a line to the gear line that holds on that day. */
import type { Location, Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { type SlotRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { slotPlace } from "../checks/places.ts";
import { definitionOf, gearAt } from "./definitions.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

/** Where the name at a position is defined; null where it is no defined name. */
export function definition(snapshot: Snapshot, position: Position): Location | null {
  const line = snapshot.parse.journal.lines[position.line];
  const gear = gearAt(snapshot, position.line);
  if (line === undefined || !isRead(line) || gear === undefined) return null;
  const name = nameAt(line, position.character);
  const origin = name === undefined ? undefined : definitionOf(gear, name.of, name.text);
  if (origin === undefined) return null;
  return { uri: origin.uri, range: rangeOf(slotPlace(origin.lineIndex, origin.line)) };
}

/** The name under a column and what kind it is. */
export function nameAt(line: ReadLine, column: number): { of: SlotRow["of"]; text: string } | undefined {
  const row = VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
  const slot = line.slots.findIndex((one) => column >= one.start && column <= one.stop);
  const of = row?.slots[slot]?.of;
  if (of !== undefined) return { of, text: line.slots[slot]?.text ?? "" };
  const item = line.items.find((one) => column >= one.valueStart && column <= one.stop);
  const type = item === undefined ? undefined : row?.words.get(item.word)?.type;
  if (item?.value.kind !== "name" || type?.kind !== "name") return undefined;
  return { of: type.of, text: item.value.text };
}
