/** The outline: trips with their events, boats with their gear. */
import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import type { FactLine, Line } from "../../grammar/journal.ts";
import { wholeLine } from "../checks/places.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

const OPENERS = new Set(["trip", "boat"]);

/** Symbols of a document, nested one deep. */
export function documentSymbols(snapshot: Snapshot): DocumentSymbol[] {
  const symbols: DocumentSymbol[] = [];
  let open: DocumentSymbol | undefined;
  snapshot.parse.journal.lines.forEach((line, lineIndex) => {
    if (line.kind !== "fact") {
      if (line.kind !== "blank" && open !== undefined) extend(open, line, lineIndex);
      return;
    }
    const symbol = symbolOf(line, lineIndex);
    if (OPENERS.has(line.verb)) {
      open = symbol;
      symbols.push(symbol);
    } else if (open === undefined) {
      symbols.push(symbol);
    } else {
      open.children?.push(symbol);
      extend(open, line, lineIndex);
    }
  });
  return symbols;
}

function extend(symbol: DocumentSymbol, line: Line, lineIndex: number): void {
  symbol.range = { start: symbol.range.start, end: { line: lineIndex, character: line.raw.length } };
}

function symbolOf(line: FactLine, lineIndex: number): DocumentSymbol {
  const range = rangeOf(wholeLine(lineIndex, line));
  const names = line.slots
    .map((slot) => slot.text)
    .join(" ")
    .trim();
  const name = line.verb === "trip" ? names : `${line.verb} ${names}`.trim();
  const detail = line.clock ?? line.date ?? "";
  return {
    name: name || line.verb,
    detail,
    kind: kindOf(line.verb),
    range,
    selectionRange: range,
    children: [],
  };
}

function kindOf(verb: string): SymbolKind {
  if (verb === "trip") return SymbolKind.Module;
  if (verb === "boat") return SymbolKind.Package;
  if (verb === "rig") return SymbolKind.Object;
  return ["cable", "line", "ball", "lure", "spot"].includes(verb) ? SymbolKind.Constant : SymbolKind.Event;
}
