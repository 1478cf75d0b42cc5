/** What a hover says: depths with where they come from, the trip's sums, words and names; nothing in remarks. */
import { describe, expect, test } from "vitest";
import type { Hover } from "vscode-languageserver-types";
import { readCursor } from "../harness/markers.ts";
import { BOOK, MORNING, openService, positionAt, URI } from "./open-service.ts";

/** The hover's Markdown at the cursor of the last line, below the morning; empty where there is none. */
function hoverAt(line: string, above = MORNING, book = BOOK): string {
  const { text, offset } = readCursor(above + line);
  return said(openService(text, { book }).hover(URI, positionAt(text, offset)));
}

function said(hover: Hover | null): string {
  return hover === null ? "" : (hover.contents as { value: string }).value;
}

function checkHover(line: string, wanted: string, above?: string): void {
  expect(hoverAt(line, above)).toBe(wanted);
}

function checkHoverHolds(line: string, ...wanted: (string | RegExp)[]): void {
  const hover = hoverAt(line);
  for (const part of wanted) expect(hover).toMatch(part);
}

describe("a line with a depth", () => {
  test("says where the ball and the lure are, what speed that leans on, and that it is an estimate", () => {
    checkHoverHolds(
      "06:18 <|>again P1",
      /^Ball about \d+ ft down \(\d+ to \d+\), \d+ ft back\. 72 ft out\. {2}\n/u,
      /glow-spoon about \d+ ft down \(\d+ to \d+\)/u,
      /Speed used: 2\.6 mph at C1's probe, read 05:45, 33 min old\./u,
      /10 ft more cable: about \d+ ft deeper\. 0\.2 mph faster: about \d ft shallower\./u,
      "P1 was never checked against a probe, so the range is wide.",
      /\*Depths are estimates: not for navigation/u,
      /\n---\n\n\*\*again\*\*: Back in after a fish/u,
    );
  });

  test("says so anywhere on it, its clock included", () => {
    for (const line of ["<|>06:18 again P1", "06:18 again P<|>1", "06:20 move P1 out 80 <|>ft"])
      checkHoverHolds(line, /^Ball about/u);
  });

  test("uses whole feet and no words of statistics", () => {
    expect(hoverAt("06:18 <|>again P1")).not.toMatch(
      /\d\.\d+ ft|percent|%|sigma|standard|interval|confidence|probab/iu,
    );
  });

  test("names the ball a stacked rod rides on", () => {
    checkHoverHolds("06:20 set <|>P1U above 20 ft setback 25 ft lure glow-spoon", /P1's ball about \d+ ft/u);
  });

  test("of what the bottom stopped says that, without range, distance behind, release or what-ifs", () => {
    const above = `${MORNING}06:19 sonar bottom 60 ft\n`;
    const hover = hoverAt("06:20 <|>set P1 out 400 ft setback 20 ft lure glow-spoon", above).split("\n\n")[0];
    expect(hover).toMatch(
      /^Ball on the bottom, 60 ft down\. 400 ft out\. {2}\nglow-spoon on the bottom, 60 ft down\. {2}\nSpeed used: .* That is stale\. {2}\nWater there: /u,
    );
    expect(hover).not.toMatch(/behind|release|would/u);
  });

  test("says what the rod's pull does where it is much, and nothing where it is little or no rod is clipped", () => {
    const ofP1 = (rest: string): string => hoverAt(`06:20 <|>set P1 ${rest}`);
    expect(ofP1("out 180 ft setback 15 ft lure glow-spoon")).toMatch(
      / {2}\nThe rod's pull lifts the ball about \d+ ft\./u,
    );
    expect(ofP1("out 20 ft setback 15 ft lure glow-spoon")).not.toMatch(/pull lifts/u);
    expect(ofP1("out 180 ft")).not.toMatch(/pull lifts/u);
  });

  test("says why the range reaches deeper than the cable out", () => {
    checkHoverHolds(
      "06:20 <|>set P1 out 20 ft",
      "20 ft out. The range reaches past that, for the counter may read short.",
    );
    expect(hoverAt("06:20 <|>set P1 out 150 ft")).not.toMatch(/read short/u);
  });

  test("of a change line that alters it", () => {
    checkHoverHolds("06:20 <|>change C1 lure glow-spoon", /^Ball about \d+ ft down[\s\S]*glow-spoon about/u);
  });

  test("says why there is none", () => {
    checkHoverHolds("06:20 <|>set J1 out 60 ft", /^No depth for J1: J1 isn't in the gear book\./u);
  });

  test("counts leadcore in colors, and says what was taken for granted", () => {
    checkHoverHolds(
      "06:20 <|>set PB out 5 colors",
      /^Lure about \d+ ft down \(\d+ to \d+\), \d+ ft back\. 5 colors out\. {2}\n/u,
      "PB's leadcore is taken as ordinary, since the gear book names none.",
      /10 ft more line: about \d+ ft deeper\. 0\.2 mph faster: about \d+ ft shallower\./u,
      "PB's depth was never measured, so the range is wide.",
    );
  });

  test("gives none while part of the line can't be read", () => {
    checkHoverHolds("06:20 <|>move P1 out 72,5 ft", /^No depth: part of this line can't be read\.\n/u);
  });
});

describe("the water", () => {
  const CURRENT = `${MORNING}05:45 gps speed 2.1 mph course 310 at 44 46.1N 086 21.7W\n`;

  test("at the lure, from which readings, and against the band of the day's target", () => {
    checkHoverHolds(
      "06:18 <|>again P1",
      /Water there: about 4\d F \(4\d to \d\d\), from the profile at 05:00 and C1's probe at 05:45\./u,
      /Inside the published lake-trout band \(43 to 55 F: \d+ ft/u,
      "Source: Snucins & Gunn 1995".replace("&", "\\&"),
    );
  });

  test("a speed over ground against the probe's: what one heading tells of the current, and only that", () => {
    const hover = hoverAt(
      "06:10 <|>gps speed 2.0 mph course 312",
      CURRENT.replace("05:45 probe", "06:08 probe"),
    );
    expect(hover).toMatch(
      /C1's probe at 06:08 against the GPS at 06:10: running into about half a mph \(0\.\d to 0\.\d\), if both speeds are true\. One heading tells only that\./u,
    );
  });

  test("a profile: its thermocline and where the band lies", () => {
    const hover = hoverAt("06:10 <|>profile 0 m 20 C, 10 m 19 C, 15 m 18 C, 18 m 10 C, 25 m 7 C, 40 m 5 C");
    expect(hover).toMatch(
      /Thermocline about 5\d ft down; it cools fastest, 1 C per meter or more, between 49 ft and 59 ft/u,
    );
    expect(hover).toMatch(/The published lake-trout band \(43 to 55 F: \d+ to \d+ ft\)/u);
  });

  test("a profile says every reading that it was made of", () => {
    expect(hoverAt("06:10 <|>surface temp 61 F")).toContain(
      "Taken from the surface at 06:10, the profile at 05:00 and C1's probe at 05:45.",
    );
  });

  test.each([
    ["06:10 <|>profile 0 ft 61 F, 100 ft 43 F", "Too few depths were read to tell a thermocline."],
    [
      "06:10 <|>profile 0 ft 42 F, 50 ft 42 F, 90 ft 41 F",
      "No thermocline: the water is of one kind as far as it was read.",
    ],
    [
      "06:10 <|>profile 0 ft 61 F, 20 ft 60 F, 100 ft 43 F",
      "Thermocline somewhere between 20 ft and 100 ft, where nothing was read.",
    ],
  ])("%s", (line, wanted) => {
    expect(hoverAt(line, `trip 2031-06-21 "Bright Penny"\n`)).toContain(wanted);
  });

  test("two speeds that no current joins are said to be doubtful, not subtracted", () => {
    const above = CURRENT.replace("05:45 probe C1", "06:08 probe C1").replace("2.6 mph", "9.6 mph");
    expect(hoverAt("06:10 <|>gps speed 2.0 mph course 312", above)).toContain(
      "no current is that strong; one of the two speeds is doubtful.",
    );
  });

  test("magnetic courses turned by the world's model are said to be, and the set is true", () => {
    const day = `trip 2026-07-01 "Bright Penny"
05:00 surface speed 2.5 mph
05:00 gps speed 2.55 mph course 011.3 magnetic at 44.76 -85.6
05:20 surface speed 2.5 mph
05:20 gps speed 3.0 mph course 090 magnetic
05:40 surface speed 2.5 mph
`;
    expect(hoverAt("05:40 <|>gps speed 2.55 mph course 168.7 magnetic", day)).toMatch(
      /sets 0\d\d true \(compass courses turned by 6\.1 W, the variation there by the World Magnetic Model\), drift about/u,
    );
  });

  test("a bite has its light: minutes from sunrise, the sky, the moon", () => {
    const above = `${MORNING}06:00 gps at 44.7 -86.3\n`;
    // The sun rises there at 05:59, as an independent library has it.
    expect(hoverAt("06:15 <|>catch P1 king kept", above)).toMatch(
      /(15|16|17) min after sunrise, in daylight\. Moon: new moon, \d+ % lit, \d+ degrees (above|below) the horizon\./u,
    );
    expect(hoverAt("05:40 <|>strike P1", above)).toMatch(
      /(18|19|20) min before sunrise, in civil twilight\./u,
    );
    expect(hoverAt("06:15 <|>catch P1 king kept")).not.toContain("sunrise");
  });

  test("a reading that speaks against an older one is said to", () => {
    expect(hoverAt("06:17 probe C1 depth 50 ft temp 60 F\n06:18 <|>again P1")).toMatch(
      /is left out: 60 F at 50 ft by C1's probe at 06:17 speaks against it\./u,
    );
  });
});

test("the trip line has the day's sums", () => {
  expect(hoverAt("<|>trip", "")).toContain("**trip**: Opens a trip");
  const value = said(openService(MORNING).hover(URI, { line: 0, character: 6 }));
  expect(value).toMatch(/^\*\*Bright Penny, 2031-06-21\*\*\n\n/u);
  expect(value).toContain("chinook 1 kept");
  expect(value).toContain("the agency's current rules decide");
});

describe("words and names", () => {
  test.each([
    [
      "06:30 <|>strike P1",
      "**strike**: A fish hit; that rod does not fish until `again`.\n\n`05:58 strike P1`",
    ],
    [
      "06:30 strike<|> P1",
      "**strike**: A fish hit; that rod does not fish until `again`.\n\n`05:58 strike P1`",
    ],
    ["06:30 catch P1 king 18 lb <|>kept", "**kept**: It went in the box."],
    ["06:30 catch P1 king <|>18 lb", "**weight**: Weight."],
    ["06:30 strike <|>C1", "`rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft`"],
    ["06:30 strike <|>P1", "`rig P1 downrigger port cable rigger-wire ball round-12 release 2 ft`"],
    ["06:30 broke P1 <|>lure glow-spoon", "**lure**: The lure that is gone."],
    ["06:30 broke P1 lure <|>glow-spoon", "`lure glow-spoon spoon 4 in`"],
    ['06:30 broke P1 lure <|>"Ash Wednesday"', '`lure "Ash Wednesday" spoon 3.75 in`'],
    ["06:30 catch P1 <|>king", "king is chinook."],
    ["06:30 catch P1 king by <|>G1", "G1 is Marv Tessler."],
    ['06:30 run to <|>"Anvil Bank"', '`spot "Anvil Bank" at 44 44.0N 086 25.9W`'],
    ["06:30 catch P1 <|>chinook", "chinook is a species."],
    ["06:30 strike <|>X9", "No gear book in reach has X9."],
    ["06:30 pull <|>all", "Every rig in the water."],
    ["06:30 catch <|>unknown king", "Nobody saw which rod it was."],
    ["<|>~06:30 strike P1", "About 06:30 on 2031-06-21, by the clock of America/Detroit."],
    ["2031-06-22 <|>00:10-04:00 pull P1", "00:10 on 2031-06-22, at -04:00."],
    [
      "06:30 sonar bottom 72<|>,5 ft",
      'Write 72.5 for "72,5": a number has digits and a point, nothing else.',
    ],
    [
      "06:30 sonar bottom 72,5 <|>ft",
      'Write 72.5 for "72,5": a number has digits and a point, nothing else.',
    ],
  ])("%s", (line, wanted) => checkHover(line, wanted));

  test("a book knows its own names", () => {
    checkHover("rig X1 downrigger ball <|>round-12", "`ball round-12 sphere 12 lb`", BOOK);
  });
});

test.each([
  ['  harbor <|>"Hollis Point"', "**harbor**: The harbor left from."],
  ["  anglers <|>4", "**anglers**: How many people fished."],
])("a property's value: %s", (line, wanted) => {
  checkHover(line, wanted, 'trip 2031-06-21 "Bright Penny"\n');
});

describe("a boat", () => {
  const book = `Bright Penny has 4 rigs, 1 cable or line, 1 ball, 3 lures, by bright-penny.gear.  \n\`units ft mph F lb in\`  \n\`zone America/Detroit\``;

  test("is what the book says of it", () => {
    expect(hoverAt('trip 2031-06-22 "Bright <|>Penny"')).toContain(book);
    expect(hoverAt('trip 2031-06-22 "Dim <|>Penny"')).toContain("No gear book in reach describes Dim Penny.");
  });
});

describe("nothing is said", () => {
  test.each([
    "<|>",
    "# 06:18 <|>again P1",
    "06:30 strike P1  # <|>again",
    "06:30 strike P1 <|> ",
    "<|>  06:30 strike P1",
    "note\n  05:14 <|>set P1",
  ])("%s", (line) => checkHover(line, ""));

  test("in a file that isn't open", () => {
    expect(openService("").hover("file:///other.trip", { line: 0, character: 0 })).toBeNull();
  });
});

test("a line that can't be read has what is wrong with it, on the word that is", () => {
  checkHover("<|>wht is this", 'No line starts with "wht".');
});

test("nothing in a name acts as Markdown", () => {
  expect(hoverAt("06:30 set C1 out 50 ft setback 9 ft lure a*b_c`d<|>")).toContain("a\\*b\\_c\\`d about");
});

describe("a reading", () => {
  const SET = `${'trip 2031-06-21 "Bright Penny"\n'}05:00 set C1 out 90 ft\n`;

  test("says what was expected at the probe and that they agree, and what the current does", () => {
    const lines = `${SET}05:12 gps speed 2.0 mph\n`;
    const hover = hoverAt("05:10 <|>probe C1 depth 85 ft speed 2.4 mph", lines);
    expect(hover).toMatch(
      /^The probe shows 85 ft; about \d+ ft \\?\(\d+ to \d+\\?\) was expected with 90 ft out at 2\.4 mph: they agree\./u,
    );
    expect(hover.replaceAll("\\", "")).toContain(
      "C1's probe at 05:10 against the GPS at 05:12: running into about half a mph (0.2 to 0.6), if both speeds are true. One heading tells only that.",
    );
  });

  test("says that they disagree", () => {
    expect(hoverAt("05:10 <|>probe C1 depth 60 ft speed 2.4 mph", SET)).toMatch(/shallower: they disagree/u);
  });

  test("of a touch speaks of the ball; and says why there is nothing to hold against", () => {
    const above = `${SET}05:09 surface speed 2 mph\n`;
    expect(hoverAt("05:10 <|>touch C1 out 95 ft bottom 92 ft", above)).toMatch(
      /^The ball touched in 92 ft; about/u,
    );
    expect(hoverAt("05:10 <|>probe C1 depth 60 ft", SET)).toMatch(
      /^Nothing to hold it against: no speed was read near it\./u,
    );
  });

  test("says why a never probed rig's range is narrower", () => {
    const book = `${BOOK}2031-06-01 calibrate C1 drag 1.31 drag-error 0.08\n`;
    const above = `${SET}05:10 probe C1 depth 85 ft speed 2.4 mph\n`;
    expect(hoverAt("05:12 <|>set P1 out 70 ft", above, book)).toContain(
      "P1 was never checked against a probe, so the range is wide; what the calibration of C1 of 2031-06-01 says of every line on this boat makes it a little narrower.",
    );
  });
});
