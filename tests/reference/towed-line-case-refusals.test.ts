import { describe, expect, test } from "vitest";
import { solveTowedLineCase, solveTowedLineCases } from "../../server/exchange/towed-line-case.ts";
import file from "./towed-line-cases.json";

type Loose = { [key: string]: Loose } & Loose[];

/** The first case of the file with one change made to it. */
function changed(change: (one: Loose) => unknown): unknown {
  const one = structuredClone(file.cases[0]) as unknown as Loose;
  change(one);
  return one;
}

function errorOf(input: unknown): string {
  const answer = solveTowedLineCase(input, 3);
  return "error" in answer ? answer.error : "";
}

const put = (value: unknown) => value as Loose;

describe("a case that cannot be answered says why, by name", () => {
  test.each<[string, (one: Loose) => unknown, RegExp]>([
    [
      "a negative length",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { L: -1 }),
      /line\.segments\[0\]\.L: must be at least 0/,
    ],
    [
      "a length in words",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { L: "5" }),
      /L: expected number, received string/,
    ],
    ["NaN", (c) => Object.assign(c.line?.segments?.[0] ?? {}, { L: Number.NaN }), /L: expected number/],
    [
      "infinity",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { L: Number.POSITIVE_INFINITY }),
      /L: expected number, received Infinity/,
    ],
    ["no diameter", (c) => delete c.line?.segments?.[0]?.d, /d: expected number, but it is missing/],
    [
      "a field that stretches",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { EA: 5 }),
      /unknown field 'EA' in line\.segments\[0\]/,
    ],
    ["a field of its own", (c) => Object.assign(c, { current: 1 }), /unknown field 'current' in the case/],
    [
      "5000 segments",
      (c) => Object.assign(c.line ?? {}, { segments: Array(5000).fill(c.line?.segments?.[0]) }),
      /no more than 200/,
    ],
    ["no segment", (c) => Object.assign(c.line ?? {}, { segments: [] }), /at least 1/],
    [
      "a law of its own",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { Cn: { model: "guess" } }),
      /drag law 'guess' is not supported/,
    ],
    [
      "another Reynolds number",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { Cn: { model: "cheng", re: "total" } }),
      /'total' is not supported/,
    ],
    [
      "a body below the end",
      (c) => Object.assign(c.line?.bodies?.[0] ?? {}, { node: 2 }),
      /node 2, and the line has nodes 1 to 1/,
    ],
    ["half a node", (c) => Object.assign(c.line?.bodies?.[0] ?? {}, { node: 1.5 }), /whole number/],
    [
      "a profile of its own",
      (c) => Object.assign(c, { profile: { type: "spline" } }),
      /profile of type 'spline' is not known/,
    ],
    [
      "a flow at an angle",
      (c) => Object.assign(c.profile ?? {}, { angle: 3 }),
      /unknown field 'angle' in profile/,
    ],
    [
      "depths out of order",
      (c) => Object.assign(c, { profile: { type: "piecewise", z: [0, 9, 5], U: [1, 1, 1] } }),
      /goes back from 9 m to 5 m/,
    ],
    [
      "a profile in words",
      (c) => Object.assign(c, { profile: { type: "tanh", Uupper: "fast" } }),
      /profile\.Uupper: expected number/,
    ],
    ["no profile", (c) => delete c.profile, /profile: expected object, but it is missing/],
    ["a top above the water", (c) => Object.assign(c.top ?? {}, { z: -1 }), /top\.z: must be at least 0/],
    [
      "a weight that contradicts mass and section",
      (c) => Object.assign(c.line?.segments?.[0] ?? {}, { w: 0.05 }),
      /w is not \(m - rho A\) g/,
    ],
    [
      "two drags",
      (c) => Object.assign(c.line?.bodies?.[0] ?? {}, { sphere: { diameter: 0.1 } }),
      /both CdA and sphere/,
    ],
    [
      "a free end with a ball",
      (c) => Object.assign(c, { freeEnd: true }),
      /freeEnd is true, and something hangs/,
    ],
    [
      "a ball that floats",
      (c) => Object.assign(c.line?.bodies?.[0] ?? {}, { W: put(-30) }),
      /above the surface/,
    ],
    [
      "a speed beyond reason",
      (c) => Object.assign(c.profile ?? {}, { U: 1e9 }),
      /the speed is 1000000000 m\/s/,
    ],
  ])("%s", (_name, change, expected) => {
    expect(errorOf(changed(change))).toMatch(expected);
  });
  test("what is not an object at all", () => {
    for (const input of [null, 5, "text", undefined]) expect(errorOf(input)).toMatch(/expected object/);
    expect(solveTowedLineCases({ cases: 5 })).toEqual([
      { id: "case 1", error: "the file: cases: expected array, received number" },
    ]);
  });
});

describe("a file", () => {
  test("with one bad case loses only that one, and the order stays", () => {
    const bad = changed((c) => delete c.water);
    const answers = solveTowedLineCases({ cases: [file.cases[0], bad, file.cases[1]] });
    expect(answers.map((answer) => "error" in answer)).toEqual([false, true, false]);
  });
  test("a list of cases, and one case alone, are answered too", () => {
    expect(solveTowedLineCases([file.cases[0], file.cases[1]])).toHaveLength(2);
    expect(solveTowedLineCases(file.cases[0])).toHaveLength(1);
  });
  test("of another format or in other units is refused whole", () => {
    expect(solveTowedLineCases({ ...file, format: "towed-line reference cases v2" })).toHaveLength(44);
    for (const answer of solveTowedLineCases({ ...file, conventions: { units: "feet" } }))
      expect(answer).toMatchObject({ error: expect.stringMatching(/conventions\.units/) });
  });
  test("a case without an id is named by its place", () => {
    expect(
      solveTowedLineCase(
        changed((c) => delete c.id),
        3,
      ),
    ).toMatchObject({ id: "case 4" });
  });
});
