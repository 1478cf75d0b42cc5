/** References and highlights: every place that means the same thing, and no place that only looks like it. */
import { describe, expect, test } from "vitest";
import { openWorkspace, pathOf, placeText, readWorkspace, type Texts, uriOf } from "./open-workspace.ts";

/** What is found for the cursor is what is marked, in whatever files are open. */
function checkReferences(
  marked: Texts,
  { definitions = true, open }: { definitions?: boolean; open?: string[] } = {},
): void {
  const { texts, path, at, ranges } = readWorkspace(marked);
  const service = openWorkspace(texts, open);
  const found = service.references(uriOf(path), at, definitions);
  expect(found.map(({ uri, range }) => placeText(pathOf(uri), range.start, range.end)).sort()).toEqual(
    ranges,
  );
}

const BOOK = `
  boat "Bright Penny"
  cable wire steel diameter 0.9 mm
  rig C1 downrigger cable wire
`;

describe("a rig", () => {
  test("in its book, its trips and its calibration, from any of them", () => {
    const marked = (cursor: string) => ({
      "book.gear": `
        boat "Bright Penny"
        rig <|C1|> downrigger
        rig P1 downrigger
        rig P1U stacked <|C1|>
        upkeep probe every 60 h on <|C1|>
        2031-06-08 calibrate <|C1|> drag 1.3
        2031-08-09 rig <|C1|> downrigger
      `,
      "june.trip": `
        trip 2031-06-21 "Bright Penny"
        05:14 set <|${cursor}|> out 90 ft
        05:30 tangle P1 with <|C1|>
        05:40 catch <|"C1"|> king 18 lb "C1"
        note
          C1 was fine
        # C1
      `,
      "september.trip": `
        trip 2031-09-21 "Bright Penny"
        05:14 set <|C1|> out 90 ft
      `,
    });
    checkReferences(marked("C<|>1"));
    checkReferences(marked("<|>C1"), { open: ["june.trip"] });
  });

  test("without the lines that define it", () => {
    checkReferences(
      {
        "book.gear": 'boat "Bright Penny"\nrig C1 downrigger\n2031-08-09 rig C1 downrigger',
        "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|C<|>1|> out 90 ft',
      },
      { definitions: false },
    );
  });

  test("of another boat is another rig", () => {
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nrig <|C<|>1|> downrigger\nboat Heron\nrig C1 downrigger',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|C1|>\ntrip 2031-06-22 Heron\n05:14 set C1',
      "heron.trip": "trip 2031-06-23 Heron\n05:14 set C1",
    });
  });

  test("above any boat is the rig of every boat that reads the book", () => {
    checkReferences({
      "book.gear": 'rig <|C1|> downrigger\nboat "Bright Penny"\nboat Heron',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|C<|>1|>',
      "heron.trip": "trip 2031-06-23 Heron\n05:14 set <|C1|>",
    });
  });

  test("written with other capitals is meant where only one can be", () => {
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nrig <|Port|> downrigger',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|p<|>ort|>',
    });
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nrig <|Port|> downrigger\n2031-07-01 rig port downrigger',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|p<|>ort|>',
      "july.trip": 'trip 2031-07-21 "Bright Penny"\n05:14 set port\n05:15 set <|Port|>',
    });
  });

  test("written with another form of the same letter", () => {
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nlure <|caf\u00e9|> spoon',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set P1 lure <|<|>cafe\u0301|>',
    });
  });

  test("in books that are read together, though neither reads the other", () => {
    checkReferences({
      "all.gear": 'boat "Bright Penny"\nrig <|C<|>1|> downrigger',
      "late/late.gear": 'boat "Bright Penny"\n2031-08-09 rig <|C1|> downrigger',
      "late/august.trip": 'trip 2031-08-21 "Bright Penny"\n05:14 set <|C1|>',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|C1|>',
    });
  });

  test("in folders that see nothing of each other", () => {
    checkReferences({
      "one/book.gear": 'boat "Bright Penny"\nrig <|C1|> downrigger',
      "one/june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|C<|>1|>',
      "two/book.gear": 'boat "Bright Penny"\nrig C1 downrigger',
      "two/june.trip": 'trip 2031-06-22 "Bright Penny"\n05:14 set C1',
    });
  });

  test("that no book has is the same for all trips of the boat", () => {
    checkReferences({
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set <|X<|>9|>',
      "july.trip": 'trip 2031-07-21 "Bright Penny"\n05:14 set <|X9|>\ntrip 2031-07-22 Heron\n05:14 set X9',
    });
  });

  test("named all, where all of them are meant, is nobody's name", () => {
    checkReferences({
      "book.gear": BOOK,
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 set C1\n08:00 pull a<|>ll\n',
    });
  });
});

describe("other names", () => {
  test("a cable, in calibrations too, and a line by its other word", () => {
    checkReferences({
      "book.gear": `
        boat "Bright Penny"
        line <|wire|> steel
        rig C1 downrigger cable <|w<|>ire|> backing <|wire|>
        2031-05-03 calibrate <|wire|> weight 2.3 g/m
      `,
    });
  });

  test("a lure, as flasher and slider too", () => {
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nlure <|fly|> fly',
      "june.trip":
        'trip 2031-06-21 "Bright Penny"\n05:14 set C1 lure <|f<|>ly|> flasher <|fly|>\n05:20 broke C1 lure <|fly|>\n05:30 set C1 lure none',
    });
  });

  test("a nickname is one word, the fish another", () => {
    checkReferences({
      "book.gear":
        'boat "Bright Penny"\nnickname <|big|> chinook\nband chinook 45 to 52 F\nband <|big|> 45 to 53 F',
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n05:14 catch C1 <|b<|>ig|>\n05:20 catch C1 chinook',
    });
    checkReferences({
      "book.gear": 'boat "Bright Penny"\nnickname big <|chinook|>\nlimit <|chinook|> per-angler 2',
      "june.trip":
        'trip 2031-06-21 "Bright Penny"\n  target <|Chinook|>\n05:14 catch C1 <|k<|>ing|>\n05:20 catch C1 big',
    });
  });

  test("a boat, in every trip of it", () => {
    checkReferences({
      "book.gear": 'boat <|"Bright Penny"|>\nrig C1 downrigger',
      "june.trip": 'trip 2031-06-21 <|"Bright <|>Penny"|>',
      "july.trip": 'trip 2031-07-21 <|"Bright Penny"|>\ntrip 2031-07-21 Heron',
    });
  });

  test("a guest, in one trip", () => {
    checkReferences({
      "june.trip": `
        trip 2031-06-21 "Bright Penny"
          guest <|G1|> "Marv Tessler"
        05:14 catch C1 king by <|G<|>1|>
        trip 2031-06-22 "Bright Penny"
          guest G1 "Ida Moss"
        05:14 catch C1 king by G1
      `,
    });
  });

  test("somebody who comes often, in every trip", () => {
    checkReferences({
      "june.trip": 'trip 2031-06-21 "Bright Penny"\n  captain <|"Nell <|>Ostrander"|>\n  mate Dov',
      "july.trip": `
        trip 2031-07-21 "Bright Penny"
          mate <|"Nell Ostrander"|>
          guest G1 <|"Nell Ostrander"|>
        05:14 catch C1 king by <|"Nell Ostrander"|>
        05:15 catch C1 king by mate "Nell Ostrander"
      `,
    });
  });

  test("a harbor, a grid, a place, an upkeep, a mast, a contest", () => {
    checkReferences({
      "june.trip": 'trip 2031-06-21 Heron\n  harbor <|"Hollis <|>Point"|>\n  grid "Hollis Point"',
      "july.trip": 'trip 2031-07-21 Heron\n  harbor <|"Hollis Point"|>',
    });
    checkReferences({
      "june.trip": "trip 2031-06-21 Heron\n  grid <|07<|>15|>\ntrip 2031-06-22 Heron\n  grid <|0715|>",
    });
    checkReferences({
      "book.gear": 'boat Heron\nspot <|"Anvil Bank"|> at 44.1 -86.2',
      "june.trip": 'trip 2031-06-21 Heron\n08:05 run to <|"Anvil<|> Bank"|>',
    });
    checkReferences({
      "book.gear": "boat Heron\nupkeep <|oil|> every 100 h\n2031-04-19 serviced <|oil|>",
      "june.trip": "trip 2031-06-21 Heron\n08:05 serviced <|o<|>il|>",
    });
    checkReferences({
      "book.gear": "boat Heron\nrig B1 flat mast <|p<|>m|>\nrig B2 flat mast <|pm|>\nrig pm flat",
    });
    checkReferences({
      "june.trip":
        'trip 2031-06-21 Heron\n  event <|"Two <|>Lights"|>\ntrip 2031-06-22 Heron\n  event <|"Two Lights"|>',
    });
  });
});

describe("highlights", () => {
  /** What lights up in the one file, and whether it is written or read there. */
  function highlightsOf(marked: Texts): { drawn: string[]; ranges: readonly string[] } {
    const { texts, path, at, ranges } = readWorkspace(marked);
    const found = openWorkspace(texts).highlights(uriOf(path), at);
    const drawn = found.map(
      ({ range, kind }) => `${placeText(path, range.start, range.end)} ${kind === 3 ? "write" : "read"}`,
    );
    return { drawn, ranges };
  }

  test("defining is writing, using is reading", () => {
    const { drawn, ranges } = highlightsOf({
      "book.gear": 'boat "Bright Penny"\nrig <|C1|> downrigger\nrig P1U stacked <|C<|>1|>\nlure C1 spoon',
    });
    expect(drawn).toEqual([`${ranges[0]} write`, `${ranges[1]} read`]);
  });

  test("another boat's rig of the same name stays dark", () => {
    const { drawn, ranges } = highlightsOf({
      "book.gear": "boat Heron\nrig C1 downrigger\nboat Gull\nrig C1 downrigger",
      "june.trip":
        "trip 2031-06-21 Heron\n05:14 set <|C<|>1|>\n05:20 strike <|C1|>\ntrip 2031-06-22 Gull\n05:14 set C1",
    });
    expect(drawn).toEqual(ranges.map((range) => `${range} read`));
  });

  test("beside a byte order mark", () => {
    const service = openWorkspace({ "june.trip": "\ufefftrip 2031-06-21 Heron\n  zone America/Detroit" });
    const [found] = service.highlights(uriOf("june.trip"), { line: 0, character: 18 });
    expect(found?.range.start).toEqual({ line: 0, character: 17 });
  });
});

test("the books of a folder are looked up once, however many trips lie in it", () => {
  const lookedUp = (trips: number): number => {
    const trip = "trip 2031-06-21 Heron\n05:14 set C1\n05:20 strike C1";
    const texts = Object.fromEntries(Array.from({ length: trips }, (_, n) => [`trips/${n}.trip`, trip]));
    let count = 0;
    const service = openWorkspace({ "book.gear": "boat Heron\nrig C1 downrigger", ...texts }, [], {
      onBooksNear: () => count++,
    });
    service.update(uriOf("trips/0.trip"), 1, trip);
    count = 0;
    expect(service.references(uriOf("trips/0.trip"), { line: 1, character: 10 }, true)).toHaveLength(
      2 * trips + 1,
    );
    return count;
  };
  expect(lookedUp(200)).toBe(lookedUp(20));
});
