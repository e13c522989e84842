/** Chance, handed in: the same source gives the same sensors and the same noise. */
export interface RandomSource {
  /** Evenly in [0, 1). */
  uniform(): number;
}

/** Evenly in [−1, 1). */
export const within = (source: RandomSource): number => 2 * source.uniform() - 1;

/** Normal deviate of mean 0 and deviation 1 (Box and Muller 1958; one of the pair is used). */
export function normal(source: RandomSource): number {
  const radius = Math.sqrt(-2 * Math.log(1 - source.uniform()));
  return radius * Math.cos(2 * Math.PI * source.uniform());
}
