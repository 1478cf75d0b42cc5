/** Lines of a file that isn't open, read one at a time: they say what they say when the whole file is read. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { linesOfParse, linesOfText } from "../../server/service/names/lines-asked.ts";
import { anyText } from "../properties/arbitrary-text.ts";

test("in whatever order, any line reads as in the file read whole", () => {
  fc.assert(
    fc.property(anyText, fc.infiniteStream(fc.nat()), (text, places) => {
      const read = parse(text);
      const [one, whole] = [linesOfText(text), linesOfParse(read)];
      const count = read.journal.lines.length;
      for (let asked = 0; asked < 12; asked++) {
        const lineIndex = (places.next().value ?? 0) % (count + 1);
        const [mine, theirs] = [one(lineIndex), whole(lineIndex)];
        expect(mine?.line).toEqual(theirs?.line);
        expect(mine?.issue).toEqual(theirs?.issue);
      }
    }),
    { seed: 31, numRuns: 300 },
  );
});

test("a line in the middle of a log is read with the few above it that it hangs on", () => {
  const text =
    "boat Heron\n  water salt\ntrip 2031-06-21 Heron\n05:14 set C1\n  note a word\n05:20 set P1 out 30 ft\n";
  expect(linesOfText(text)(5)?.line).toMatchObject({ verb: "set", clock: "05:20" });
  expect(linesOfText(text)(1)).toMatchObject({ line: { kind: "property", block: "boat" }, block: "boat" });
  expect(linesOfText(text)(6)?.line.raw).toBe("");
  expect(linesOfText(text)(7)).toBeUndefined();
  expect(linesOfText(text)(-1)).toBeUndefined();
});
