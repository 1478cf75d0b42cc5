/** Renaming: every place that means the thing and no other text, quoted where it has to be, and refused with a reason. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { namedPlaces } from "../../server/model/named-places.ts";
import type { Refusal, Renaming } from "../../server/service/rename.ts";
import { workspaceEdit } from "../../server/service/rename.ts";
import { readMarks } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { openWorkspace, pathOf, readWorkspace, type Texts, uriOf } from "./open-workspace.ts";

/** The texts after a renaming. Throws when it was refused. */
function applied(texts: Texts, renaming: Renaming | Refusal | null): Record<string, string> {
  if (renaming === null || "refused" in renaming) throw new Error(renaming?.refused ?? "nothing to rename");
  const after: Record<string, string> = { ...texts };
  for (const { uri, edits } of renaming.files) after[pathOf(uri)] = editText(after[pathOf(uri)] ?? "", edits);
  return after;
}

/** Gives the thing at the cursor a name; every marked place, and nothing else, is then written as `written`. */
function checkRename(marked: Texts, name: string, written = name): void {
  const { texts, path, at } = readWorkspace(marked);
  const after = applied(texts, openWorkspace(texts).rename(uriOf(path), at, name));
  for (const [file, source] of Object.entries(marked)) {
    const { text, ranges } = readMarks(source);
    const pieces = ranges.map(([start], index) => text.slice(ranges[index - 1]?.[1] ?? 0, start) + written);
    expect(after[file], file).toBe(pieces.join("") + text.slice(ranges.at(-1)?.[1] ?? 0));
  }
}

function refusalOf(marked: Texts, name: string): string {
  const { texts, path, at } = readWorkspace(marked);
  const answer = openWorkspace(texts).rename(uriOf(path), at, name);
  return answer !== null && "refused" in answer ? answer.refused : "not refused";
}

describe("edits", () => {
  test("book, trips and calibrations, and nothing that only looks so", () => {
    checkRename(
      {
        "book.gear": `boat Heron
rig <|C1|> downrigger # C1
lure C1 spoon
2031-06-08 calibrate <|C1|> drag 1.3
boat Gull
rig C1 downrigger
`,
        "june.trip": `trip 2031-06-21 Heron
05:14 set <|<|>C1|> out 90 ft lure C1 "C1"
05:30 tangle P1 with <|C1|>
note
  C1 was fine
trip 2031-06-22 Gull
05:14 set C1 out 90 ft
`,
      },
      "Mid",
    );
  });

  test("lines that are not right yet", () => {
    checkRename(
      { "june.trip": "trip 2031-06-21 Heron\n05:14 set <|<|>C1|> outt 90 ft\n05:14 set <|C1|> out 72,5 ft" },
      "Mid",
    );
  });

  test("a boat, in its book and its trips", () => {
    checkRename(
      {
        "book.gear": "boat <|Heron|>\nrig C1 downrigger",
        "june.trip": "trip 2031-06-21 <|<|>Heron|> charter",
      },
      "Bright Penny",
      '"Bright Penny"',
    );
  });

  test("what was typed and isn't saved", () => {
    const saved = {
      "book.gear": "boat Heron\nrig C1 downrigger",
      "june.trip": "trip 2031-06-21 Heron\n05:14 set C1",
    };
    const service = openWorkspace(saved, ["book.gear"]);
    const typed = "boat Heron\n\nrig C1 downrigger\nrig P1U stacked C1";
    service.update(uriOf("book.gear"), 7, typed);
    const renaming = service.rename(uriOf("book.gear"), { line: 2, character: 4 }, "Mid");
    expect(applied({ ...saved, "book.gear": typed }, renaming)).toEqual({
      "book.gear": "boat Heron\n\nrig Mid downrigger\nrig P1U stacked Mid",
      "june.trip": "trip 2031-06-21 Heron\n05:14 set Mid",
    });
    if (renaming === null || "refused" in renaming) throw new Error("refused");
    expect(
      workspaceEdit(renaming, true).documentChanges?.map((one) => "textDocument" in one && one.textDocument),
    ).toEqual([
      { uri: uriOf("book.gear"), version: 7 },
      { uri: uriOf("june.trip"), version: null },
    ]);
    expect(Object.keys(workspaceEdit(renaming, false).changes ?? {})).toEqual([
      uriOf("book.gear"),
      uriOf("june.trip"),
    ]);
  });

  test("beside a byte order mark of an open document", () => {
    const service = openWorkspace({ "june.trip": "\ufefftrip 2031-06-21 Heron" });
    const renaming = service.rename(uriOf("june.trip"), { line: 0, character: 17 }, "Gull");
    expect(applied({ "june.trip": "\ufefftrip 2031-06-21 Heron" }, renaming)["june.trip"]).toBe(
      "\ufefftrip 2031-06-21 Gull",
    );
  });
});

describe("quotes", () => {
  const only = (line: string): Texts => ({ "june.trip": `trip 2031-06-21 Heron\n${line}` });
  test.each([
    ["05:14 set <|<|>C1|> out 72 ft", "my rig", '"my rig"'],
    ["05:14 set <|<|>C1|> out 72 ft", '"my rig"', '"my rig"'],
    ["05:14 set <|<|>C1|> out 72 ft", " #2 ", '"#2"'],
    ["05:14 set <|<|>C1|> out 72 ft", 'a "b" c', '"a ""b"" c"'],
    ['05:14 set <|<|>"C 1"|> out 72 ft', "C1", "C1"],
    ['05:14 set <|<|>"C1"|> out 72 ft', "P1", '"P1"'],
    // Without its quotes this would be a missing rig, or the end of the line.
    ["05:14 set <|<|>C1|> 72 ft", "out", '"out"'],
    ["05:14 set <|<|>C1|> out 72 ft", "out", "out"],
    ["05:14 set P1 lure <|<|>fly|> 72 ft", "out", '"out"'],
    ["05:14 set <|<|>C1|> out 72 ft", "C1,", '"C1,"'],
  ])("%s as %j", (line, name, written) => checkRename(only(line), name, written));

  test("a guest's name goes without its word only in quotes", () => {
    checkRename(only('  guest G1 <|"Marv <|>Tessler"|>'), "Marv", '"Marv"');
    checkRename(only('  guest G1 named <|"Marv <|>Tessler"|>'), "Marv");
  });
});

describe("refused", () => {
  const BOOK =
    "boat Heron\nrig C1 downrigger\nrig P1 downrigger\ncable wire steel\nlure fly fly\nnickname big chinook\n";
  const TRIP = "trip 2031-06-21 Heron\n  mate Dov\n  guest G1\n05:14 set <|>C1 lure fly";
  const at = (from: string, to: string): Texts => ({
    "book.gear": BOOK,
    "june.trip": TRIP.replace("<|>", "").replace(from, to),
  });
  test.each([
    ["", "05:14 set <|>C1", "A name needs"],
    ["a\nb", "05:14 set <|>C1", "stands on one line"],
    ["a\u202eb", "05:14 set <|>C1", "invisible characters"],
    [
      "all",
      "05:14 set <|>C1",
      '"all" can\'t be the name of a rig: in a log it means every rig in the water.',
    ],
    ["P1", "05:14 set <|>C1", '"P1" is already the name of a rig: book.gear, line 3.'],
    ["p1", "05:14 set <|>C1", '"p1" differs only in capitals from "P1", a rig: book.gear, line 3.'],
    ["wire", "05:14 set <|>C1", '"wire" is already the name of a cable: book.gear, line 4.'],
    ["x".repeat(20_001), "05:14 set <|>C1", "would read differently: book.gear, line 2."],
  ])("%j", (name, line, reason) => {
    expect(refusalOf(at("05:14 set C1", line), name)).toContain(reason);
  });

  test("a name that some trip uses already", () => {
    const texts = { ...at("set C1", "set <|>C1"), "july.trip": "trip 2031-07-21 Heron\n\n05:14 set X9" };
    expect(refusalOf(texts, "X9")).toContain('"X9" is already the name of a rig: july.trip, line 3.');
    expect(refusalOf({ ...texts, "july.trip": "trip 2031-07-21 Gull\n05:14 set X9" }, "X9")).toBe(
      "not refused",
    );
  });

  test("what a book defines, for a name that none does", () => {
    expect(
      refusalOf({ "book.gear": BOOK, "june.trip": "trip 2031-06-21 Heron\n05:14 set <|>X9" }, "C1"),
    ).toContain("book.gear, line 2");
  });

  test("what another book defines where both are read", () => {
    const texts = {
      "all.gear": "boat Heron\nrig A downrigger",
      "late/late.gear": "boat Heron\nrig <|>B downrigger",
      "late/august.trip": "trip 2031-08-21 Heron\n05:14 set B",
    };
    expect(refusalOf(texts, "A")).toContain("all.gear, line 2");
    expect(
      refusalOf(
        {
          ...texts,
          "all.gear": "boat Heron\nrig <|>A downrigger",
          "late/late.gear": "boat Heron\nrig B downrigger",
        },
        "B",
      ),
    ).toContain("late.gear, line 2");
  });

  test("fish by their own names, and nicknames that are another's", () => {
    expect(refusalOf({ "june.trip": "trip 2031-06-21 Heron\n05:14 catch C1 <|>king" }, "x")).toContain(
      "nickname WORD chinook",
    );
    const nickname = { "book.gear": BOOK.replace("big", "<|>big") };
    expect(refusalOf(nickname, "silver")).toContain('"silver" already means coho everywhere');
    expect(refusalOf(nickname, "king")).toBe("not refused");
    expect(refusalOf(nickname, "Fish")).toContain("nobody saw what it was");
  });

  test("the crew's words for a guest, and a name that is aboard already", () => {
    const guest = at("guest G1", "guest <|>G1");
    expect(refusalOf(guest, "mate")).toContain("the mate of the trip");
    expect(refusalOf(guest, "Dov")).toContain("june.trip, line 2");
    expect(refusalOf(guest, "G2")).toBe("not refused");
  });

  test("a boat that there is", () => {
    const texts = { "book.gear": "boat <|>Heron", "july.trip": "trip 2031-07-21 Gull" };
    expect(refusalOf(texts, "Gull")).toContain("july.trip, line 1");
  });

  test("when a file that would have to change can't be read", () => {
    const texts = {
      "book.gear": "boat Heron\nrig C1 downrigger",
      "june.trip": "trip 2031-06-21 Heron\n05:14 set C1",
    };
    const unread = new Set([uriOf("june.trip")]);
    const service = openWorkspace(texts, ["book.gear"], { unread });
    expect(service.rename(uriOf("book.gear"), { line: 1, character: 4 }, "Mid")).toEqual({
      refused: expect.stringContaining("june.trip can't be read"),
    });
  });
});

describe("before a name is typed", () => {
  test("the whole name is shown, without its quotes", () => {
    const { texts, path, at } = readWorkspace({ "june.trip": 'trip 2031-06-21 "Bright <|>Penny"' });
    const range = { start: { line: 0, character: 16 }, end: { line: 0, character: 30 } };
    expect(openWorkspace(texts).prepareRename(uriOf(path), at)).toEqual({
      range,
      placeholder: "Bright Penny",
    });
  });

  test.each([
    "05:14 s<|>et C1",
    "05:14 set C1 out <|>90 ft",
    "08:05 pull <|>all",
    "05:14 set C1 lure <|>none",
    "05:14 catch C1 king by <|>mate",
    "05:14 catch C1 king picture <|>a.jpg",
    "# <|>C1",
  ])("nothing to rename: %s", (line) => {
    const { texts, path, at } = readWorkspace({ "june.trip": `trip 2031-06-21 Heron\n${line}` });
    expect(openWorkspace(texts).prepareRename(uriOf(path), at)).toBeNull();
    expect(openWorkspace(texts).rename(uriOf(path), at, "x")).toBeNull();
  });

  test("a fish keeps its name", () => {
    const { texts, path, at } = readWorkspace({
      "june.trip": "trip 2031-06-21 Heron\n05:14 catch C1 <|>coho",
    });
    expect(openWorkspace(texts).prepareRename(uriOf(path), at)).toEqual({
      refused: expect.stringContaining("coho"),
    });
  });
});

describe("on the season of the examples", () => {
  const FOLDER = join(import.meta.dirname, "..", "..", "examples", "bright-penny");
  const season: Texts = Object.fromEntries(
    readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(?:trip|gear)$/u.test(name))
      .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(FOLDER, name), "utf8")]),
  );
  /** Every name of the season, once. */
  const places = Object.entries(season).flatMap(([path, text]) =>
    namedPlaces(parse(text)).map(({ kind, name, range }) => ({
      path,
      kind,
      name,
      at: { line: range.lineIndex, character: range.start },
    })),
  );
  const distinct = [...new Map(places.map((place) => [`${place.kind} ${place.name}`, place])).values()];
  const fresh = fc.oneof(
    fc.constantFrom(
      "out",
      "Mid 2",
      "#1",
      "to",
      "72",
      "set",
      "\u00e9",
      'a "b"',
      "C1,",
      "lure",
      "5:14",
      "2031-06-21",
      "x",
    ),
    fc.string({ minLength: 1, maxLength: 12 }).filter((name) => !/^\s*".*"\s*$/u.test(name)),
  );
  const cases = fc.tuple(fc.constantFrom(...distinct), fresh);

  /** Findings without what they say: names stand in the words and move the columns. */
  const findingsOf = (texts: Texts): string[] => {
    const service = openWorkspace(texts);
    return Object.keys(texts).flatMap((path) =>
      service
        .diagnostics(uriOf(path))
        .map(({ code, range, severity }) => `${path}:${range.start.line} ${code} ${severity}`),
    );
  };

  test("a name given and taken back leaves the very text", () => {
    let given = 0;
    fc.assert(
      fc.property(cases, ([{ path, name, at }, other]) => {
        const there = openWorkspace(season).rename(uriOf(path), at, other);
        if (there === null || "refused" in there) return;
        const between = applied(season, there);
        const back = openWorkspace(between).rename(uriOf(path), placeAfter(between, path, at, other), name);
        expect(applied(between, back)).toEqual(season);
        given++;
      }),
      { seed: 5, numRuns: 40 },
    );
    expect(given).toBeGreaterThan(20);
  });

  test("in files that aren't open as in those that are, without reading them whole", () => {
    const read: string[] = [];
    let edited = 0;
    for (const { path, at } of distinct.filter((_, n) => n % 8 === 0)) {
      const open = openWorkspace(season).rename(uriOf(path), at, "another");
      const service = openWorkspace(season, [path], { onRead: (uri) => read.push(uri) });
      const closed = service.rename(uriOf(path), at, "another");
      if (open === null || closed === null || "refused" in open || "refused" in closed) continue;
      const editsOf = ({ files }: typeof open) =>
        Object.fromEntries(files.map(({ uri, edits }) => [uri, edits]));
      expect(editsOf(closed)).toEqual(editsOf(open));
      edited += closed.files.filter(({ version }) => version === null).length;
    }
    expect(edited).toBeGreaterThan(5);
    // What a book says of gear is read to tell names apart; of a log only the lines that change.
    const logs = Object.keys(season).filter(
      (path) => !/^(?:\S+ )?(?:boat|rig|cable|ball|lure|line|spot) /mu.test(season[path] ?? ""),
    );
    expect(logs.length).toBeGreaterThan(1);
    expect(read.map(pathOf).filter((path) => logs.includes(path))).toEqual([]);
  });

  test("what is found stays the same but for the name", () => {
    const before = findingsOf(season);
    expect(before.length).toBeGreaterThan(10);
    for (const [name, other] of [
      ["C1", "Mid 2"],
      ["round-12", "out"],
      ["glow-spoon", "72"],
      ["rigger-wire", "w"],
      ["king", "big one"],
      ["Bright Penny", "Heron"],
    ] as const) {
      const place = distinct.find((one) => one.name === name);
      if (place === undefined) throw new Error(`${name} is not in the season`);
      expect(
        findingsOf(applied(season, openWorkspace(season).rename(uriOf(place.path), place.at, other))),
        name,
      ).toEqual(before);
    }
  });

  /** The name's column again: names before it on its line may have grown. */
  function placeAfter(
    texts: Texts,
    path: string,
    { line }: { line: number },
    name: string,
  ): { line: number; character: number } {
    const wanted = name.trim().normalize("NFC");
    const found = namedPlaces(parse(texts[path] ?? "")).find(
      ({ range, name: one }) => range.lineIndex === line && one === wanted,
    );
    if (found === undefined) throw new Error(`${name} is not in ${path}:${line}`);
    return { line, character: found.range.start };
  }
});
