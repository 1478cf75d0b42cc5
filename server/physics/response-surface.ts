import { DEVIATIONS_80, type Uncertain } from "./band.ts";

/** Outputs as a quadratic of independent standard normal inputs, drawn through a few solves. */
export type ResponseSurface = (deviations: readonly number[]) => readonly number[];

/** Both sides of one input, m. */
interface Sides {
  readonly plus: readonly number[];
  readonly minus: readonly number[];
}

/** An input that moves an output by less than this share of what the strongest does bends with no other (judgement). */
const STRONG = 0.25;

/**
 * A quadratic through the outputs with every input moved to both sides by itself, and with every two of the strong
 * inputs moved together: what inputs do together where they multiply, as drag and the square of the speed do, at a
 * tenth of the solves that sampling the model itself takes. `of` says which outputs decide what is strong. Undefined
 * where a solve has no answer. Source: response surfaces of second order, Box & Wilson 1951, J. R. Stat. Soc. B 13:1.
 */
export function responseSurface(
  values: readonly number[],
  inputs: readonly Uncertain[],
  of: readonly number[],
  pairAt: (i: number, j: number, first: number, second: number) => readonly number[] | undefined,
): ResponseSurface | undefined {
  const d = DEVIATIONS_80;
  const sides: Sides[] = [];
  for (const input of inputs) {
    const plus = input.at(d);
    if (plus === undefined) return undefined;
    const minus = input.at(-d) ?? plus.map((value, k) => 2 * (values[k] ?? 0) - value);
    sides.push({ plus, minus });
  }
  const bends = bendsOf(values, sides, strongest(values, sides, of), pairAt);
  if (bends === undefined) return undefined;
  return (deviations) =>
    values.map((value, k) => {
      let sum = value;
      sides.forEach(({ plus, minus }, i) => {
        const x = (deviations[i] ?? 0) / d;
        const [up, down] = [(plus[k] ?? value) - value, (minus[k] ?? value) - value];
        sum += 0.5 * x * (up - down + x * (up + down));
      });
      for (const { i, j, by } of bends)
        sum += (((by[k] ?? 0) * (deviations[i] ?? 0)) / d) * ((deviations[j] ?? 0) / d);
      return sum;
    });
}

function strongest(values: readonly number[], sides: readonly Sides[], of: readonly number[]): number[] {
  const strong = new Set<number>();
  for (const k of of) {
    const reach = sides.map(({ plus, minus }) =>
      Math.max(Math.abs((plus[k] ?? 0) - (values[k] ?? 0)), Math.abs((minus[k] ?? 0) - (values[k] ?? 0))),
    );
    const least = STRONG * Math.max(...reach);
    reach.forEach((size, i) => {
      if (size > 0 && size >= least) strong.add(i);
    });
  }
  return [...strong].sort((a, b) => a - b);
}

/** What two inputs do together beyond what each does by itself, for both moved up and both moved down, halved. */
interface Bend {
  readonly i: number;
  readonly j: number;
  readonly by: readonly number[];
}

function bendsOf(
  values: readonly number[],
  sides: readonly Sides[],
  strong: readonly number[],
  pairAt: (i: number, j: number, first: number, second: number) => readonly number[] | undefined,
): Bend[] | undefined {
  const bends: Bend[] = [];
  for (const [n, i] of strong.entries()) {
    for (const j of strong.slice(n + 1)) {
      const up = pairAt(i, j, DEVIATIONS_80, DEVIATIONS_80);
      const down = pairAt(i, j, -DEVIATIONS_80, -DEVIATIONS_80);
      if (up === undefined || down === undefined) return undefined;
      const together = (k: number, pair: readonly number[], side: keyof Sides): number =>
        (pair[k] ?? 0) - (sides[i]?.[side][k] ?? 0) - (sides[j]?.[side][k] ?? 0) + (values[k] ?? 0);
      const by = values.map((_, k) => 0.5 * (together(k, up, "plus") + together(k, down, "minus")));
      bends.push({ i, j, by });
    }
  }
  return bends;
}
