import { solveInPlace } from '../statistics/linear-solve';
import type { ResistanceShares } from './conductance';

/** One record of a clean exchanger: UA in W/K at two flows, in any unit that all records share. */
export interface ConductanceRecord {
  readonly flow1: number;
  readonly flow2: number;
  readonly ua: number;
}

export interface ConductanceFit {
  /** UA at the flows of the first record, which are the reference. */
  readonly clean: number;
  readonly shares: ResistanceShares;
  /** Covariance of the three shares: variances of film 1, film 2 and wall, then of 1 with 2, 1 with wall, 2 with wall. */
  readonly covariance: readonly [number, number, number, number, number, number];
  /** Variance that the records' scatter shows beyond what they state, over that: χ²/ν − 1, at least 0 (after Birge 1932, Phys. Rev. 40:207). */
  readonly excessVariance: number;
  /** Degrees of freedom of that excess: records less terms; 0 where they are as many. */
  readonly degreesOfFreedom: number;
}

export type ConductanceFault =
  /** Records whose flows lie so near each other that a term is not known to half of the whole resistance. */
  | 'undetermined'
  /** A side of the exchanger would have a resistance below 0, by more than the records' own uncertainty. */
  | 'negative';

/** A term that is not known to this share of the whole resistance is not determined: own rule. */
const determinedWithin = 0.5;

/**
 * Fits 1/UA = a q₁^−n + b q₂^−n + w to three or more records by least squares of relative errors (the method that Wilson published in
 * 1915 for one side, with both films at once). `relativeU` is the records' own relative standard uncertainty. A wall that comes
 * out below 0 within twice its uncertainty is none: a and b are then fitted alone.
 */
export function fitConductance(
  records: readonly ConductanceRecord[],
  exponent: number,
  relativeU: number,
): ConductanceFit | ConductanceFault {
  const [first] = records;
  if (first === undefined || records.length < 3) return 'undetermined';
  const rows = records.map(({ flow1, flow2, ua }) => {
    const over = ua / first.ua;
    return [over * (flow1 / first.flow1) ** -exponent, over * (flow2 / first.flow2) ** -exponent, over];
  });
  const whole = leastSquares(rows, relativeU);
  if (!whole.u.every((u) => u < determinedWithin)) return 'undetermined';
  const [, , wall = Number.NaN] = whole.terms;
  if (wall >= 0) return asFit(first.ua, whole);
  if (wall < -2 * (whole.u[2] ?? 0)) return 'negative';
  return asFit(
    first.ua,
    leastSquares(
      rows.map((row) => row.slice(0, 2)),
      relativeU,
    ),
  );
}

interface Solution {
  readonly terms: readonly number[];
  readonly u: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly excessVariance: number;
  readonly degreesOfFreedom: number;
}

/** Terms of Σ xᵢ termᵢ = 1 with their covariance, JCGM 100:2008 H.3 with a known uncertainty of each row. */
function leastSquares(rows: readonly (readonly number[])[], relativeU: number): Solution {
  const n = rows[0]?.length ?? 0;
  const index = Array.from({ length: n }, (_, i) => i);
  const sum = (of: (row: readonly number[]) => number): number => rows.reduce((total, row) => total + of(row), 0);
  const product = (i: number, j: number): number => sum((row) => (row[i] ?? 0) * (row[j] ?? 0));
  const matrix = (): Float64Array => Float64Array.from(index.flatMap((i) => index.map((j) => product(i, j))));
  const terms = solveInPlace(
    matrix(),
    Float64Array.from(index, (i) => sum((row) => row[i] ?? 0)),
  );
  const columns = index.map((k) =>
    solveInPlace(
      matrix(),
      Float64Array.from(index, (i) => (i === k ? 1 : 0)),
    ),
  );
  const covariance = columns.map((column) => Array.from(column, (value) => value * relativeU * relativeU));
  const squares = sum((row) => (1 - row.reduce((total, x, i) => total + x * (terms[i] ?? 0), 0)) ** 2);
  const degreesOfFreedom = rows.length - n;
  const excessVariance =
    degreesOfFreedom > 0 ? Math.max(0, squares / (relativeU * relativeU * degreesOfFreedom) - 1) : 0;
  return {
    terms: [...terms],
    covariance,
    excessVariance,
    degreesOfFreedom,
    u: index.map((i) => Math.sqrt(covariance[i]?.[i] ?? Number.NaN)),
  };
}

function asFit(
  ua: number,
  { terms, covariance, excessVariance, degreesOfFreedom }: Solution,
): ConductanceFit | ConductanceFault {
  const [film1 = Number.NaN, film2 = Number.NaN, wall = 0] = terms;
  if (!(film1 > 0 && film2 > 0)) return 'negative';
  const sum = film1 + film2 + wall;
  const of = (i: number, j: number): number => (covariance[i]?.[j] ?? 0) / (sum * sum);
  return {
    clean: ua / sum,
    shares: { film1: film1 / sum, film2: film2 / sum, wall: wall / sum },
    covariance: [of(0, 0), of(1, 1), of(2, 2), of(0, 1), of(0, 2), of(1, 2)],
    excessVariance,
    degreesOfFreedom,
  };
}

/** Relative standard uncertainty of the clean UA that a fit gives at other flows. */
export function fittedRelativeU(
  { shares, covariance }: Pick<ConductanceFit, 'shares' | 'covariance'>,
  shareOfFlow1: number,
  shareOfFlow2: number,
  exponent: number,
): number {
  const x = shareOfFlow1 ** -exponent;
  const y = shareOfFlow2 ** -exponent;
  const [ofX, ofY, ofWall, xy, xWall, yWall] = covariance;
  const variance = ofX * x * x + ofY * y * y + ofWall + 2 * (xy * x * y + xWall * x + yWall * y);
  return Math.sqrt(Math.max(0, variance)) / (shares.film1 * x + shares.film2 * y + shares.wall);
}
