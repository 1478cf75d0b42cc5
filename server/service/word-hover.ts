/** What one word of a line means: its verb, a name, a date and clock, an attribute, or what is wrong with it. */
import type { Position } from "vscode-languageserver-types";
import type { FactLine, ReadLine } from "../../grammar/journal.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { findSpecies } from "../model/species.ts";
import { ALL_RIGS, rigWord, UNKNOWN_RIG } from "../model/trip.ts";
import { boatHover } from "./boat-hover.ts";
import { definitionOf, guestName, speciesMeant } from "./definitions.ts";
import { code, plainMarkdown } from "./markdown.ts";
import { isWithin, type NamedPlace, nameAt, rowOf } from "./name-at.ts";
import type { Snapshot } from "./snapshot.ts";

/** What the word at a column means; empty where there is none. */
export function wordHover(snapshot: Snapshot, line: ReadLine, position: Position): string {
  const row = rowOf(line);
  const { line: lineIndex, character } = position;
  if (row === undefined) return "";
  if (isWithin(character, line.verbStart, line.verbStop))
    return `**${row.verb}**: ${row.doc}\n\n${code(row.example)}`;
  if (character < line.verbStart) return line.kind === "fact" ? stampHover(snapshot, lineIndex, line) : "";
  const name = nameAt(line, character);
  const said = name === undefined ? "" : nameHover(snapshot, lineIndex, line, name);
  if (said !== "") return said;
  const item = line.items.find((one) => isWithin(character, one.start, one.stop));
  const known = item === undefined ? undefined : row.words.get(item.word);
  if (known !== undefined) return `**${known.word}**: ${known.doc}`;
  const wrong = problemHover(snapshot, position, item?.start, item?.stop);
  if (wrong !== "" || name === undefined) return wrong;
  // A place, a count, a grid: what the line says of it.
  return `**${row.verb}**: ${row.doc}`;
}

/** What is wrong at a position, or in a stretch of its line, as the checks say it. */
export function problemHover(
  snapshot: Snapshot,
  { line, character }: Position,
  from = character,
  to = character,
): string {
  const here = snapshot.findings.filter(
    ({ lineIndex, start, stop }) => lineIndex === line && start <= to && stop >= from,
  );
  return here.map(({ message }) => plainMarkdown(message)).join("  \n");
}

/** The day and clock that a line is meant for; the day that gear holds from. */
function stampHover(snapshot: Snapshot, lineIndex: number, line: FactLine): string {
  const { date, clock, offset, approx } = line;
  const trip = snapshot.tripAt(lineIndex)?.trip;
  const event = trip?.events.find((one) => one.lineIndex === lineIndex);
  if (trip === undefined || event === undefined || clock === null)
    return date === null ? "" : `Holds from ${date} on.`;
  const zone = offset === null ? (trip.zone ?? "the boat") : offset;
  return `${approx ? "About " : ""}${clock} on ${date ?? trip.date}, ${offset === null ? "by the clock of " : "at "}${plainMarkdown(zone)}.`;
}

/** What a name stands for: its line in the book, a boat's gear, a nickname's species, a guest's name. */
function nameHover(snapshot: Snapshot, lineIndex: number, line: ReadLine, { of, text }: NamedPlace): string {
  if (of === "boat") return boatHover(snapshot, text);
  const plain = of === "rig" ? rigWord(text, line.verb) : undefined;
  if (plain === ALL_RIGS) return "Every rig in the water.";
  if (plain === UNKNOWN_RIG) return "Nobody saw which rod it was.";
  if (text === NOTHING && TAKEN_OFF.has(of) && line.kind === "fact") return "There is none on.";
  if (of === "species") return speciesHover(snapshot, lineIndex, text);
  if (of === "guest") {
    const name = guestName(snapshot, lineIndex, text);
    return name === "" ? "" : `${plainMarkdown(text)} is ${plainMarkdown(name)}.`;
  }
  const found = definitionOf(snapshot, lineIndex, of, text);
  const isHere = found?.lineIndex === lineIndex && found.uri === snapshot.uri;
  if (isHere) return `This line says what ${plainMarkdown(text)} is.`;
  if (found !== undefined) return code(canonicalLine(found.line).trim());
  return line.kind === "fact" && LOOKED_UP.has(of) ? `No gear book in reach has ${plainMarkdown(text)}.` : "";
}

const NOTHING = "none";
const TAKEN_OFF: ReadonlySet<string> = new Set(["lure", "ball"]);

const LOOKED_UP: ReadonlySet<string> = new Set([
  "rig",
  "lure",
  "cable",
  "ball",
  "calibrated",
  "spot",
  "upkeep",
]);

function speciesHover(snapshot: Snapshot, lineIndex: number, text: string): string {
  const meant = speciesMeant(snapshot, lineIndex, text);
  if (meant !== "") return `${plainMarkdown(text)} is ${plainMarkdown(meant)}.`;
  const species = findSpecies(text);
  return species === undefined ? "" : `${plainMarkdown(text)} is a species.`;
}
