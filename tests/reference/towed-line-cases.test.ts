import { describe, expect, test } from "vitest";
import { type CaseNode, type CaseOut, solveTowedLineCases } from "../../server/exchange/towed-line-case.ts";
import file from "./towed-line-cases.json";

/** The file's own tolerance: of line length for places, relative for tensions, radians for angles. */
const TOLERANCE = 1e-6;

interface Stated {
  readonly depth: number;
  readonly setback: number;
  readonly topTension: number;
  readonly topAngleDeg: number;
  readonly endAngleDeg?: number;
  readonly nodes: readonly {
    readonly node: number;
    readonly s: number;
    readonly x: number;
    readonly z: number;
    readonly tensionAbove: number | null;
    readonly tensionBelow: number;
  }[];
}

interface Case {
  readonly id: string;
  readonly profile: { readonly type: string };
  readonly line: { readonly segments: readonly { readonly L: number }[] };
  readonly branch?: { readonly line: Case["line"] };
  readonly out: Stated;
  readonly branchOut?: Stated;
  readonly allSolutions?: readonly Stated[];
}

const cases = file.cases as unknown as readonly Case[];
const uniform = cases.filter((one) => one.profile.type === "uniform");
const sheared = cases.filter((one) => one.profile.type !== "uniform");
const answers = new Map(solveTowedLineCases(file).map((answer) => [answer.id, answer]));

/** The figures that miss, each as "depth: got … expected … ± …". */
function misses(actual: CaseOut, expected: Stated, lengthM: number): string[] {
  const out: string[] = [];
  const near = (name: string, got: number, want: number, allowed: number) => {
    if (!(Math.abs(got - want) <= allowed)) out.push(`${name}: got ${got}, expected ${want} ± ${allowed}`);
  };
  near("depth", actual.depth, expected.depth, TOLERANCE * lengthM);
  near("setback", actual.setback, expected.setback, TOLERANCE * lengthM);
  near("topTension", actual.topTension, expected.topTension, TOLERANCE * expected.topTension);
  near("topAngleDeg", actual.topAngleDeg, expected.topAngleDeg, (TOLERANCE * 180) / Math.PI);
  if (expected.endAngleDeg === undefined) {
    if (actual.endAngleDeg !== undefined) out.push(`endAngleDeg: got ${actual.endAngleDeg}`);
  } else {
    const got = actual.endAngleDeg ?? Number.NaN;
    near("endAngleDeg", got, expected.endAngleDeg, (TOLERANCE * 180) / Math.PI);
  }
  if (actual.nodes.length !== expected.nodes.length)
    out.push(`${actual.nodes.length} nodes, expected ${expected.nodes.length}`);
  for (const [i, want] of expected.nodes.entries()) {
    const got: CaseNode | undefined = actual.nodes[i];
    if (got === undefined) continue;
    if (want.tensionAbove !== null)
      near(
        `node ${i} tensionAbove`,
        got.tensionAbove ?? Number.NaN,
        want.tensionAbove,
        TOLERANCE * want.tensionAbove,
      );
    near(`node ${i} s`, got.s, want.s, TOLERANCE * lengthM);
    near(`node ${i} x`, got.x, want.x, TOLERANCE * lengthM);
    near(`node ${i} z`, got.z, want.z, TOLERANCE * lengthM);
    near(`node ${i} tensionBelow`, got.tensionBelow, want.tensionBelow, TOLERANCE * want.tensionBelow);
    if ((want.tensionAbove === null) !== (got.tensionAbove === null))
      out.push(`node ${i} tensionAbove: got ${got.tensionAbove}`);
  }
  return out;
}

const lengthOf = (line: Case["line"]) => line.segments.reduce((sum, segment) => sum + segment.L, 0);

describe("the 44 reference cases (our own, SciPy DOP853 against three other methods; run)", () => {
  test("there are 34 of them, and 10 sheared", () => {
    expect([uniform.length, sheared.length]).toEqual([34, 10]);
  });
  test.each(cases.map((one) => [one.id, one] as const))("%s", (id, one) => {
    const answer = answers.get(id);
    if (answer === undefined || "error" in answer) throw new Error(answer?.error ?? "no answer");
    const mainM = lengthOf(one.line);
    expect(misses(answer.out, one.out, mainM)).toEqual([]);
    expect(answer.allSolutions?.length).toBe(one.allSolutions?.length);
    for (const [i, want] of (one.allSolutions ?? []).entries())
      expect(misses(answer.allSolutions?.[i] ?? answer.out, want, mainM)).toEqual([]);
    if (one.branchOut === undefined) return expect(answer.branchOut).toBeUndefined();
    if (answer.branchOut === undefined) throw new Error("no branch answered");
    const bothM = mainM + lengthOf(one.branch?.line ?? { segments: [] });
    expect(misses(answer.branchOut, one.branchOut, bothM)).toEqual([]);
    expect(answer.branchOut.lureDepth).toBe(answer.branchOut.depth);
  });
});

describe("the case with three steady shapes", () => {
  test("answers the deepest, says so, and says how shaky it is", () => {
    const answer = answers.get("multi-root");
    if (answer === undefined || "error" in answer) throw new Error("no answer");
    expect(answer.chosen).toBe("deepest");
    expect(answer.allSolutions?.map((one) => one.depth.toFixed(3))).toEqual(["14.167", "15.146", "19.957"]);
    expect(Math.abs((answer.conditioning ?? 0) * 0.094794851984 - 1)).toBeLessThan(0.01);
  });
});

describe("the comparison can fail", () => {
  const first = uniform[0];
  const answer = answers.get(first?.id ?? "");
  if (first === undefined || answer === undefined || "error" in answer) throw new Error("no first case");
  test("a depth, an angle or a node off by ten times the tolerance is seen", () => {
    const off = 10 * TOLERANCE * 10;
    expect(misses({ ...answer.out, depth: answer.out.depth + off }, first.out, 10)).toHaveLength(1);
    expect(misses({ ...answer.out, topAngleDeg: answer.out.topAngleDeg + 1e-3 }, first.out, 10)).toHaveLength(
      1,
    );
    expect(misses({ ...answer.out, topTension: Number.NaN }, first.out, 10)).toHaveLength(1);
    expect(misses({ ...answer.out, nodes: answer.out.nodes.slice(1) }, first.out, 10)).not.toEqual([]);
  });
});
