/** What the tests use of the extrapolation integrator that checks ours; the package carries no types we can read. */
declare module "odex" {
  export class Solver {
    constructor(dimension: number);
    relativeTolerance: number;
    absoluteTolerance: number;
    maxSteps: number;
    solve(
      rates: (x: number, y: number[]) => number[],
      from: number,
      start: number[],
      to: number,
    ): { readonly y: number[]; readonly outcome: number };
  }
}
