/** `deepwake depth --case FILE`: the solver against anyone's numbers. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { casesOutput } from "../../client/cli/case-schemas.ts";
import { deepwake } from "./fake-world.ts";

const SHARED = readFileSync(join(import.meta.dirname, "../reference/towed-line-cases.json"), "utf8");

/** A case of the shared file, as far as it is looked at here. */
interface Stated {
  readonly id: string;
  readonly profile: { readonly type: string };
  readonly line: { readonly segments: readonly { readonly L: number }[] };
  readonly branch?: { readonly line: Stated["line"] };
  readonly out: Figures;
  readonly branchOut?: Figures;
  readonly allSolutions?: readonly Figures[];
}

interface Figures {
  readonly depth: number;
  readonly setback: number;
  readonly topTension: number;
  readonly topAngleDeg: number;
}

const STATED: readonly Stated[] = JSON.parse(SHARED).cases;

async function solve(held: string) {
  const { out, err, code } = await deepwake("depth --case cases.json --json", {
    files: { "cases.json": held },
  });
  return { code, err, answers: out === "" ? [] : casesOutput.parse(JSON.parse(out)) };
}

const lengthOf = ({ segments }: Stated["line"]): number => segments.reduce((sum, { L }) => sum + L, 0);

/** Tolerance as the file states it: 1e-6 of the length for places, of the tension, and of a radian. */
function expectClose(id: string, found: Figures, stated: Figures, lengthM: number): void {
  const place = 1e-6 * lengthM;
  expect(Math.abs(found.depth - stated.depth), `${id} depth`).toBeLessThan(place);
  expect(Math.abs(found.setback - stated.setback), `${id} setback`).toBeLessThan(place);
  expect(Math.abs(found.topTension / stated.topTension - 1), `${id} tension`).toBeLessThan(1e-6);
  expect((Math.abs(found.topAngleDeg - stated.topAngleDeg) * Math.PI) / 180, `${id} angle`).toBeLessThan(
    1e-6,
  );
}

test("answers every case of the shared file as stated", async () => {
  const { code, answers } = await solve(SHARED);
  expect(code).toBe(0);
  expect(answers.map((answer) => answer.id)).toEqual(STATED.map((stated) => stated.id));
  for (const [index, stated] of STATED.entries()) {
    const answer = answers[index];
    if (answer === undefined || "error" in answer) throw new Error(`${stated.id}: ${answer?.error}`);
    const lengthM = lengthOf(stated.line);
    expectClose(stated.id, answer, stated.out, lengthM);
    expectClose(stated.id, answer.out, stated.out, lengthM);
    expect(answer.allSolutions?.length, stated.id).toBe(stated.allSolutions?.length);
    for (const [at, one] of (stated.allSolutions ?? []).entries())
      expectClose(`${stated.id}, shape ${at + 1}`, answer.allSolutions?.[at] ?? answer.out, one, lengthM);
    expect(answer.branchOut === undefined, stated.id).toBe(stated.branchOut === undefined);
    if (answer.branchOut !== undefined && stated.branchOut !== undefined && stated.branch !== undefined)
      expectClose(stated.id, answer.branchOut, stated.branchOut, lengthM + lengthOf(stated.branch.line));
  }
  expect(answers).toHaveLength(44);
});

test("a line with several steady shapes has all of them, and a word on which is answered", async () => {
  const held = JSON.stringify(STATED.find((one) => one.id === "multi-root"));
  const [answer] = (await solve(held)).answers;
  if (answer === undefined || "error" in answer) throw new Error(answer?.error ?? "no answer");
  expect(answer.chosen).toBe("deepest");
  expect(answer.allSolutions?.at(-1)).toEqual(answer.out);
  const { out } = await deepwake("depth --case cases.json", { files: { "cases.json": held } });
  expect(out).toMatchInlineSnapshot(`
    "case             depth m  setback m  top tension N  top angle deg
    multi-root        19.957     50.416           3.85          84.79
      or, less deep   14.167     57.045           4.38          84.82
      or, less deep   15.146     55.739           3.98          85.15
    "
  `);
});

test("one case alone, from standard input too, with a byte order mark", async () => {
  const one = JSON.stringify(STATED[0]);
  expect((await solve(one)).answers).toHaveLength(1);
  expect((await solve(`\ufeff${one}`)).answers).toHaveLength(1);
  const { out, code } = await deepwake("depth --case - --json", { input: one });
  expect(code).toBe(0);
  expect(casesOutput.parse(JSON.parse(out))[0]?.id).toBe(STATED[0]?.id);
});

test("an unknown field is an error of its case, never a number", async () => {
  const { code, answers } = await solve(JSON.stringify([{ ...STATED[0], swell: 2 }, STATED[1]]));
  expect(code).toBe(0);
  expect(answers[0]).toEqual({ id: STATED[0]?.id, error: expect.stringContaining("'swell'") });
  expect(answers[1]).toHaveProperty("depth");
});

test("a file none of whose cases can be solved ends with 2, with the reasons", async () => {
  const { code, err, answers } = await solve(JSON.stringify([{ ...STATED[0], swell: 2 }]));
  expect([code, err]).toEqual([2, "deepwake: cases.json has no case that can be solved.\n"]);
  expect(answers).toHaveLength(1);
});

test("a small table for people", async () => {
  const held = JSON.stringify([STATED.find((one) => one.id === "stage-1"), { ...STATED[0], swell: 2 }]);
  const given = { files: { "cases.json": held } };
  const wide = await deepwake("depth --case cases.json", given);
  expect(wide.out).toMatchInlineSnapshot(`
    "case                   depth m  setback m  top tension N  top angle deg
    stage-1                 42.620     14.972          50.29          33.52
      its branch            43.630     20.882           0.36          82.96
    uni-steel-L10-U0.5-B3  not solved: unknown field 'swell' in the case; it could change the answer, so nothing is computed
    "
  `);
  const narrow = await deepwake("depth --case cases.json", { ...given, columns: 40, env: { NO_COLOR: "1" } });
  expect(narrow.out).toMatchInlineSnapshot(`
    "stage-1
      depth 42.620 m, setback 14.972 m, top
      tension 50.29 N, top angle 33.52 deg
      its branch
      depth 43.630 m, setback 20.882 m, top
      tension 0.36 N, top angle 82.96 deg
    uni-steel-L10-U0.5-B3
      not solved: unknown field 'swell' in
      the case; it could change the answer,
      so nothing is computed
    "
  `);
});

test.each([
  ["no JSON", "{ cases: 1 }", /^deepwake: cases\.json can't be used: it is not JSON: [^\n]+\n$/u],
  ["cut short", '{ "cases": [', /^deepwake: cases\.json can't be used: it is not JSON: [^\n]+\n$/u],
  ["nothing", "", /^deepwake: cases\.json can't be used: it is not JSON: [^\n]+\n$/u],
  ["a number", "12", /^deepwake: cases\.json has no case that can be solved\.\n$/u],
  ["no cases", '{ "cases": [] }', /^deepwake: cases\.json has no case that can be solved\.\n$/u],
])("a file with %s", async (_, held, complaint) => {
  const { code, err } = await solve(held);
  expect(code).toBe(2);
  expect(err).toMatch(complaint);
});

test("no file, and a folder", async () => {
  const given = { files: { "a/b.json": "[]", "a/c.json": "[]" } };
  expect((await deepwake("depth --case none.json", given)).err).toBe(
    "deepwake: none.json can't be used: there is no such file\n",
  );
  expect((await deepwake("depth --case a", given)).err).toBe(
    "deepwake: a can't be used: it is a folder; name one file\n",
  );
});
