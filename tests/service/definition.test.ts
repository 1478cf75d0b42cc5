/** Where a name leads: to the line that defines it on that day. */
import { describe, expect, test } from "vitest";
import { readCursor } from "../harness/markers.ts";
import { BOOK, BOOK_URI, MORNING, openService, positionAt, URI } from "./open-service.ts";

/** The place a name leads to, as `file: line-start text`; empty where it leads nowhere. */
function definitionAt(source: string, above = MORNING): string {
  const { text, offset } = readCursor(above + source);
  const found = openService(text).definition(URI, positionAt(text, offset));
  if (found === null) return "";
  const lines = (found.uri === BOOK_URI ? BOOK : text).split("\n");
  const { start, end } = found.range;
  const name = lines[start.line]?.slice(start.character, end.character);
  return `${found.uri === BOOK_URI ? "book" : "here"}: ${lines[start.line]?.trim().slice(0, 16)} [${name}]`;
}

function checkDefinition(source: string, wanted: string, above?: string): void {
  expect(definitionAt(source, above)).toBe(wanted);
}

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
  ])("%s", (source, wanted) => checkDefinition(source, wanted));

  test("to the line that holds on the day", () => {
    const july = MORNING.replace("2031-06-21", "2031-07-21");
    checkDefinition("06:20 move P<|>1 out 5 ft", "book: 2031-06-30 rig P [P1]", july);
  });
});

test("a guest is introduced in the trip", () => {
  checkDefinition("06:20 catch C1 king by <|>G1", 'here: guest G1 "Marv T [G1]');
});

test("gear written in the trip itself comes first", () => {
  const own = `${MORNING}lure glow-spoon spoon 5 in\n`;
  checkDefinition(
    "06:20 set C1 lure <|>glow-spoon",
    "here: lure glow-spoon  [glow-spoon]",
    `boat "Bright Penny"\n${own.split("\n").at(-2)}\n${MORNING}`,
  );
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
