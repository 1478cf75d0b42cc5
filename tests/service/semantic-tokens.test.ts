/** What each word is called for the editor's colors. */
import { expect, test } from "vitest";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../../server/service/semantic-tokens.ts";
import { dedent } from "../harness/markers.ts";
import { openService, URI } from "./open-service.ts";

/** Unpacks the tokens and writes each as `text:type`, a line a line. */
function drawTokens(
  text: string,
  range?: Parameters<ReturnType<typeof openService>["semanticTokens"]>[1],
): string {
  const data = openService(text).semanticTokens(URI, range);
  const lines = text.split("\n");
  const drawn: string[][] = lines.map(() => []);
  let [line, start] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, along = 0, length = 0, type = 0, modifiers = 0] = data.slice(at, at + 5);
    start = down === 0 ? start + along : along;
    line += down;
    const word = lines[line]?.slice(start, start + length) ?? "";
    expect(word).toHaveLength(length);
    const said = TOKEN_MODIFIERS.filter((_, bit) => (modifiers & (1 << bit)) !== 0).map((name) => `.${name}`);
    drawn[line]?.push(`${word}:${TOKEN_TYPES[type]}${said.join("")}`);
  }
  return drawn.map((words) => words.join(" ")).join("\n");
}

function checkTokens(text: string, wanted: string): void {
  expect(drawTokens(dedent(text))).toBe(dedent(wanted));
}

test("a trip with its properties", () => {
  checkTokens(
    `
    trip 2031-06-21 "Bright Penny" charter
      anglers 4
      target lake-trout
    `,
    `
    trip:keyword 2031-06-21:number "Bright Penny":string charter:enumMember
    anglers:keyword 4:number
    target:keyword lake-trout:variable
    `,
  );
});

test("stamps, names, attributes, numbers with units, flags, remarks", () => {
  checkTokens(
    `
    ~05:14 set C1 out 90ft lure white-fly on-bottom "deep" # why
    2031-06-22 00:20 catch P1 king 18 lb 8 oz
    05:48 sonar marks 65 to 80 ft, bait 50 ft
    `,
    `
    ~05:14:number set:keyword C1:variable out:property 90:number ft:type lure:property white-fly:variable on-bottom:enumMember "deep":string # why:comment
    2031-06-22:number 00:20:number catch:keyword P1:variable king:variable 18:number lb:type 8:number oz:type
    05:48:number sonar:keyword marks:property 65:number to:keyword 80:number ft:type bait:property 50:number ft:type
    `,
  );
});

test("comments and notes are one token a line, what can't be read none", () => {
  checkTokens(
    `
    # a remark
    note private
      05:14 set C1
    what is this
    05:14 set C1 oot 5
    `,
    `
    # a remark:comment
    note:keyword private:enumMember
    05:14 set C1:string

    05:14:number set:keyword C1:variable
    `,
  );
});

test("only lines of the range", () => {
  const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } };
  expect(drawTokens("05:00 depart\n05:01 drift\n05:02 drift", range)).toBe("\n05:01:number drift:keyword\n");
});

test("the line that defines a name says so", () => {
  checkTokens(
    `
    rig C1 downrigger cable wire
    nickname king chinook
    calibrate C1 drag 1.2
    `,
    `
    rig:keyword C1:variable.definition downrigger:enumMember cable:property wire:variable
    nickname:keyword king:variable.definition chinook:variable
    calibrate:keyword C1:variable drag:property 1.2:number
    `,
  );
});
