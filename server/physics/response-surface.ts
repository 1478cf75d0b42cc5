import { DEVIATIONS_80, type Uncertain } from "./band.ts";

/** The low and high of an output's band. */
export interface Sides {
  readonly low: number;
  readonly high: number;
}

/** All outputs with one input moved to both sides. */
interface Moved {
  readonly plus: readonly number[];
  readonly minus: readonly number[];
}

/** An input that moves an output by less than this share of what the strongest does bends with no other (judgement). */
const STRONG = 0.25;

/**
 * Bands of outputs from a quadratic through them, with every input moved to both sides by itself, and with every two of the
 * strong inputs moved together: what inputs do together where they multiply, as drag and the square of the speed do. `of`
 * says which outputs decide what is strong. Undefined where a solve has no answer. Source: response surfaces of second
 * order, Box & Wilson 1951, J. R. Stat. Soc. B 13:1.
 */
export function surfaceBands(
  values: readonly number[],
  inputs: readonly Uncertain[],
  of: readonly number[],
  pairAt: (i: number, j: number, first: number, second: number) => readonly number[] | undefined,
): Sides[] | undefined {
  const moved: Moved[] = [];
  for (const input of inputs) {
    const plus = input.at(DEVIATIONS_80);
    if (plus === undefined) return undefined;
    const minus = input.at(-DEVIATIONS_80) ?? plus.map((value, k) => 2 * (values[k] ?? 0) - value);
    moved.push({ plus, minus });
  }
  const strong = strongest(values, moved, of);
  const bends = bendsOf(values, moved, strong, pairAt);
  return bends && values.map((value, k) => sidesOf(quadraticOf(k, value, moved, strong, bends)));
}

function strongest(values: readonly number[], moved: readonly Moved[], of: readonly number[]): number[] {
  const strong = new Set<number>();
  for (const k of of) {
    const reach = moved.map(({ plus, minus }) =>
      Math.max(Math.abs((plus[k] ?? 0) - (values[k] ?? 0)), Math.abs((minus[k] ?? 0) - (values[k] ?? 0))),
    );
    const least = STRONG * Math.max(...reach);
    reach.forEach((size, i) => {
      if (size > 0 && size >= least) strong.add(i);
    });
  }
  return [...strong].sort((a, b) => a - b);
}

/** What two strong inputs do together beyond what each does by itself, for both moved up and both moved down, halved. */
interface Bend {
  /** Their places among the strong ones. */
  readonly i: number;
  readonly j: number;
  readonly by: readonly number[];
}

function bendsOf(
  values: readonly number[],
  moved: readonly Moved[],
  strong: readonly number[],
  pairAt: (i: number, j: number, first: number, second: number) => readonly number[] | undefined,
): Bend[] | undefined {
  const bends: Bend[] = [];
  for (const [n, i] of strong.entries()) {
    for (const [m, j] of strong.entries()) {
      if (m <= n) continue;
      const up = pairAt(i, j, DEVIATIONS_80, DEVIATIONS_80);
      const down = pairAt(i, j, -DEVIATIONS_80, -DEVIATIONS_80);
      if (up === undefined || down === undefined) return undefined;
      const together = (k: number, pair: readonly number[], side: keyof Moved): number =>
        (pair[k] ?? 0) - (moved[i]?.[side][k] ?? 0) - (moved[j]?.[side][k] ?? 0) + (values[k] ?? 0);
      const by = values.map((_, k) => 0.5 * (together(k, up, "plus") + together(k, down, "minus")));
      bends.push({ i: n, j: m, by });
    }
  }
  return bends;
}

/**
 * An output as value + linear x + x' square x, x being independent standard normal inputs. The strong ones come first and
 * have the whole of their square, by rows; of the others it has the diagonal.
 */
interface Quadratic {
  readonly value: number;
  readonly linear: readonly number[];
  readonly square: readonly number[];
  readonly otherLinear: readonly number[];
  readonly otherSquare: readonly number[];
}

function quadraticOf(
  k: number,
  value: number,
  moved: readonly Moved[],
  strong: readonly number[],
  bends: readonly Bend[],
): Quadratic {
  const d = DEVIATIONS_80;
  const n = strong.length;
  const linear: number[] = [];
  const square = new Array<number>(n * n).fill(0);
  const [otherLinear, otherSquare]: [number[], number[]] = [[], []];
  moved.forEach(({ plus, minus }, i) => {
    const [up, down] = [(plus[k] ?? value) - value, (minus[k] ?? value) - value];
    const [byItself, bent] = [(0.5 * (up - down)) / d, (0.5 * (up + down)) / (d * d)];
    const place = strong.indexOf(i);
    if (place >= 0) {
      linear[place] = byItself;
      square[place * n + place] = bent;
    } else {
      otherLinear.push(byItself);
      otherSquare.push(bent);
    }
  });
  for (const { i, j, by } of bends) {
    square[i * n + j] = (0.5 * (by[k] ?? 0)) / (d * d);
    square[j * n + i] = square[i * n + j] ?? 0;
  }
  return { value, linear, square, otherLinear, otherSquare };
}

/**
 * The 80 % band of a quadratic of normal inputs, from its first three cumulants, which have closed forms: the quantiles
 * of the gamma distribution that shares them, by the cube root of Wilson & Hilferty 1931, PNAS 17:684. A gamma is what
 * such a sum comes to where one square rules it; tests hold the sides within 5 % of the width of samples.
 */
function sidesOf({ value, linear, square, otherLinear, otherSquare }: Quadratic): Sides {
  const n = linear.length;
  let [mean, variance, third] = [value, 0, 0];
  otherLinear.forEach((b, i) => {
    const a = otherSquare[i] ?? 0;
    mean += a;
    variance += b * b + 2 * a * a;
    third += a * (6 * b * b + 8 * a * a);
  });
  for (let i = 0; i < n; i++) {
    mean += square[i * n + i] ?? 0;
    variance += (linear[i] ?? 0) ** 2;
    for (let j = 0; j < n; j++) {
      const a = square[i * n + j] ?? 0;
      let twice = 0;
      for (let m = 0; m < n; m++) twice += (square[i * n + m] ?? 0) * (square[m * n + j] ?? 0);
      variance += 2 * a * a;
      third += a * (6 * (linear[i] ?? 0) * (linear[j] ?? 0) + 8 * twice);
    }
  }
  const sd = Math.sqrt(variance);
  const skewness = variance > 0 ? third / (variance * sd) : 0;
  return {
    low: mean + sd * gammaQuantile(-DEVIATIONS_80, skewness),
    high: mean + sd * gammaQuantile(DEVIATIONS_80, skewness),
  };
}

/** Less skewness than this makes no difference. */
const STRAIGHT = 1e-3;

/** The quantile of a gamma distribution of mean 0, variance 1 and that skewness, by the normal one. */
function gammaQuantile(normal: number, skewness: number): number {
  if (Math.abs(skewness) < STRAIGHT) return normal;
  const root = 1 + (skewness * normal) / 6 - (skewness * skewness) / 36;
  return (2 / skewness) * (Math.max(0, root) ** 3 - 1);
}
