/** "Set for 55 ft": what is offered, what it writes, and that the line then runs at that depth. */
import { describe, expect, test } from "vitest";
import type { CodeAction } from "vscode-languageserver-types";
import { readRange } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { BOOK, MORNING, openService, positionAt, URI } from "./open-service.ts";

const KIND = ["refactor.rewrite"];
/** The morning's depths lean on its probe line. */
const LATER = MORNING.replace("05:58 strike P1\n06:14 catch P1 king 18 lb 35 in kept by G1\n", "");

function actionsAt(source: string, book = BOOK, before = LATER): { text: string; actions: CodeAction[] } {
  const { text, start, stop } = readRange(before + source);
  const range = { start: positionAt(text, start), end: positionAt(text, stop) };
  return { text, actions: openService(text, { book }).codeActions(URI, range, KIND) };
}

const titles = (source: string, book?: string, before?: string): string[] =>
  actionsAt(source, book, before)
    .actions.map(({ title }) => title.replace(/\(.*? out\)$/u, "(N out)"))
    .filter((title) => title.startsWith("Set for"));

function written(source: string, title: RegExp, book?: string): string {
  const { text, actions } = actionsAt(source, book);
  const action = actions.find((one) => title.test(one.title));
  return editText(text, action?.edit?.changes?.[URI] ?? []).slice(LATER.length);
}

test("the next five feet up and down of what the lure runs at", () => {
  expect(titles("06:00 move <||>C1 out 80 ft")).toEqual(["Set for 75 ft (N out)", "Set for 80 ft (N out)"]);
});

test("writes the number alone, in the unit that was typed", () => {
  expect(written("06:00 move <||>C1 out 80 ft setback 20 ft # deeper", /^Set for 80 ft/u)).toMatch(
    /^06:00 move C1 out 8\d ft setback 20 ft # deeper$/u,
  );
  expect(written("06:00 move <||>C1 out 24.5m", /^Set for 80 ft/u)).toMatch(/^06:00 move C1 out 2\dm$/u);
  expect(written("06:00 move <||>C1 out 80", /^Set for 80 ft/u)).toMatch(/^06:00 move C1 out 8\d$/u);
});

test("the line then runs at that depth", () => {
  const after = written("06:00 move <||>C1 out 50 ft", /^Set for 50 ft/u);
  const hints = openService(LATER + after).inlayHints(URI, {
    start: { line: 9, character: 0 },
    end: { line: 9, character: 0 },
  });
  expect(hints.map(({ label }) => label)).toEqual([expect.stringMatching(/lure (?:49|50|51) ft/u)]);
});

describe("a line without the length restates it, right behind the rig", () => {
  test("again", () => {
    expect(titles("06:00 again <||>P1")).toEqual(["Set for 65 ft (N out)", "Set for 70 ft (N out)"]);
    expect(written("06:00 again <||>P1 lure glow-spoon # back", /^Set for 70 ft/u)).toMatch(
      /^06:00 again P1 out 7\d ft lure glow-spoon # back$/u,
    );
  });

  test("a move of something else", () => {
    expect(written("06:00 move <||>P1 setback 25 ft", /^Set for 70 ft/u)).toMatch(
      /^06:00 move P1 out 7\d ft setback 25 ft$/u,
    );
  });

  test("and not where it would stay as it is", () => {
    const marks = "05:55 sonar bottom 150 ft marks 60 to 70 ft\n";
    const first = written(`${marks}06:00 again <||>P1`, /middle of the marks/u);
    const out = /out (\d+ ft)/u.exec(first)?.[1] ?? "";
    const before = `${LATER}05:50 move P1 out ${out}\n${marks}`;
    expect(titles("06:00 again <||>P1", BOOK, before)).not.toContain(
      "Set for 65 ft, the middle of the marks (N out)",
    );
  });

  test("leadcore in colors", () => {
    const before = `${LATER}05:50 set PB out 5 colors lure glow-spoon\n05:55 pull PB\n`;
    const { text, actions } = actionsAt("06:00 again <||>PB", BOOK, before);
    const after = editText(text, actions[0]?.edit?.changes?.[URI] ?? []);
    expect(after.split("\n").at(-1)).toMatch(/^06:00 again PB out \d(?:\.5)? colors?$/u);
  });
});

describe("a stacked rod is clipped higher or lower, its ball stays", () => {
  const STACKED = "06:00 set <||>P1U above 20 ft setback 15 ft lure glow-spoon";

  test("the number alone, in its unit", () => {
    expect(titles(STACKED).map((title) => title.replace(/\d+ ft above/u, "N above"))).toEqual([
      "Set for 45 ft (N above the ball)",
      "Set for 50 ft (N above the ball)",
    ]);
    expect(written(STACKED, /^Set for 45 ft/u)).toMatch(
      /^06:00 set P1U above 2\d ft setback 15 ft lure glow-spoon$/u,
    );
    expect(written(STACKED.replace("20 ft", "6 m"), /^Set for 45 ft/u)).toMatch(
      /^06:00 set P1U above \d m setback 15 ft lure glow-spoon$/u,
    );
  });

  test("the lure then runs at that depth", () => {
    const after = written(STACKED, /^Set for 45 ft/u);
    const hints = openService(LATER + after).inlayHints(URI, {
      start: { line: 9, character: 0 },
      end: { line: 9, character: 0 },
    });
    expect(hints.map(({ label }) => label)).toEqual([expect.stringMatching(/lure (?:44|45|46) ft/u)]);
  });

  test("restated on its again line; cable out is never written there", () => {
    const set = `${STACKED.replace("<||>", "")}\n06:10 strike P1U\n`;
    expect(
      written(`${set}06:20 again <||>P1U`, /^Set for 45 ft/u)
        .split("\n")
        .at(-1),
    ).toMatch(/^06:20 again P1U above 2\d ft$/u);
  });

  test("no deeper than at the ball", () => {
    // P1's own ball is at about 68 ft, and the spoon runs 3 ft below its clip.
    expect(titles(STACKED.replace("above 20 ft", "above 1 ft"))).toEqual([
      expect.stringMatching(/^Set for 65 ft \(\d ft above the ball\)$/u),
    ]);
  });
});

test("leadcore by half colors, and its backing where the colors don't do", () => {
  const book = BOOK.replace(
    "rig PB leadcore port holds 10 colors",
    "cable back-30 braid diameter 0.3 mm\nrig PB leadcore port backing back-30 holds 10 colors",
  );
  expect(written("06:00 set <||>PB out 5 colors lure glow-spoon", /^Set for 30 ft/u)).toMatch(
    /^06:00 set PB out \d(?:\.5)? colors lure glow-spoon$/u,
  );
  expect(written("06:00 set <||>PB out 10 colors 40 ft lure glow-spoon", /\d/u, book)).toMatch(
    /^06:00 set PB out \d+(?:\.5)? colors(?: \d+ ft)? lure glow-spoon$/u,
  );
});

test("the middle of the latest marks, and the water the target likes", () => {
  const marks = "05:50 sonar bottom 150 ft marks 50 to 60 ft\n05:55 sonar marks 60 to 70 ft\n";
  expect(titles(`${marks}06:00 move <||>C1 out 80 ft`)).toContain(
    "Set for 65 ft, the middle of the marks (N out)",
  );
  // 50 F at 61 ft by the profile, 43 F at its end.
  const book = `${BOOK}band lake-trout 45 to 50 F\n`;
  expect(titles("06:00 move <||>C1 out 80 ft", book)).toContain(
    "Set for 75 ft, lake-trout water of 45 to 50 F (N out)",
  );
});

describe("offers nothing", () => {
  test.each([
    ["on a stacked rod that says nothing of its clip", "06:00 set <||>P1U setback 15 ft lure glow-spoon"],
    ["on a rod that isn't out", "06:00 again <||>PB"],
    ["on a line without a depth", "06:00 move <||>D9 out 80 ft"],
    ["on other lines", "06:00 probe <||>C1 depth 80 ft speed 2.4 mph"],
    ["where a word can't be read", "06:00 move <||>C1 out 80 ft setback 20,5 ft"],
  ])("%s", (_, source) => expect(titles(source)).toEqual([]));

  test("below the bottom", () => {
    expect(titles("05:50 sonar bottom 78 ft\n06:00 move <||>C1 out 80 ft")).toEqual([
      "Set for 75 ft (N out)",
    ]);
  });
});
