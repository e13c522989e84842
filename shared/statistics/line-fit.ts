/** A straight line y = a + b x through points, with what their scatter makes of its slope. */
export interface LineFit {
  readonly slope: number;
  /** Standard uncertainty of the slope by the scatter about the line; NaN for fewer than three points. */
  readonly slopeU: number;
  /** y at the mean of x. */
  readonly meanY: number;
  readonly degreesOfFreedom: number;
}

/**
 * Least squares with y alone uncertain, all points alike (GUM, JCGM 100:2008, H.3.2): b = Σ(x−x̄)(y−ȳ)/Σ(x−x̄)²,
 * u(b) = √(Σr²/(n−2)/Σ(x−x̄)²). Takes the points from `from` up to but not `to`. NaN for fewer than two.
 */
export function lineFit(x: ArrayLike<number>, y: ArrayLike<number>, from: number, to: number): LineFit {
  const n = to - from;
  let sumX = 0;
  let sumY = 0;
  for (let i = from; i < to; i += 1) {
    sumX += x[i] as number;
    sumY += y[i] as number;
  }
  const meanX = sumX / n;
  const meanY = sumY / n;
  let xx = 0;
  let xy = 0;
  for (let i = from; i < to; i += 1) {
    xx += ((x[i] as number) - meanX) ** 2;
    xy += ((x[i] as number) - meanX) * ((y[i] as number) - meanY);
  }
  const slope = xx > 0 ? xy / xx : Number.NaN;
  let rest = 0;
  for (let i = from; i < to; i += 1) rest += ((y[i] as number) - meanY - slope * ((x[i] as number) - meanX)) ** 2;
  return {
    slope,
    slopeU: n < 3 ? Number.NaN : Math.sqrt(rest / (n - 2) / xx),
    meanY,
    degreesOfFreedom: n - 2,
  };
}
