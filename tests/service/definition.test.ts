/** Where a name leads: to the line that defines it on that day. */
import { describe, expect, test } from "vitest";
import { readCursor } from "../harness/markers.ts";
import { BOOK, BOOK_URI, MORNING, openService, positionAt, URI } from "./open-service.ts";

/** The place a name leads to, as `file: line-start text`; empty where it leads nowhere. */
function definitionAt(source: string, above = MORNING): string {
  const { text, offset } = readCursor(above + source);
  const found = openService(text).definition(URI, positionAt(text, offset));
  return found
    .map(({ targetUri, targetSelectionRange: { start, end } }) => {
      const lines = (targetUri === BOOK_URI ? BOOK : text).split("\n");
      const name = lines[start.line]?.slice(start.character, end.character);
      return `${targetUri === BOOK_URI ? "book" : "here"}: ${lines[start.line]?.trim().slice(0, 16)} [${name}]`;
    })
    .join("; ");
}

function checkDefinition(source: string, wanted: string, above?: string): void {
  expect(definitionAt(source, above)).toBe(wanted);
}

test("the whole name is where the jump starts, the whole line where it ends", () => {
  const { text, offset } = readCursor(`${MORNING}06:20 set C1 lure "Ash <|>Wednesday"`);
  const [found] = openService(text).definition(URI, positionAt(text, offset));
  const line = MORNING.split("\n").length - 1;
  expect(found?.originSelectionRange).toEqual({
    start: { line, character: 18 },
    end: { line, character: 33 },
  });
  expect(found?.targetRange.end.character).toBe('lure "Ash Wednesday" spoon 3.75 in'.length);
});

test("behind a byte order mark only the columns of this file move", () => {
  const service = openService(`\ufeff${MORNING}`);
  const [found] = service.definition(URI, { line: 0, character: 20 });
  expect(found?.originSelectionRange?.start).toEqual({ line: 0, character: 17 });
  expect(found?.targetSelectionRange.start).toEqual({ line: 0, character: 5 });
});

describe("into the book", () => {
  test.each([
    ["06:20 move C<|>1 out 5 ft", "book: rig C1 downrigge [C1]"],
    ["06:20 move C1<|> out 5 ft", "book: rig C1 downrigge [C1]"],
    ["06:20 set C1 lure <|>glow-spoon", "book: lure glow-spoon  [glow-spoon]"],
    ['06:20 set C1 lure "Ash <|>Wednesday"', 'book: lure "Ash Wednes ["Ash Wednesday"]'],
    ["06:20 catch P1 <|>king", "book: nickname king ch [king]"],
    ['06:20 run to <|>"Anvil Bank"', 'book: spot "Anvil Bank ["Anvil Bank"]'],
    ["06:20 serviced <|>engine-oil", "book: upkeep engine-oi [engine-oil]"],
    ["06:20 tangle C1 with <|>P1", "book: rig P1 downrigge [P1]"],
    ['trip 2031-06-22 "Bright <|>Penny"', 'book: boat "Bright Pen ["Bright Penny"]'],
  ])("%s", (source, wanted) => checkDefinition(source, wanted));

  test("to the line that holds on the day", () => {
    const july = MORNING.replace("2031-06-21", "2031-07-21");
    checkDefinition("06:20 move P<|>1 out 5 ft", "book: 2031-06-30 rig P [P1]", july);
  });
});

test("a guest is introduced in the trip", () => {
  checkDefinition("06:20 catch C1 king by <|>G1", 'here: guest G1 "Marv T [G1]');
});

describe("the crew is named in the trip", () => {
  const aboard = MORNING.replace("  anglers 4", '  captain "Nell Ostrander"\n  mate Dov');
  test.each([
    ["06:20 catch C1 king by <|>mate", "here: mate Dov [Dov]"],
    ["06:20 catch C1 king by <|>Dov", "here: mate Dov [Dov]"],
    ['06:20 lost C1 king by "Nell <|>Ostrander"', 'here: captain "Nell Os ["Nell Ostrander"]'],
  ])("%s", (source, wanted) => checkDefinition(source, wanted, aboard));
});

test("gear written in the trip itself comes first", () => {
  const own = `${MORNING}lure glow-spoon spoon 5 in\n`;
  checkDefinition(
    "06:20 set C1 lure <|>glow-spoon",
    "here: lure glow-spoon  [glow-spoon]",
    `boat "Bright Penny"\n${own.split("\n").at(-2)}\n${MORNING}`,
  );
});

test("a boat that is opened twice leads to both", () => {
  const above = `boat "Bright Penny"\n${MORNING}`;
  const source = 'trip 2031-06-22 "Bright <|>Penny"';
  const here = 'here: boat "Bright Pen ["Bright Penny"]';
  checkDefinition(source, `${here}; book: boat "Bright Pen ["Bright Penny"]`, above);
});

test("within a book", () => {
  checkDefinition("rig X1 downrigger cable <|>rigger-wire", "here: cable rigger-wir [rigger-wire]", BOOK);
  checkDefinition("calibrate <|>P1 drag 1.2", "here: 2031-06-30 rig P [P1]", BOOK);
});

describe("nowhere", () => {
  test.each([
    "06:20 <|>move C1 out 5 ft",
    "06:20 move C1 out <|>5 ft",
    "06:20 move <|>X9 out 5 ft",
    "06:20 catch P1 <|>chinook",
    "# move <|>C1",
    "note\n  05:14 move <|>C1",
  ])("%j", (source) => checkDefinition(source, ""));
});
