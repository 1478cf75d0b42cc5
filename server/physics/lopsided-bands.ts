import { type Band, bandsOf, type Uncertain } from "./band.ts";
import { DEFAULTS } from "./defaults.ts";
import { surfaceBands } from "./response-surface.ts";
import { sampleBands } from "./sample-band.ts";

/** Outputs with all inputs moved at once, each by so many of its standard deviations. */
export type OutputsAt = (deviations: readonly number[]) => readonly number[] | undefined;

/** One side this much longer than the other, as a share of both, and the inputs don't add up one by one (judgement). */
const LOPSIDED = 0.25;

/**
 * Bands of some outputs: by quadrature of what each input moves alone, and where that comes out lopsided from a quadratic
 * in all inputs through a few solves; where one of these has no answer, from samples of the model itself.
 */
export function bandsOrSamples(
  values: readonly number[],
  uncertain: readonly Uncertain[],
  outputsAt: OutputsAt,
): readonly Band[] {
  const inputs = uncertain.map(keptSides);
  const bands = bandsOf(values, inputs);
  const lopsided = bands.flatMap((band, k) => (isLopsided(band) ? [k] : []));
  if (lopsided.length === 0) return bands;
  const sides =
    surfaceBands(values, inputs, lopsided, (i, j, first, second) =>
      outputsAt(inputs.map((_, k) => (k === i ? first : k === j ? second : 0))),
    ) ?? sampleBands(inputs.length, outputsAt, DEFAULTS.bandShare.value);
  return bands.map((band, k) => (isLopsided(band) ? { ...band, ...sides?.[k] } : band));
}

function isLopsided({ value, low, high }: Band): boolean {
  return Math.abs(high - value - (value - low)) > LOPSIDED * (high - low);
}

/** The same input, each side of it solved once. */
function keptSides({ key, at }: Uncertain): Uncertain {
  const kept = new Map<number, readonly number[] | undefined>();
  return {
    key,
    at: (deviations) => {
      if (!kept.has(deviations)) kept.set(deviations, at(deviations));
      return kept.get(deviations);
    },
  };
}
