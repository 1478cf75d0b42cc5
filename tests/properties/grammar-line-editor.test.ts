/** A text edited by its lines reads as if read anew, and reading costs what changed. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { LineEditor, type TextPlace } from "../../grammar/line-editor.ts";
import { parse } from "../../grammar/parse.ts";
import { anyText, type Edit, edit } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

const start = fc.oneof(anyText, fc.constantFrom(...EXAMPLES));

/** The place of an offset; between a carriage return and its line feed there is none. */
function placeAt(text: string, offset: number): TextPlace {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/u);
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

const isInside = (text: string, offset: number): boolean =>
  text[offset - 1] === "\r" && text[offset] === "\n";

/** Makes an edit in both: by places in the editor, by offsets in the text, which it answers. */
function editBoth(editor: LineEditor, text: string, [place, taken, put]: Edit): string {
  let from = Math.floor(place * text.length);
  if (isInside(text, from)) from--;
  let to = Math.min(text.length, from + taken);
  if (isInside(text, to)) to++;
  editor.replace(placeAt(text, from), placeAt(text, to), put);
  return text.slice(0, from) + put + text.slice(to);
}

test("after any edits, read in between or not, as if read anew", () => {
  const steps = fc.array(fc.tuple(edit, fc.boolean()), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(start, steps, (first, edits) => {
      const editor = new LineEditor(parse(first));
      let text = first;
      for (const [change, isRead] of edits) {
        text = editBoth(editor, text, change);
        if (isRead) expect(editor.parse()).toEqual(parse(text));
      }
      expect(editor.parse()).toEqual(parse(text));
    }),
    { ...SETTINGS, numRuns: 600 },
  );
});

test("between any two texts, edits in between or not", () => {
  fc.assert(
    fc.property(start, fc.option(edit), anyText, edit, (one, before, other, after) => {
      const editor = new LineEditor(parse(one));
      if (before !== null) editBoth(editor, one, before);
      editor.replaceAll(other);
      const text = editBoth(editor, other, after);
      expect(editor.parse()).toEqual(parse(text));
    }),
    SETTINGS,
  );
});

test("a parse that was handed out stays as it was", () => {
  fc.assert(
    fc.property(start, fc.array(edit, { maxLength: 3 }), (first, edits) => {
      const editor = new LineEditor(parse(first));
      const handed = [{ parse: editor.parse(), text: first }];
      let text = first;
      for (const change of edits) {
        text = editBoth(editor, text, change);
        handed.push({ parse: editor.parse(), text });
      }
      for (const one of handed) expect(one.parse).toEqual(parse(one.text));
    }),
    { ...SETTINGS, numRuns: 100 },
  );
});
