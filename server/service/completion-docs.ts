/** The documentation of what completion offers, made when it is asked for: most offers are never looked at. */
import type { CompletionItem } from "vscode-languageserver-types";
import { canonicalLine } from "../../grammar/print.ts";
import { UNITS } from "../../grammar/units.ts";
import { type IndexedRow, type ItemRow, type SlotRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { CATALOG } from "../checks/catalog.ts";
import { fishLengthWords, massWords } from "../model/figures.ts";
import { findSpecies } from "../model/species.ts";
import { findThreshold } from "../model/thresholds.ts";
import { definitionOf, gearAt } from "./definitions.ts";
import { lastSetting } from "./last-values.ts";
import { code, plainMarkdown } from "./markdown.ts";
import type { OfferData } from "./offers.ts";
import type { Snapshot } from "./snapshot.ts";

/** An item with its documentation; as it was where there is none. */
export function resolveCompletion(snapshot: Snapshot, item: CompletionItem): CompletionItem {
  const data: OfferData | undefined = item.data;
  const value = data === undefined ? "" : wordsOf(snapshot, data);
  return value === "" ? item : { ...item, documentation: { kind: "markdown", value } };
}

function wordsOf(snapshot: Snapshot, data: OfferData): string {
  if (data.of === "name") return nameWords(snapshot, data.line, data.kind, data.name);
  const row = VOCABULARY.find(data.place, data.verb);
  if (row === undefined) return "";
  if (data.of === "verb") return verbWords(row);
  const item = row.words.get(data.word);
  return item === undefined ? "" : itemWords(item);
}

/** What the line means, as it is typed, and what it may say. */
function verbWords({ doc, example, items }: IndexedRow): string {
  const words = items.map(({ word }) => `\`${word}\``).join(", ");
  return [doc, code(example), words === "" ? "" : `May say ${words}.`]
    .filter((part) => part !== "")
    .join("\n\n");
}

function itemWords({ doc, type, aliases, many }: ItemRow): string {
  const units = type.kind === "quantity" ? UNITS.filter(({ dimension }) => dimension === type.dimension) : [];
  const said = [
    doc,
    units.length === 0 ? "" : `In ${units.map(({ unit }) => `\`${unit}\``).join(", ")}.`,
    type.kind === "quantity" && type.range ? "May be a range: `65 to 80 ft`." : "",
    aliases.length === 0 ? "" : `Also written ${aliases.map((alias) => `\`${alias}\``).join(", ")}.`,
    many ? "May be said more than once." : "",
  ];
  return said.filter((part) => part !== "").join("\n\n");
}

function nameWords(snapshot: Snapshot, line: number, kind: SlotRow["of"], name: string): string {
  if (kind === "species") return speciesWords(snapshot, line, name);
  if (kind === "check") return CATALOG.find(({ slug }) => slug === name)?.summary ?? "";
  if (kind === "threshold") {
    const row = findThreshold(name);
    return row === undefined ? "" : `${row.doc}\n\nUsually ${row.written}.`;
  }
  const found = definitionOf(snapshot, line, kind, name);
  const setting = kind === "rig" ? lastSetting(snapshot, line, name) : "";
  const said = [
    found === undefined ? "" : code(canonicalLine(found.line).trim()),
    setting === "" ? "" : `Last ${code(setting)}.`,
  ];
  return said.filter((part) => part !== "").join("\n\n");
}

function speciesWords(snapshot: Snapshot, line: number, name: string): string {
  const gear = gearAt(snapshot, line);
  const species = findSpecies(gear?.nicknames.get(name) ?? name);
  if (species === undefined) return "";
  const meaning = species.name === name ? "" : `${plainMarkdown(name)} is ${species.name}. `;
  const others = species.aliases.map((alias) => `\`${alias}\``).join(", ");
  const size = `Believed up to ${massWords(gear, species.maxMassKg)} and ${fishLengthWords(gear, species.maxLengthM)}.`;
  return `${meaning}${others === "" ? "" : `Also called ${others}. `}${size}`;
}
