/** The low and high of an output over samples. */
interface SampledBand {
  readonly low: number;
  readonly high: number;
}

/** Samples of a band; enough to place its sides within about a tenth of a standard deviation. */
const BAND_SAMPLES = 200;

/**
 * Bands of some outputs from samples of all inputs at once, for where inputs together do what none does alone.
 * `at` takes one deviation for each of `inputs` standard normal inputs. The samples are a Latin hypercube, the same
 * ones every time, so that an answer is the same every time. Undefined where fewer than half have an answer.
 * Source: McKay, Beckman & Conover 1979, Technometrics 21:239.
 */
export function sampleBands(
  inputs: number,
  at: (deviations: readonly number[]) => readonly number[] | undefined,
  share: number,
  samples = BAND_SAMPLES,
): SampledBand[] | undefined {
  const columns = hypercube(inputs, samples);
  const answers: (readonly number[])[] = [];
  for (let i = 0; i < samples; i++) {
    const answer = at(columns.map((column) => column[i] ?? 0));
    if (answer?.every(Number.isFinite)) answers.push(answer);
  }
  if (answers.length < samples / 2) return undefined;
  return (answers[0] ?? []).map((_, output) => {
    const sorted = answers.map((answer) => answer[output] ?? 0).sort((a, b) => a - b);
    return { low: quantile(sorted, (1 - share) / 2), high: quantile(sorted, (1 + share) / 2) };
  });
}

/** Hypercubes that were asked for before: they are the same every time. */
const hypercubes = new Map<string, readonly (readonly number[])[]>();
const MOST_HYPERCUBES = 50;

function hypercube(inputs: number, samples: number): readonly (readonly number[])[] {
  const key = `${inputs} ${samples}`;
  const known = hypercubes.get(key);
  if (known !== undefined) return known;
  const strata = Array.from({ length: samples }, (_, i) => normalQuantile((i + 0.5) / samples));
  const shuffle = shuffler(20310621);
  const columns = Array.from({ length: inputs }, () => shuffle(strata));
  if (hypercubes.size >= MOST_HYPERCUBES) hypercubes.clear();
  hypercubes.set(key, columns);
  return columns;
}

function quantile(sorted: readonly number[], share: number): number {
  const at = share * sorted.length - 0.5;
  const below = Math.min(sorted.length - 1, Math.max(0, Math.floor(at)));
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(sorted.length - 1, below + 1)] ?? low;
  return low + Math.min(1, Math.max(0, at - below)) * (high - low);
}

/** Fisher-Yates with a linear congruential generator. */
function shuffler(seed: number): (values: readonly number[]) => number[] {
  let state = seed;
  return (values) => {
    const shuffled = values.slice();
    for (let i = shuffled.length - 1; i > 0; i--) {
      state = (state * 1664525 + 1013904223) % 2 ** 32;
      const j = Math.floor((state / 2 ** 32) * (i + 1));
      [shuffled[i], shuffled[j]] = [shuffled[j] ?? 0, shuffled[i] ?? 0];
    }
    return shuffled;
  };
}

/**
 * The standard normal quantile of a share between 0 and 1, to 5e-4: Hastings' rational form (Abramowitz & Stegun
 * 26.2.23).
 */
function normalQuantile(share: number): number {
  const tail = Math.min(share, 1 - share);
  const t = Math.sqrt(-2 * Math.log(Math.max(tail, 1e-300)));
  const top = 2.515517 + t * (0.802853 + t * 0.010328);
  const bottom = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  const size = t - top / bottom;
  return share < 0.5 ? -size : size;
}
