/** Random numbers that are the same at every run: a counter mixed by multiplications and shifts (mulberry32). */
export function seededDraws(seed: number): { readonly uniform: () => number; readonly normal: () => number } {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  /** Box and Muller 1958. */
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** Half the width of the shortest interval that holds a share of the sorted draws (JCGM 101:2008, 7.7). */
export function shortestHalfWidth(sorted: Float64Array, share: number): number {
  const held = Math.round(share * sorted.length);
  let least = Infinity;
  for (let i = 0; i + held < sorted.length; i += 1)
    least = Math.min(least, (sorted[i + held] ?? Number.NaN) - (sorted[i] ?? Number.NaN));
  return least / 2;
}
