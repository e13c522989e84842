/** S: pairs that rise less pairs that fall, in order of time (Mann; Kendall; Gilbert 1987, ch. 16). */
export function mannKendallS(y: ArrayLike<number>, count: number): number {
  let s = 0;
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1) s += Math.sign((y[j] ?? Number.NaN) - (y[i] ?? Number.NaN));
  return s;
}

/** Variance of S without a trend and without ties: n(n−1)(2n+5)/18. */
export const mannKendallVariance = (count: number): number => (count * (count - 1) * (2 * count + 5)) / 18;

/** z = (S ∓ 1)/σ with the continuity correction; 0 where S is 0. |z| > 2 is a trend at about 95 %. Ties make it too small, which is on the safe side. */
export function mannKendallZ(y: ArrayLike<number>, count: number): number {
  const s = mannKendallS(y, count);
  return s === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(mannKendallVariance(count));
}
