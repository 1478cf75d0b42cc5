/** What a line may say, with the part that is being typed marked. */
import { describe, expect, test } from "vitest";
import { readCursor } from "../harness/markers.ts";
import { MORNING, openService, positionAt, URI } from "./open-service.ts";

function helpAt(source: string) {
  const { text, offset } = readCursor(MORNING + source);
  return openService(text).signatureHelp(URI, positionAt(text, offset));
}

/** The parameter that is active. */
function active(source: string): string | undefined {
  const [signature] = helpAt(source)?.signatures ?? [];
  const label = signature?.parameters?.[signature.activeParameter ?? 0]?.label;
  return label === undefined ? undefined : String(label);
}

test.each([
  [
    "06:20 probe <|>",
    "probe <rig> [depth length] [temp temperature] [speed speed] [behind length] [on-bottom] [sure] [remark text] in any order",
  ],
  ["06:20 box <|>", "box <species> <count number> [sure] [remark text] in any order"],
  [
    "06:20 sonar <|>",
    "sonar [bottom length] [marks length, or range] … [bait length, or range] … [sure] [remark text] in any order",
  ],
  ["06:20 profile <|>", "profile <point depth temperature> … [sure] [remark text] in any order"],
])("%s", (source, label) => {
  const [signature] = helpAt(source)?.signatures ?? [];
  expect(signature?.label).toBe(label);
  // A client finds a parameter by its words: each has to be there once.
  for (const { label: part } of signature?.parameters ?? [])
    expect(label.split(String(part))).toHaveLength(2);
});

describe("the part that is being typed", () => {
  test.each([
    ["06:20 catch <|>", "<rig>"],
    ["06:20 catch P<|>1", "<rig>"],
    ["06:20 catch P1 <|>", "<species>"],
    ["06:20 catch P1 king <|>", "in any order"],
    ["06:20 catch P1 king kept<|>", "[kept]"],
    ["06:20 catch P1 king by <|>", "[by guest]"],
    ["06:20 catch P1 king girth 20 <|>", "[girth length]"],
    ["06:20 catch P1 king girth 20 in <|>", "in any order"],
    ["06:20 catch P1 king gir<|>th 20 in", "[girth length]"],
    ["06:20 catch P1 king 18<|> lb", "[weight mass]"],
    ["06:20 sonar marks 60 to <|>", "[marks length, or range] …"],
    ["06:20 move C1 setback 5 ft out <|>", "[out length]"],
    ["  tar<|>", undefined],
  ])("%s", (source, wanted) => expect(active(source)).toBe(wanted));
  test("in a property", () => {
    const service = openService("trip 2031-06-21 b\n  guest \n");
    const help = service.signatureHelp(URI, { line: 1, character: 8 });
    expect(help?.signatures[0]?.label).toMatch(/^guest <guest id> \[named text\]/u);
  });
});

test("what it says of the line and of each attribute", () => {
  const [signature] = helpAt("06:20 again <|>")?.signatures ?? [];
  expect(signature?.documentation).toMatchObject({
    value: expect.stringMatching(/stays as it was\.\n\n`06:18 again P1`/u),
  });
  expect(signature?.parameters?.[1]).toMatchObject({
    documentation: expect.stringMatching(/^Line or cable out/u),
  });
});

describe("none", () => {
  test.each([
    "<|>",
    "06:<|>",
    "06:20 se<|>t",
    "06:20 set C1  # <|>",
    "# <|>",
    "note\n  set <|>",
    "06:20 drifted <|>",
  ])("%j", (source) => expect(helpAt(source)).toBeNull());
});
