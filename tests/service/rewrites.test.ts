/** Actions that write a line or a trip another way with the same meaning: units, canonical form, order of time. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CodeAction } from "vscode-languageserver-types";
import { readCursor } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { MORNING, openService, positionAt, URI } from "./open-service.ts";

const REWRITE = ["refactor.rewrite"];

function actionsAt(source: string, above = MORNING): { text: string; actions: CodeAction[] } {
  const { text, offset } = readCursor(above + source);
  const at = positionAt(text, offset);
  return { text, actions: openService(text).codeActions(URI, { start: at, end: at }, REWRITE) };
}

const titlesAt = (source: string, start: string, above?: string): string[] =>
  actionsAt(source, above)
    .actions.map(({ title }) => title)
    .filter((title) => title.startsWith(start));

/** The text below what stands above, after the action whose title starts so. */
function taken(source: string, start: string, above = MORNING): string {
  const { text, actions } = actionsAt(source, above);
  const action = actions.find(({ title }) => title.startsWith(start));
  if (action === undefined) throw new Error(`no action ${start} among ${actions.map(({ title }) => title)}`);
  return editText(text, action.edit?.changes?.[URI] ?? []).slice(above.length);
}

describe("units", () => {
  test.each([
    ["06:20 move<|> C1 out 95 ft setback 20 ft", "Write ft as m", "06:20 move C1 out 29.0 m setback 6.1 m"],
    ["06:20 move C1 out 95<|>ft # deep", "Write ft as m", "06:20 move C1 out 29.0 m # deep"],
    ["06:20 gps<|> speed 2.4 mph", "Write mph as kn", "06:20 gps speed 2.1 kn"],
    ["06:20 gps<|> speed 2.4 mph", "Write mph as km/h", "06:20 gps speed 3.9 km/h"],
    [
      "06:20 sonar<|> marks 65 to 80 ft, bait 50 ft",
      "Write ft as m",
      "06:20 sonar marks 19.8 to 24.4 m, bait 15.2 m",
    ],
    ["06:20 sonar<|> marks 65 ft to 80 ft", "Write ft as m", "06:20 sonar marks 19.8 m to 24.4 m"],
    ["06:20 profile<|> 0 ft 61 F, 50 ft 52 F", "Write F as C", "06:20 profile 0 ft 16 C, 50 ft 11 C"],
    ["06:20 profile<|> 0 ft 61 F, 50 ft 52 F", "Write ft as m", "06:20 profile 0.0 m 61 F, 15.2 m 52 F"],
    ["06:20 dock<|> king 17 lb 8 oz", "Write lb as kg", "06:20 dock king 7.94 kg"],
    ["06:20 catch C1 king 18 lb 35<|> in", "Write in as cm", "06:20 catch C1 king 18 lb 89 cm"],
    [
      "06:20 weather<|> wind SW 8 kn waves 1 to 2 ft",
      "Write kn as mph",
      "06:20 weather wind SW 9 mph waves 1 to 2 ft",
    ],
  ])("%s: %s", (source, start, wanted) => expect(taken(source, start)).toBe(wanted));

  test("of the measure at the cursor, else of all on the line", () => {
    expect(titlesAt("06:20 catch C1 king 18 lb<|> 35 in", "Write")).toEqual([
      "Write lb as kg (18 lb is 8 kg)",
    ]);
    expect(titlesAt("06:20 ca<|>tch C1 king 18 lb 35 in", "Write")).toEqual([
      "Write lb as kg (18 lb is 8 kg)",
      "Write in as cm (35 in is 89 cm)",
    ]);
  });
  test.each([
    "06:20 move<|> C1 out 95",
    "06:20 move<|> PB out 5 colors",
    "06:20 move<|> PB out 5 colors 20 ft",
    "06:20 change<|> C1 down 4 min",
    "06:20 move<|> C1 out 72,5 ft",
    "06:20 move C1 oot 5 setback 20 ft<|>",
    "# 20 ft<|>",
  ])("none for %s", (source) => expect(titlesAt(source, "Write")).toEqual([]));

  test("none that would join two measures into one", () => {
    expect(titlesAt("06:20 set C1 setback 20 ft 1 yd<|>", "Write ft as m")).toEqual([]);
  });

  test("there and back a line means the same", () => {
    const amount = fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 0, max: 1 }));
    fc.assert(
      fc.property(amount, ([digits, decimals]) => {
        const number = (digits / 10 ** decimals).toFixed(decimals);
        const there = taken(`06:20 move<|> C1 out ${number} ft`, "Write ft as m");
        const back = taken(there.replace("move", "move<|>"), "Write m as ft");
        const value = Number(/out ([\d.]+) ft/u.exec(back)?.[1]);
        expect(Math.abs(value - Number(number))).toBeLessThanOrEqual(10 ** -decimals * 1.0000001);
      }),
      { seed: 8, numRuns: 40 },
    );
  });
});

describe("canonical form", () => {
  test("of the line", () => {
    expect(taken("6:20 STRIKE C1<|>\n6:21 miss C1", "Tidy this line")).toBe("06:20 strike C1\n6:21 miss C1");
  });
  test("of the trip, not of the next", () => {
    const next = "\ntrip  2031-06-22 b";
    expect(taken(`6:20 strike C1\n06:21 drift<|>${next}`, "Tidy this trip")).toBe(
      `06:20 strike C1\n06:21 drift${next}`,
    );
  });
  test.each(["06:20 strike C1<|>", "6:20 strike C1, 5<|>"])("none for %s", (source) =>
    expect(titlesAt(source, "Tidy")).toEqual([]),
  );
  test("none outside of a trip for the trip", () => {
    expect(titlesAt("cable  a steel<|>", "Tidy", "")).toEqual(["Tidy this line"]);
  });
});

describe("order of time", () => {
  const OPENER = "trip 2031-06-21 b\n  anglers 4\n\n";
  const sorted = (source: string): string => taken(`${source}<|>`, "Sort this trip by time", OPENER);
  const isOffered = (source: string): boolean => titlesAt(`${source}<|>`, "Sort", OPENER).length > 0;

  test("with remarks above, notes, lines without a clock; blank lines stay", () => {
    expect(
      sorted(
        "05:00 drift\n\n# third\n05:30 drift\nwhat is this\n05:10 note\n  its text\n\n  more\nrun\n05:20 drift  # last\n",
      ),
    ).toBe(
      "05:00 drift\n\n05:10 note\n  its text\n\n  more\nrun\n05:20 drift  # last\n# third\n05:30 drift\nwhat is this\n",
    );
  });
  test("only this trip", () => {
    const next = "trip 2031-06-22 b\n06:00 drift\n05:00 drift";
    expect(taken(`05:20 drift<|>\n05:10 drift\n${next}`, "Sort", OPENER)).toBe(
      `05:10 drift\n05:20 drift\n${next}`,
    );
  });
  test("gear among the lines stays with the line above it", () => {
    expect(sorted("05:20 drift\n05:10 drift\nlure a spoon")).toBe("05:10 drift\nlure a spoon\n05:20 drift");
  });
  test.each([
    ["in order", "05:00 drift\n05:10 drift\n05:10 run"],
    ["an afternoon like a morning", "11:50 drift\n1:10 drift\n14:00 drift"],
    ["an indented line that a note would swallow", "05:00 drift\n  05:20 drift\n05:10 note"],
  ])("not offered: %s", (_, source) => expect(isOffered(source)).toBe(false));

  test("any order of lines ends in one, with nothing lost, and is then in order", () => {
    const lines = [
      "05:00 drift",
      "05:10 note\n  05:00 text\n\n  text",
      "# r\n05:20 run",
      "05:30 birds some",
      "",
      "weeds light",
      "bad line",
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray(lines, { minLength: 4 }), (shuffled) => {
        const body = shuffled.join("\n");
        if (!isOffered(body)) return;
        const after = sorted(body);
        expect(after.split("\n").sort()).toEqual(body.split("\n").sort());
        const clocks = [...after.matchAll(/^05:\d\d/gmu)].map(([clock]) => clock);
        expect(clocks).toEqual([...clocks].sort());
        expect(isOffered(after)).toBe(false);
      }),
      { seed: 3, numRuns: 60 },
    );
  });
});
