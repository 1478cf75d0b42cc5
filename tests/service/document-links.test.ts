/** Links: from a trip to its book, from a position to a map, from a picture's name to the picture. */
import { expect, test } from "vitest";
import { geoUri } from "../../server/service/document-links.ts";
import { openWorkspace, placeText, readWorkspace, type Texts, uriOf } from "./open-workspace.ts";

/** The links of the file with the cursor: the marked places, and where each leads. */
function checkLinks(marked: Texts, targets: readonly string[]): void {
  const { texts, path, ranges } = readWorkspace(marked);
  const links = openWorkspace(texts).documentLinks(uriOf(path));
  expect(links.map(({ range }) => placeText(path, range.start, range.end))).toEqual(ranges);
  expect(links.map(({ target }) => target)).toEqual(targets);
}

test("a trip leads to the nearest book that opens its boat", () => {
  checkLinks(
    {
      "all.gear": "boat Heron",
      "trips/near.gear": 'boat Heron\nboat "Bright Penny"',
      "trips/june.trip": "trip 2031-06-21 <|Heron|>\ntrip 2031-06-22 Gull<|>",
    },
    [uriOf("trips/near.gear")],
  );
});

test("a trip whose boat is opened in its own file needs no link", () => {
  checkLinks({ "june.trip": "boat Heron\ntrip 2031-06-21 Heron<|>" }, []);
});

test("positions lead to the map", () => {
  checkLinks(
    {
      "june.trip":
        "trip 2031-06-21 Heron\n05:45 gps speed 2.1 mph at <|44 46.1N 086 21.7W|>\n06:40 birds some at <|44.768N 86.361W|><|>",
    },
    ["geo:44.768333,-86.361667", "geo:44.768,-86.361"],
  );
  checkLinks({ "book.gear": 'boat Heron\nspot "Pier Heads" at <|44.7061 -86.2789|><|>' }, [
    "geo:44.7061,-86.2789",
  ]);
});

test("pictures lie beside the journal", () => {
  checkLinks(
    {
      "trips/june.trip":
        'trip 2031-06-21 Heron\n05:45 catch C1 king picture <|king.jpg|>\nnote picture <|"../big fish/#1.jpg"|> picture /etc/a.jpg picture https://x/a.jpg<|>',
    },
    [uriOf("trips/king.jpg"), uriOf("big%20fish/%231.jpg")],
  );
});

test.each([
  ["44 46 06N", "86 21 42W", "geo:44.768333,-86.361667"],
  ["33 30S", "0.0E", "geo:-33.5,0"],
  ["-0.0", "-0.0", "geo:0,0"],
])("%s %s", (latitude, longitude, wanted) => {
  expect(geoUri(latitude, longitude)).toBe(wanted);
});
