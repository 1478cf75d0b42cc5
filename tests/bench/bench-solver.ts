import { coldDepthRows } from "./cold-depths.ts";
import { type Area, type Effort, median, type Row } from "./figures.ts";
import { depthByOdex } from "./general-solver.ts";
import {
  loadOurBand,
  loadOurInverse,
  loadOurLetOut,
  loadOurSolver,
  type OurDepth,
  type OurLength,
} from "./our-solver.ts";
import { built, missing } from "./places.ts";
import { lengthOf, type SolverCase, solverCases } from "./solver-cases.ts";

/** What both solvers must reach: an error of the depth of a millionth of the line's length. */
const accuracy = 1e-6;

/** Microseconds a solve of the towed line, by our solver and by a general-purpose one at the same accuracy. */
export async function benchSolver({ quick }: Effort): Promise<Area> {
  const notes: string[] = [];
  const absent = missing(built.solver);
  if (absent) notes.push(absent);
  const ours = absent ? undefined : await loadOurSolver();
  const rows = solverCases.flatMap((one) => caseRows(one, ours, quick ? 5 : 15, notes));
  if (ours) {
    const inverse = await loadOurInverse();
    const cables = solverCases.filter((one) => one.segments.length === 1);
    rows.push(...cables.flatMap((one) => inverseRows(one, inverse, quick ? 5 : 15, notes)));
  }
  for (const isSheared of [false, true]) rows.push(await letOutRow(isSheared, quick ? 5 : 15, notes));
  for (const isSheared of [false, true]) rows.push(await bandRow(isSheared, quick ? 5 : 15, notes));
  rows.push(...(await coldDepthRows(quick)));
  notes.push(
    "Both solve from the lower end up, each at the loosest tolerance (a power of ten) that comes within 1e-6 of the line's length.",
    "A process that just started has what Node compiled in an earlier run, as the server and the command line have; the very first on a machine has nothing.",
    "What ships is the tolerance of a journal's depths, which are shown in whole feet; a line asked for by itself is solved a thousand times closer.",
  );
  return { title: "Solver of the towed line", rows, notes };
}

/** A downrigger's depth with its error band: some twenty neighbouring solves. Nobody else offers one. */
async function bandRow(isSheared: boolean, rounds: number, notes: string[]): Promise<Row> {
  const row: Row = {
    measure: `a downrigger's depth with its error band${isSheared ? ", in shear" : ""}`,
    unit: "µs",
    goal: { kind: "at-most", bound: 500 },
  };
  const absent = missing(built.band);
  if (absent) notes.push(absent);
  if (absent) return row;
  const band = await loadOurBand(isSheared);
  if (!band()) notes.push("the downrigger's band was refused");
  warm(band);
  const samples = Array.from({ length: rounds + 4 }, () => timeSolves(band));
  return { ...row, ours: median(samples.slice(4)) };
}

/** What to set the counter to for a lure's depth, its rod pulling on the cable. Nobody else offers one. */
async function letOutRow(isSheared: boolean, rounds: number, notes: string[]): Promise<Row> {
  const measure = `counter for the depth of a downrigger's lure${isSheared ? ", in shear" : ""}`;
  const row: Row = { measure, unit: "µs" };
  if (missing(built.band)) return row;
  const letOut = await loadOurLetOut(isSheared);
  if (!letOut()) notes.push("the counter's reading was refused");
  warm(letOut);
  const samples = Array.from({ length: rounds + 4 }, () => timeSolves(letOut));
  return { ...row, ours: median(samples.slice(4)) };
}

/** How much line to let out for the depth that the case comes to. Nobody else offers one. */
function inverseRows(one: SolverCase, inverse: OurLength, rounds: number, notes: string[]): Row[] {
  const measure = `line out for a depth: ${one.name}`;
  const goal = { kind: "at-most", bound: 20 } as const;
  const loose = [1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8].find((tolerance) => {
    const lengthM = inverse(one, tolerance) ?? Number.NaN;
    return Math.abs(lengthM - lengthOf(one)) <= accuracy * lengthOf(one);
  });
  if (loose === undefined) {
    notes.push(`not accurate enough: ${measure}`);
    return [{ measure, unit: "µs", goal }];
  }
  const timed = (tolerance?: number) =>
    median(Array.from({ length: rounds + 4 }, () => timeSolves(() => inverse(one, tolerance))).slice(4));
  return [
    { measure, unit: "µs", goal, ours: timed(loose) },
    { measure: `${measure}, at the tolerance that ships`, unit: "µs", ours: timed() },
  ];
}

function caseRows(one: SolverCase, ours: OurDepth | undefined, rounds: number, notes: string[]): Row[] {
  const solvable = ours?.(one) !== undefined;
  if (ours && !solvable) notes.push(`not built yet: ${one.name}`);
  const loose = solvable && ours ? loosestTolerance((tolerance) => ours(one, tolerance), one) : undefined;
  const peer = loosestTolerance((tolerance) => depthByOdex(one, tolerance), one);
  const samples = { ours: [] as number[], shipped: [] as number[], peer: [] as number[] };
  for (let round = -4; round < rounds; round += 1) {
    const equal = loose === undefined ? undefined : timeSolves(() => ours?.(one, loose));
    const shipped = loose === undefined ? undefined : timeSolves(() => ours?.(one));
    const theirs = timeSolves(() => depthByOdex(one, peer));
    if (round < 0) continue;
    if (equal !== undefined) samples.ours.push(equal);
    if (shipped !== undefined) samples.shipped.push(shipped);
    samples.peer.push(theirs);
  }
  const row: Row = { measure: one.name, unit: "µs", ours: median(samples.ours) };
  return [
    { ...row, goal: { kind: "at-most", bound: one.goalUs } },
    { ...row, peer: "odex", theirs: median(samples.peer) },
    { ...row, measure: `${one.name}, at the tolerance that ships`, ours: median(samples.shipped) },
  ];
}

/** The loosest power of ten at which a solver is accurate enough. */
function loosestTolerance(solve: (tolerance: number) => number | undefined, one: SolverCase): number {
  for (let power = 2; power < 14; power += 1) {
    const tolerance = Number(`1e-${power}`);
    if (isAccurate(one, solve(tolerance) ?? Number.NaN)) return tolerance;
  }
  throw new Error(`A solver does not reach the accuracy on ${one.name}.`);
}

function isAccurate(one: SolverCase, depthM: number): boolean {
  return Math.abs(depthM - one.depthM) <= accuracy * lengthOf(one);
}

/** As many calls as the short solves get in their first rounds, so that long ones are compiled as well as they are. */
function warm(solve: () => unknown): void {
  for (let call = 0; call < 6000; call += 1) solve();
}

/** Microseconds a call, over some 40 ms. */
function timeSolves(solve: () => unknown): number {
  const start = performance.now();
  let solves = 0;
  while (performance.now() - start < 40) {
    for (let burst = 0; burst < 20; burst += 1) solve();
    solves += 20;
  }
  return ((performance.now() - start) * 1000) / solves;
}
