/** What completion offers, exactly and in order, and what it writes. */

import { describe, expect, test } from "vitest";
import type { CompletionItem } from "vscode-languageserver-types";
import { CATALOG } from "../../server/checks/catalog.ts";
import { SPECIES } from "../../server/model/species.ts";
import { THRESHOLDS } from "../../server/model/thresholds.ts";
import { readCursor } from "../harness/markers.ts";
import { BOOK, BOOK_URI, MORNING, openService, positionAt, URI } from "./open-service.ts";

const NONE: string[] = [];

function completeAt(source: string, above: string): { text: string; items: CompletionItem[] } {
  const { text, offset } = readCursor(above + source);
  const items = openService(text).completion(URI, positionAt(text, offset));
  return { text: text.slice(above.length), items };
}

/** The labels in the order an editor sorts them. */
function labels(source: string, above = MORNING): string[] {
  const { items } = completeAt(source, above);
  const sorted = [...items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
  expect(sorted).toEqual(items);
  return items.map(({ label }) => label);
}

function checkCompletion(source: string, wanted: readonly string[], above?: string): void {
  expect(labels(source, above)).toEqual(wanted);
}

function checkFirst(source: string, wanted: readonly string[], above?: string): void {
  expect(labels(source, above).slice(0, wanted.length)).toEqual(wanted);
}

/** Takes the offer with that label and compares the line. */
function checkTaken(source: string, label: string, wanted: string): void {
  const { text, items } = completeAt(source, MORNING);
  const edit = items.find((item) => item.label === label)?.textEdit;
  if (edit === undefined || !("range" in edit)) throw new Error(`${label} isn't offered`);
  const { start, end } = edit.range;
  expect(text.slice(0, start.character) + edit.newText + text.slice(end.character)).toBe(wanted);
}

const EVENTS =
  "set move again change check pull tangle broke strike miss catch lost box dock weigh-in probe touch surface gps " +
  "sonar profile weather water birds fleas weeds depart return run drift turn serviced note";
const GEAR = "cable line ball lure rig nickname band limit upkeep spot calibrate";

describe("lines", () => {
  test("in a trip its next times come first, then its events", () => {
    const times = ["06:30", "06:15", "06:14"];
    checkCompletion("<|>", [...times, ...EVENTS.split(" "), "boat", "trip", ...GEAR.split(" ")]);
  });
  test("after a clock only events", () => {
    checkCompletion("06:20 <|>", EVENTS.split(" "));
    checkCompletion("2031-06-22 00:20 se<|>", EVENTS.split(" "));
  });
  test("in a book its gear comes first", () => {
    checkCompletion("<|>", [...GEAR.split(" "), "boat", "trip"], BOOK);
  });
  test("an empty file starts with what opens one", () => checkFirst("<|>", ["boat", "trip", "cable"], ""));
  test("properties under a trip and under a boat", () => {
    checkFirst("  <|>", ["harbor", "grid", "zone", "captain"], "trip 2031-06-21 boat\n");
    checkFirst("  <|>", ["units", "water", "zone"], "boat b\n");
  });
  test("while a clock is typed, the times it can become; nothing while a date is", () => {
    checkCompletion("06<|>", ["06:30", "06:15", "06:14"]);
    checkCompletion("06:1<|>", ["06:15", "06:14"]);
    checkCompletion("06:2<|>", NONE);
    checkCompletion("2031-06-21<|>", NONE);
  });
});

describe("rigs", () => {
  test("moved: those in the water, the fishing first", () => {
    checkCompletion("06:20 move <|>", ["C1", "P1"]);
    checkCompletion("06:20 again P1\n06:30 move <|>", ["C1", "P1"]);
  });
  test("set: those not in the water", () => checkCompletion("06:20 set <|>", ["P1U", "PB"]));
  test("put back: those that wait for it", () => {
    checkCompletion("06:20 again <|>", ["P1"]);
    checkCompletion("06:20 strike C1\n06:21 tangle C1\n06:30 again <|>", ["C1", "P1"]);
  });
  test("struck: those that fish", () => checkCompletion("06:20 strike <|>", ["C1"]));
  test("caught or lost: the one with the fish on first, none that waits", () => {
    for (const verb of ["catch", "lost"]) checkCompletion(`06:20 ${verb} <|>`, ["C1"]);
    checkCompletion("06:20 again P1\n06:22 strike P1\n06:23 catch <|>", ["P1", "C1"]);
  });
  test("pulled: those in the water, and all of them", () => {
    checkCompletion("06:20 pull <|>", ["C1", "P1", "all"]);
    checkCompletion("06:20 again P1\n06:21 set PB\n06:22 pull C1\n06:23 pull <|>", ["P1", "PB", "all"]);
  });
  test("every rig where none fits", () => {
    checkCompletion("06:20 pull all\n06:30 move <|>", ["C1", "P1", "P1U", "PB"]);
    checkCompletion("06:20 again P1\n06:30 again <|>", ["C1", "P1", "P1U", "PB"]);
  });
  test("not a rig with itself", () => checkCompletion("06:20 tangle P1 with <|>", ["C1"]));
  test("what the line itself does is not yet done", () => {
    checkCompletion("06:20 set P<|>B", ["P1U", "PB"]);
    checkCompletion("06:20 strike C<|>1", ["C1"]);
  });
});

describe("rigs at the minute of the line, wherever it stands in the file", () => {
  const LATER = "06:20 again P1\n06:40 pull C1\n07:00 pull all\n";
  test.each([
    ["05:13 strike <|>", ["C1", "P1", "P1U", "PB"]],
    ["05:16 strike <|>", ["C1"]],
    ["05:20 strike <|>", ["C1", "P1"]],
    ["06:00 strike <|>", ["C1"]],
    ["06:30 strike <|>", ["C1", "P1"]],
    ["06:45 strike <|>", ["P1"]],
    ["06:40 pull <|>", ["P1", "all"]],
  ])("%s", (source, wanted) => checkCompletion(LATER + source, wanted));

  test("a line without a clock stands where it is", () => {
    checkCompletion("pull C1\nmove <|>\n06:20 set C1 out 5 ft", ["P1"]);
  });
});

describe("times", () => {
  const at = (clock: string) => Date.parse(`2031-06-21T${clock}:30-04:00`);
  function checkTimes(source: string, now: number | undefined, wanted: readonly string[]): void {
    const { text, offset } = readCursor(MORNING + source);
    const service = openService(text, now === undefined ? {} : { now: () => now });
    const items = service.completion(URI, positionAt(text, offset));
    expect(items.map(({ label }) => label).filter((label) => /\d:\d\d$/u.test(label))).toEqual(wanted);
  }

  test("as long on as the step before, a minute on, the same minute", () => {
    checkTimes("06:20 again P1\n<|>", undefined, ["06:26", "06:21", "06:20"]);
    checkTimes("06:20 again P1\n06:20 drift\n<|>", undefined, ["06:26", "06:21", "06:20"]);
    checkTimes("09:20 again P1\n<|>", undefined, ["09:21", "09:20"]);
    checkTimes("06:20 again P1\ndrift\n<|>", undefined, ["06:26", "06:21", "06:20"]);
  });
  test("the time now first, while the trip is under way", () => {
    checkTimes("<|>", at("06:52"), ["06:52", "06:30", "06:15", "06:14"]);
    checkTimes("<|>", at("05:00"), ["06:30", "06:15", "06:14"]);
    checkTimes("<|>", at("23:00"), ["06:30", "06:15", "06:14"]);
    checkTimes("<|>", at("06:14"), ["06:14", "06:30", "06:15"]);
  });
  test("past midnight with the date", () => {
    checkTimes("23:59 drift\n<|>", undefined, ["2031-06-22 00:00", "23:59"]);
  });
  test("none in a repeated hour: the clock alone would not say which", () => {
    const text = 'trip 2031-11-02 "Bright Penny"\n00:59 drift\n';
    const items = openService(text).completion(URI, { line: 2, character: 0 });
    expect(items.map(({ label }) => label).filter((label) => label.includes(":"))).toEqual(["00:59"]);
  });
  test("not under an opener, in a property, in a book", () => {
    checkFirst("  <|>", ["harbor"], "trip 2031-06-21 boat\n");
    checkFirst("06<|>", [], BOOK);
  });
  test("taken, it is ready for the verb", () => checkTaken("06<|>", "06:30", "06:30 "));
});

const SET_WORDS =
  "out above dial board setback anglers shallow on-bottom lure flasher leader slider fixed ball sure".split(
    " ",
  );

describe("after a rig", () => {
  test("the last values on it come first, all at once before", () => {
    checkCompletion("06:20 set P1 <|>", [
      "out 72 ft setback 15 ft lure glow-spoon",
      "out 72 ft",
      "setback 15 ft",
      "lure glow-spoon",
      ...SET_WORDS,
    ]);
  });
  test("a rig that was never set has only words", () => checkCompletion("06:20 set PB <|>", SET_WORDS));
  test("what is given isn't offered again", () => {
    checkCompletion("06:20 move P1 out 80 ft <|>", [
      "setback 15 ft",
      ..."above dial board setback anglers shallow on-bottom sure".split(" "),
    ]);
    const fate = labels("06:20 catch P1 king kept <|>");
    expect(fate).not.toContain("released");
    expect(fate).toContain("alive");
  });
  test("also after a word that isn't known", () => checkFirst("06:20 set P1 oot 5 lure <|>", ["glow-spoon"]));
});

describe("units", () => {
  const lengths = ["ft", "in", "yd", "fathoms", "colors", "mm", "cm", "m", "km", "mi", "nmi"];
  test("of the number's dimension, the boat's first", () => {
    checkFirst("06:20 move P1 out 80 <|>", [...lengths, "setback 15 ft"]);
    checkFirst("06:20 probe C1 speed 2.4 <|>", ["mph", "kn", "km/h", "m/s", "depth"]);
    checkFirst("06:20 probe C1 temp 48 <|>", ["F", "C", "depth"]);
    checkFirst("06:20 catch P1 king length 30 <|>", ["in", "ft"]);
    checkFirst("06:20 change C1 down 4 <|>", ["h", "min"]);
  });
  test("of everything that the number may measure", () => {
    checkFirst("06:20 catch P1 king 14 <|>", ["lb", "oz"]);
    expect(labels("06:20 catch P1 king 14 <|>")).toContain("in");
  });
  test("of leadcore colors first", () => checkFirst("06:20 set PB out 5 <|>", ["colors", "ft"]));
  test("run into the number", () => {
    checkCompletion("06:20 move P1 out 80f<|>", lengths);
    checkTaken("06:20 move P1 out 80f<|>", "ft", "06:20 move P1 out 80 ft");
  });
  test("a range goes on with to", () => {
    checkFirst("06:20 sonar marks 65 ft <|>", ["to", "bottom"]);
    checkFirst("06:20 sonar marks 65 <|>", [...lengths, "to"]);
    checkCompletion("06:20 sonar marks 65 to <|>", NONE);
    checkFirst("06:20 sonar marks 65 to 80 <|>", [...lengths, "bottom"]);
  });
  test("a name may look like a number with a unit", () => checkCompletion("06:20 move 2f<|>", ["C1", "P1"]));
});

test("what stands behind the cursor is not offered again", () => {
  const offered = labels("06:20 move P1 <|> out 80 ft");
  expect(offered).not.toContain("out 72 ft");
  expect(offered).not.toContain("out");
  expect(offered).toContain("setback");
});

describe("values", () => {
  test("the last on that rig first", () => {
    checkCompletion("06:20 set C1 lure <|>", ['"Ash Wednesday"', "glow-spoon", "pearl-flasher"]);
    checkCompletion("06:20 set C1 out <|>", ["90 ft"]);
    checkCompletion("06:20 set PB out <|>", NONE);
  });
  test("lures and flashers where they belong", () => {
    checkCompletion("06:20 set PB lure <|>", ["glow-spoon", '"Ash Wednesday"', "pearl-flasher"]);
    checkCompletion("06:20 set PB flasher <|>", ["pearl-flasher", "glow-spoon", '"Ash Wednesday"', "none"]);
  });
  test("guests by their ids, spots, upkeep, usual words", () => {
    checkCompletion("06:20 catch P1 king by <|>", ["G1"]);
    checkCompletion("06:20 run to <|>", ['"Anvil Bank"']);
    checkCompletion("06:20 serviced <|>", ["engine-oil"]);
    checkCompletion("06:20 weather barometer <|>", ["rising", "steady", "falling"]);
    checkFirst("06:20 catch P1 king clip <|>", ["adipose", "left-ventral"]);
    checkFirst("06:20 weather wind <|>", ["N", "NNE"]);
  });
});

const species = SPECIES.map(({ name }) => name);

describe("species", () => {
  test("the day's targets first, then the book's nicknames", () => {
    checkCompletion("06:20 catch P1 <|>", [
      "lake-trout",
      "king",
      ...species.filter((name) => name !== "lake-trout"),
    ]);
  });
  test("what the boat usually catches before the rest, in its own words", () => {
    const caught = "06:20 again P1\n06:21 catch C1 coho\n06:22 catch P1 coho\n06:23 catch P1 walleye\n";
    checkFirst(`${caught}06:30 catch C1 <|>`, ["lake-trout", "coho", "king", "walleye", "chinook"]);
    checkFirst("06:30 catch C1 walleye<|>", ["lake-trout", "king", "chinook"]);
  });
  test("a lost fish may not have been seen", () =>
    checkFirst("06:20 lost P1 <|>", ["lake-trout", "fish", "king"]));
});

describe("in a book", () => {
  test("its own names", () => {
    checkCompletion("rig X1 downrigger cable <|>", ["rigger-wire"], BOOK);
    checkCompletion("calibrate <|>", ["C1", "P1", "P1U", "PB", "rigger-wire"], BOOK);
    checkCompletion("rig <|>", NONE, BOOK);
  });
  test("thresholds and checks", () => {
    checkCompletion(
      "  threshold <|>",
      Object.values(THRESHOLDS).map(({ name }) => name),
      "boat b\n",
    );
    checkCompletion("  threshold reading-stale <|>", [THRESHOLDS.readingStale.written], "boat b\n");
    checkCompletion(
      "  quiet <|>",
      CATALOG.map(({ slug }) => slug),
      "boat b\n",
    );
    checkFirst("  units ft <|>", ["ft", "in"], "boat b\n");
    checkCompletion("  water <|>", ["fresh", "salt"], "boat b\n");
  });
  test("boats of the books", () => checkCompletion("trip 2031-06-21 <|>", ['"Bright Penny"'], ""));
});

describe("what is written", () => {
  test.each([
    ["06:20 se<|>", "set", "06:20 set"],
    ["06:20 set P<|>", "P1U", "06:20 set P1U"],
    ["06:20 set P<|>1 out 5 ft", "P1U", "06:20 set P1U out 5 ft"],
    ["06:20 move <|>out 5 ft", "P1", "06:20 move P1 out 5 ft"],
    ["06:20 set C1 lure Ash<|>", '"Ash Wednesday"', '06:20 set C1 lure "Ash Wednesday"'],
    ['06:20 set C1 lure "Ash W<|>', '"Ash Wednesday"', '06:20 set C1 lure "Ash Wednesday"'],
    ['06:20 set C1 lure "As<|>h" out 5 ft', '"Ash Wednesday"', '06:20 set C1 lure "Ash Wednesday" out 5 ft'],
    ["06:20 set C1 lu<|>", "lure", "06:20 set C1 lure"],
    ["06:20 set C1 lu<|>", 'lure "Ash Wednesday"', '06:20 set C1 lure "Ash Wednesday"'],
  ])("%s", checkTaken);

  test("a name in quotes is found without and with them", () => {
    const filterOf = (source: string) =>
      completeAt(source, MORNING).items.find(({ label }) => label.startsWith('"'))?.filterText;
    expect(filterOf("06:20 set C1 lure A<|>")).toBe("Ash Wednesday");
    expect(filterOf('06:20 set C1 lure "A<|>')).toBe('"Ash Wednesday');
  });

  test("in plain text, for any client", () => {
    const items = ["06:20 <|>", "06:20 set P1 <|>"].flatMap((source) => completeAt(source, MORNING).items);
    expect(items.filter((item) => item.insertTextFormat !== undefined)).toEqual([]);
  });
});

describe("told about when asked", () => {
  /** The documentation of an offer, which it does not carry itself. */
  function checkTold(source: string, label: string, wanted: RegExp): void {
    const { text, offset } = readCursor(MORNING + source);
    const service = openService(text);
    const item = service.completion(URI, positionAt(text, offset)).find((one) => one.label === label);
    if (item === undefined) throw new Error(`${label} isn't offered`);
    expect(item.documentation).toBeUndefined();
    const { documentation } = service.resolveCompletion(item);
    expect(documentation).toMatchObject({ kind: "markdown", value: expect.stringMatching(wanted) });
  }
  test.each([
    ["06:20 <|>", "set", /^A line goes in[\s\S]*`05:14 set C1[^`]*`[\s\S]*May say `out`, `above`/u],
    ["06:20 set PB <|>", "out", /^Line or cable out[\s\S]*In `ft`, `in`/u],
    ["06:20 sonar <|>", "marks", /range: `65 to 80 ft`[\s\S]*more than once/u],
    [
      "06:20 move <|>",
      "C1",
      /^`rig C1 downrigger[\s\S]*Last `out 90 ft setback 20 ft lure "Ash Wednesday"`/u,
    ],
    ["06:20 set PB lure <|>", "glow-spoon", /^`lure glow-spoon spoon 4 in`$/u],
    ["06:20 catch C1 <|>", "king", /^king is chinook\. Also called .*Believed up to \d+ lb and \d+ in\.$/u],
  ])("%s %s", checkTold);

  test("an item of a document that is closed, or of another server, stays as it is", () => {
    const item = {
      label: "set",
      data: { uri: "file:///closed", line: 0, of: "verb", place: "margin", verb: "set" },
    };
    expect(openService("").resolveCompletion(item)).toEqual(item);
    expect(openService("").resolveCompletion({ label: "x", data: 5 })).toEqual({ label: "x", data: 5 });
  });
});

describe("nothing in remarks and notes", () => {
  test.each([
    "# <|>",
    "06:20 strike P1  # <|>",
    "06:20 strike P1  # a<|>",
    "note\n  <|>",
    "note\n  05:14 set <|>",
    "note\n  one\n\n  <|>",
    'note\n06:20 strike P1 "as <|>',
  ])("%j", (source) => checkCompletion(source, NONE));

  test("a number sign inside a word or a text starts no remark", () => {
    checkFirst('06:20 set "a #1" <|>', ["out"]);
    checkFirst("06:20 set a#1 <|>", ["out"]);
  });
});

test("a book in the editor is asked as a file of its own", () => {
  const service = openService("");
  service.update(BOOK_URI, 1, `${BOOK}rig X2 stacked `);
  const lines = BOOK.split("\n").length - 1;
  const items = service.completion(BOOK_URI, { line: lines, character: "rig X2 stacked ".length });
  expect(items.map(({ label }) => label)).toEqual(["C1", "P1", "P1U", "PB"]);
});
