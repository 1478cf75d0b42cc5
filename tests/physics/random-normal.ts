/** Normal draws, always the same ones for a seed: a linear congruential generator and the Box-Muller transform. */
export function normalDraws(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
