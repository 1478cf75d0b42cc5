/** Edits of a text kept as its lines: what reading costs, and places that aren't in the text. */
import { expect, test } from "vitest";
import { LineEditor } from "../../grammar/line-editor.ts";
import { parse } from "../../grammar/parse.ts";

const dayOf = (lines: number): string =>
  `trip 2031-06-21 S\n  mate A\n\n${"05:14 set C1 out 90 ft\n".repeat(lines)}`;

/** Reads after typing a word of so many letters, one edit a letter, in the middle of a day of so many lines. */
function linesReadAfterTyping(letters: number, lines: number): number {
  const editor = new LineEditor(parse(dayOf(lines)));
  const line = Math.floor(lines / 2);
  for (let character = 0; character < letters; character++) {
    editor.replace({ line, character }, { line, character }, "x");
  }
  editor.parse();
  return editor.linesRead;
}

test.each([
  [1, 100],
  [1, 50_000],
  [20, 100],
  [20, 50_000],
])("%i edits of one line among %i cost one reading", (letters, lines) => {
  expect(linesReadAfterTyping(letters, lines)).toBe(1);
});

test("edits of lines apart cost a reading each, however far apart they are", () => {
  const editor = new LineEditor(parse(dayOf(50_000)));
  for (const line of [3, 20_000, 49_999]) editor.replace({ line, character: 0 }, { line, character: 1 }, "1");
  editor.parse();
  expect(editor.linesRead).toBe(3);
});

test("lines put in and taken out cost themselves and the line they touch", () => {
  const editor = new LineEditor(parse(dayOf(1000)));
  editor.replace({ line: 10, character: 0 }, { line: 10, character: 0 }, "drift\n".repeat(7));
  editor.parse();
  expect(editor.linesRead).toBe(8);
  editor.replace({ line: 10, character: 0 }, { line: 900, character: 0 }, "");
  editor.parse();
  expect(editor.linesRead).toBe(9);
});

test("a block that changes is read to the line that ends it and no farther", () => {
  const editor = new LineEditor(parse(`note\n${"  text\n".repeat(5)}05:58 drift\n${"  text\n".repeat(50)}`));
  editor.replace({ line: 0, character: 0 }, { line: 0, character: 4 }, "drift");
  editor.parse();
  expect(editor.linesRead).toBe(7);
});

test("a text put in place of the whole costs what differs", () => {
  const editor = new LineEditor(parse(dayOf(1000)));
  editor.replaceAll(dayOf(1000).replace("mate A", "mate B"));
  expect(editor.parse()).toEqual(parse(dayOf(1000).replace("mate A", "mate B")));
  expect(editor.linesRead).toBe(1);
});

test.each([
  ["behind the last line", { line: 99, character: 0 }, "ab\ncdX"],
  ["behind the end of a line", { line: 0, character: 99 }, "abX\ncd"],
  ["before the first", { line: -1, character: 5 }, "Xab\ncd"],
  ["before a line", { line: 1, character: -5 }, "ab\nXcd"],
  ["nowhere", { line: Number.NaN, character: 0 }, "Xab\ncd"],
])("a place %s is the nearest in the text", (_, place, text) => {
  const editor = new LineEditor(parse("ab\ncd"));
  editor.replace(place, place, "X");
  expect(editor.parse()).toEqual(parse(text));
});

test("a range whose ends are the wrong way round is taken the right way", () => {
  const editor = new LineEditor(parse("ab\ncd"));
  editor.replace({ line: 1, character: 1 }, { line: 0, character: 1 }, "X");
  expect(editor.parse()).toEqual(parse("aXd"));
});

test("a text of more lines than a call takes arguments", () => {
  const editor = new LineEditor(parse("ab\ncd"));
  editor.replace({ line: 1, character: 0 }, { line: 1, character: 0 }, "drift\n".repeat(300_000));
  expect(editor.parse().journal.lines).toHaveLength(300_002);
});

test("a line's text has the byte order mark where the text has one", () => {
  const editor = new LineEditor(parse("\ufeffab\r\ncd"));
  expect([editor.lineText(0), editor.lineText(1), editor.lineText(2)]).toEqual(["\ufeffab", "cd", undefined]);
  editor.replace({ line: 0, character: 0 }, { line: 0, character: 1 }, "");
  expect(editor.lineText(0)).toBe("ab");
  expect(editor.parse()).toEqual(parse("ab\r\ncd"));
});
