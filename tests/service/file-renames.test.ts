/** Files that get another address: journals go on naming the pictures that they named. */
import { expect, test } from "vitest";
import { editText } from "./edit-text.ts";
import { openWorkspace, pathOf, type Texts, uriOf } from "./open-workspace.ts";

/** Moves files, from path to path, and says what the journals say then. */
function checkMoves(
  texts: Texts,
  moves: Readonly<Record<string, string>>,
  wanted: Texts,
  open?: string[],
): void {
  const renames = Object.entries(moves).map(([from, to]) => ({ oldUri: uriOf(from), newUri: uriOf(to) }));
  const { files } = openWorkspace(texts, open).fileRenameEdits(renames);
  const after = files.map(({ uri, edits }) => [pathOf(uri), editText(texts[pathOf(uri)] ?? "", edits)]);
  expect(Object.fromEntries(after)).toEqual(wanted);
}

const trip = (picture: string): string =>
  `trip 2031-06-21 Heron\n05:45 catch C1 king picture ${picture} kept`;

test.each([
  ["king.jpg", { "trips/king.jpg": "trips/first.jpg" }, "first.jpg"],
  ["king.jpg", { "trips/king.jpg": "trips/first king.jpg" }, '"first king.jpg"'],
  ['"first king.jpg"', { "trips/first%20king.jpg": "trips/king.jpg" }, "king.jpg"],
  ["king.jpg", { "trips/king.jpg": "pictures/king.jpg" }, "../pictures/king.jpg"],
  ["../pictures/king.jpg", { pictures: "photos" }, "../photos/king.jpg"],
  ["../pictures/king.jpg", { "pictures/": "photos/", "pictures/king.jpg": "trips/k.jpg" }, "k.jpg"],
  ["../pictures/king.jpg", { "trips/june.trip": "june.trip" }, "pictures/king.jpg"],
  ["king.jpg", { "trips/june.trip": "june.trip" }, "trips/king.jpg"],
])("%s, where %j", (picture, moves, renamed) => {
  checkMoves({ "trips/june.trip": trip(picture) }, moves, { "trips/june.trip": trip(renamed) });
  checkMoves({ "trips/june.trip": trip(picture) }, moves, { "trips/june.trip": trip(renamed) }, []);
});

test.each([
  ["king.jpg", { trips: "seasons/2031" }],
  ["king.jpg", { "trips/june.trip": "trips/2031-06-21.trip" }],
  ["king.jpg", { "trips/kings.jpg": "trips/queens.jpg" }],
  ["king.jpg", { "trips/kin": "trips/x" }],
  ["https://example.test/king.jpg", { "trips/june.trip": "june.trip" }],
])("%s stays, where %j", (picture, moves) => {
  checkMoves({ "trips/june.trip": trip(picture) }, moves, {});
});
