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
  test("in a trip its events come first", () => {
    checkCompletion("<|>", [...EVENTS.split(" "), "boat", "trip", ...GEAR.split(" ")]);
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
  test("nothing while a date or clock is typed", () => {
    checkCompletion("06<|>", NONE);
    checkCompletion("06:2<|>", NONE);
    checkCompletion("2031-06-21<|>", NONE);
  });
});

describe("rigs", () => {
  test("those in the water first", () => checkCompletion("06:20 move <|>", ["C1", "P1", "P1U", "PB"]));
  test("to be set, those not in the water first", () => {
    checkCompletion("06:20 set <|>", ["P1U", "PB", "C1", "P1"]);
  });
  test("put back, those that wait for it first", () => {
    checkCompletion("06:20 again <|>", ["P1", "C1", "P1U", "PB"]);
    checkCompletion("06:20 again P1\n06:30 again <|>", ["C1", "P1", "P1U", "PB"]);
  });
  test("all of them pulled", () => {
    checkCompletion("06:20 pull <|>", ["C1", "P1", "P1U", "PB", "all"]);
    checkCompletion("06:20 pull all\n06:30 move <|>", ["C1", "P1", "P1U", "PB"]);
  });
  test("not a rig with itself", () => checkCompletion("06:20 tangle P1 with <|>", ["C1", "P1U", "PB"]));
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
  test("a name may look like a number with a unit", () =>
    checkCompletion("06:20 move 2f<|>", ["C1", "P1", "P1U", "PB"]));
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
    ["06:20 move P<|>", "P1U", "06:20 move P1U"],
    ["06:20 move P<|>1 out 5 ft", "P1U", "06:20 move P1U out 5 ft"],
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

  test("each line is told with what it means and an example", () => {
    const set = completeAt("06:20 <|>", MORNING).items.find(({ label }) => label === "set");
    expect(set?.detail).toBe("A line goes in: how much is out and what is on it.");
    expect(set?.documentation).toEqual({
      kind: "markdown",
      value: "`05:14 set C1 out 90 ft setback 20 ft lure white-fly`",
    });
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
