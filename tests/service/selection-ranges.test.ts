/** What a selection grows to, step by step. */
import { expect, test } from "vitest";
import { readCursor } from "../harness/markers.ts";
import { openService, positionAt, URI } from "./open-service.ts";

/** The texts that a selection grows to from the cursor; of several lines only the first and the last, as `first…last`. */
function growth(source: string): string[] {
  const { text, offset } = readCursor(source);
  const [first] = openService(text).selectionRanges(URI, [positionAt(text, offset)]);
  const lines = text.split("\n");
  const grown: string[] = [];
  for (let step = first; step !== undefined; step = step.parent) {
    const { start, end } = step.range;
    const isOne = start.line === end.line;
    const head = lines[start.line]?.slice(start.character, isOne ? end.character : undefined);
    grown.push(isOne ? `${head}` : `${head}…${lines[end.line]?.slice(0, end.character)}`);
  }
  return grown;
}

const DAY = `# season
trip 2031-06-21 b charter
  anglers 4
  guest G1 "Marv T"

05:14 set C1 out 90 ft lure "Ash One"  # first
05:18 set P1 out 72 ft

trip 2031-06-22 b
`;

test.each([
  [
    "90 ft",
    "9<|>0 ft",
    [
      "90",
      "out 90 ft",
      '05:14 set C1 out 90 ft lure "Ash One"',
      '05:14 set C1 out 90 ft lure "Ash One"  # first',
      '05:14 set C1 out 90 ft lure "Ash One"  # first…05:18 set P1 out 72 ft',
      "trip 2031-06-21 b charter…05:18 set P1 out 72 ft",
      "# season…trip 2031-06-22 b",
    ],
  ],
  [
    "Ash One",
    "Ash O<|>ne",
    [
      '"Ash One"',
      'lure "Ash One"',
      expect.any(String),
      expect.any(String),
      expect.any(String),
      expect.any(String),
      "# season…trip 2031-06-22 b",
    ],
  ],
  [
    "anglers",
    "ang<|>lers",
    ["anglers", "anglers 4", "  anglers 4", '# season…  guest G1 "Marv T"', "# season…trip 2031-06-22 b"],
  ],
  ["06-22", "06-<|>22", ["2031-06-22", "trip 2031-06-22 b", "# season…trip 2031-06-22 b"]],
])("from %s", (place, marked, wanted) => expect(growth(DAY.replace(place, marked))).toEqual(wanted));

test("from a blank line to its trip", () => {
  expect(growth(DAY.replace('"\n\n05', '"\n<|>\n05'))).toEqual([
    "",
    "trip 2031-06-21 b charter…05:18 set P1 out 72 ft",
    "# season…trip 2031-06-22 b",
  ]);
});

test("several cursors, one beyond the text", () => {
  const at = [
    { line: 0, character: 0 },
    { line: 99, character: 4 },
  ];
  expect(openService("drift").selectionRanges(URI, at)).toHaveLength(2);
});
