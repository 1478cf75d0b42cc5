/** Depths against the length of cable, near the length in use. */
export interface DepthsByLength {
  /** The depths at a length, m. */
  readonly at: (lengthM: number) => readonly number[];
  /** Change of each depth per m of cable. */
  readonly slopes: readonly number[];
}

/** Nearer to each other than this, m, two lengths give no slope worth having. */
const LEAST_SPAN_M = 0.5;

/**
 * The parabola through each depth at a shorter, the present and a longer length of cable. What the counter does not
 * know about the length is a few per cent of it, over which depth bends by far less than a band is drawn to; so
 * one pair of solves serves scale, offset and "ten feet more". `undefined` where a side has no answer.
 */
export function depthsByLength(
  lengthM: number,
  values: readonly number[],
  lengthsM: readonly number[],
  depthsAt: (lengthM: number) => readonly number[] | undefined,
): DepthsByLength | undefined {
  const less = lengthM - Math.min(...lengthsM);
  const more = Math.max(...lengthsM) - lengthM;
  if (!(less >= LEAST_SPAN_M && more >= LEAST_SPAN_M)) return undefined;
  const shorter = depthsAt(lengthM - less);
  const longer = depthsAt(lengthM + more);
  if (shorter === undefined || longer === undefined) return undefined;
  const slopes: number[] = [];
  const bends: number[] = [];
  for (const [i, value] of values.entries()) {
    const up = ((longer[i] ?? value) - value) / more;
    const down = (value - (shorter[i] ?? value)) / less;
    const bend = (up - down) / (more + less);
    bends.push(bend);
    slopes.push(down + bend * less);
  }
  const at = (otherM: number): number[] => {
    const step = otherM - lengthM;
    return values.map((value, i) => value + step * ((slopes[i] ?? 0) + step * (bends[i] ?? 0)));
  };
  return { at, slopes };
}
