/** A line y = intercept + slope·x through points by least squares, with what their scatter says of it. */
export interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptU: number;
  readonly slopeU: number;
  /** Correlation of intercept and slope. */
  readonly correlation: number;
  /** Standard deviation of one y about the line. */
  readonly scatter: number;
  /** n − 2. */
  readonly degreesOfFreedom: number;
}

/** Least squares with equal weights (GUM H.3, eq. H.13a to H.14); at least three points, of different x. */
export function straightLine(x: ArrayLike<number>, y: ArrayLike<number>, count = x.length): StraightLine {
  let sumX = 0;
  let sumY = 0;
  for (let i = 0; i < count; i += 1) {
    sumX += x[i] ?? Number.NaN;
    sumY += y[i] ?? Number.NaN;
  }
  const meanX = sumX / count;
  const meanY = sumY / count;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < count; i += 1) {
    const dx = (x[i] ?? Number.NaN) - meanX;
    xx += dx * dx;
    xy += dx * ((y[i] ?? Number.NaN) - meanY);
  }
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const rest = (y[i] ?? Number.NaN) - intercept - slope * (x[i] ?? Number.NaN);
    squares += rest * rest;
  }
  const scatter = Math.sqrt(squares / (count - 2));
  const ofSquares = Math.sqrt(xx / count + meanX * meanX);
  return {
    intercept,
    slope,
    interceptU: (scatter * ofSquares) / Math.sqrt(xx),
    slopeU: scatter / Math.sqrt(xx),
    correlation: -meanX / ofSquares,
    scatter,
    degreesOfFreedom: count - 2,
  };
}

/** Standard uncertainty of the line at `x`, with the covariance of intercept and slope (GUM eq. H.15). */
export const lineUncertainty = ({ interceptU, slopeU, correlation }: StraightLine, x: number): number =>
  Math.sqrt(interceptU * interceptU + x * x * slopeU * slopeU + 2 * x * interceptU * slopeU * correlation);
