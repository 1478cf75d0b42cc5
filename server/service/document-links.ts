/** Links out of a document: from a trip to its boat's book, from a position to a map, from a picture's name to it. */
import type { DocumentLink } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { Item, ReadLine } from "../../grammar/journal.ts";
import { positionDegrees } from "../../grammar/position-text.ts";
import { valuePlace } from "../checks/edits.ts";
import { slotPlace } from "../checks/places.ts";
import { fileGear } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";
import { LINK_TIPS } from "./link-tips.ts";
import { pictureUri } from "./picture-files.ts";
import { rangeOf } from "./positions.ts";
import type { Snapshot } from "./snapshot.ts";

/** Every link of a document, in order. */
export function documentLinks(snapshot: Snapshot): DocumentLink[] {
  return snapshot.parse.journal.lines.flatMap((line, lineIndex) => {
    if (!isRead(line)) return [];
    const book = line.verb === "trip" ? bookLink(snapshot, line, lineIndex) : [];
    return [...book, ...line.items.flatMap((item) => itemLink(snapshot, lineIndex, item))];
  });
}

/** From a trip's boat to the nearest book that opens it. */
function bookLink({ uri, books }: Snapshot, line: ReadLine, lineIndex: number): DocumentLink[] {
  const boat = slotName(line, 1);
  const book = books.find((file) => fileGear(file).boats.some((opener) => opener.boat === boat));
  if (boat === undefined || book === undefined || book.uri === uri) return [];
  return [{ range: rangeOf(slotPlace(lineIndex, line, 1)), target: book.uri, tooltip: LINK_TIPS.book(boat) }];
}

function itemLink({ uri }: Snapshot, lineIndex: number, item: Item): DocumentLink[] {
  const range = rangeOf(valuePlace(lineIndex, item));
  if (item.value.kind === "position") {
    const { latitude, longitude } = item.value;
    return [{ range, target: geoUri(latitude, longitude), tooltip: LINK_TIPS.map }];
  }
  if (item.word !== "picture" || item.value.kind !== "name") return [];
  const target = pictureUri(uri, item.value.text);
  return target === undefined ? [] : [{ range, target, tooltip: LINK_TIPS.picture }];
}

/** A position as RFC 5870 writes it: WGS 84, decimal degrees, latitude first. Six decimals are a tenth of a meter. */
export function geoUri(latitude: string, longitude: string): string {
  const [north, east] = [latitude, longitude].map((text) => Number(positionDegrees(text).toFixed(6)));
  return `geo:${north},${east}`;
}
