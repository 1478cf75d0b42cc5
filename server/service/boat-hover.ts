/** What the gear books say of a boat. */
import { canonicalLine } from "../../grammar/print.ts";
import { fileNameAmong } from "../checks/file-names.ts";
import { type BookFile, fileGear, linesOfBoat } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";
import { code, plainMarkdown } from "./markdown.ts";
import type { Snapshot } from "./snapshot.ts";

/** A boat's properties as they are written, how much gear it has, and in which books. */
export function boatHover({ analysis }: Snapshot, written: string): string {
  const boat = written.normalize("NFC");
  const books = analysis.files.filter((file) => fileGear(file).boats.some((one) => one.boat === boat));
  if (books.length === 0) return `No gear book in reach describes ${plainMarkdown(boat)}.`;
  const properties = books.flatMap((book) => fileGear(book).properties.filter((one) => one.boat === boat));
  const said = properties.map(({ line }) => code(canonicalLine(line).trim()));
  const gear = GEAR.flatMap(([verb, one]) => countOf(analysis.files, boat, verb, one));
  const names = books.map((book) =>
    book.uri === analysis.uri
      ? "this file"
      : fileNameAmong(
          book.uri,
          books.map((other) => other.uri),
        ),
  );
  const has = gear.length === 0 ? "has no gear yet" : `has ${gear.join(", ")}`;
  const where = `${plainMarkdown(boat)} ${has}, by ${plainMarkdown(names.join(" and "))}.`;
  return [where, ...said].join("  \n");
}

const GEAR = [
  [["rig"], "rig"],
  [["cable", "line"], "cable or line"],
  [["ball"], "ball"],
  [["lure"], "lure"],
] as const;

/** How many names there are, however often each is described anew. */
function countOf(files: readonly BookFile[], boat: string, verbs: readonly string[], one: string): string[] {
  const lines = linesOfBoat(files, boat).filter(({ line }) => verbs.includes(line.verb));
  const { size } = new Set(lines.map(({ line }) => slotName(line)));
  if (size === 0) return [];
  return [
    size === 1
      ? `1 ${one}`
      : `${size} ${one
          .split(" or ")
          .map((word) => `${word}s`)
          .join(" or ")}`,
  ];
}
