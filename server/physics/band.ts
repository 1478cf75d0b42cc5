/** One input that is not known exactly. */
export interface Uncertain {
  /** A stable key, such as "speed". */
  readonly key: string;
  /** The outputs with this input moved by so many of its standard deviations, or `undefined` without an answer. */
  readonly at: (deviations: number) => readonly number[] | undefined;
}

/** How far one uncertain input alone moves an output down and up, both zero or more. */
export interface Share {
  readonly key: string;
  readonly less: number;
  readonly more: number;
}

/** An output with the bounds of its band. */
export interface Band {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** In the order of the uncertain inputs. */
  readonly shares: readonly Share[];
}

/** An 80 % band of a normal spread reaches this many standard deviations to each side. */
export const DEVIATIONS_80 = 1.2815515655446004;

/**
 * Bands for some outputs, from independent inputs: each is moved to both sides by `deviations` of its standard
 * deviations, and what the outputs move down, and up, adds in quadrature, separately; so the band is lopsided
 * where the model is. A side without an answer counts as much as the other side. Source: first-order error
 * propagation kept one-sided; common practice.
 */
export function bandsOf(
  values: readonly number[],
  inputs: readonly Uncertain[],
  deviations = DEVIATIONS_80,
): Band[] {
  const sides = inputs.map((input) => ({
    key: input.key,
    plus: input.at(deviations),
    minus: input.at(-deviations),
  }));
  return values.map((value, i) => {
    const shares = sides.map(({ key, plus, minus }) => shareOf(key, value, plus?.[i], minus?.[i]));
    return {
      value,
      low: value - Math.sqrt(shares.reduce((sum, share) => sum + share.less ** 2, 0)),
      high: value + Math.sqrt(shares.reduce((sum, share) => sum + share.more ** 2, 0)),
      shares,
    };
  });
}

function shareOf(key: string, value: number, plus: number | undefined, minus: number | undefined): Share {
  const up = plus === undefined ? undefined : plus - value;
  const down = minus === undefined ? undefined : minus - value;
  const first = up ?? -(down ?? 0);
  const second = down ?? -(up ?? 0);
  return { key, less: Math.max(0, -first, -second), more: Math.max(0, first, second) };
}
