import { normalDensity, normalProbability } from './distributions';
import { gaussLegendre } from './gauss-legendre';
import { solveInPlace } from './linear-solve';
import { rootBetween } from './root-between';

const nodeCount = 64;

/**
 * Mean number of samples until a one-sided tabular CUSUM that starts at 0 signals; k, h and the shift of the mean in standard
 * deviations of independent normal samples. Page's integral equation L(u) = 1 + L(0) Φ(k − u − δ) + ∫₀ʰ L(x) φ(x + k − u − δ) dx
 * (Page 1954, Biometrika 41) by Gauss–Legendre nodes, u = 0 one of the unknowns.
 */
export function cusumRunLengthOneSided(k: number, h: number, shift: number): number {
  const { nodes, weights } = gaussLegendre(nodeCount, 0, h);
  const size = nodeCount + 1;
  const starts = Float64Array.of(0, ...nodes);
  const a = new Float64Array(size * size);
  const b = new Float64Array(size).fill(1);
  starts.forEach((u, row) => {
    a[row * size] = -normalProbability(k - u - shift);
    for (let i = 0; i < nodeCount; i += 1)
      a[row * size + i + 1] = -(weights[i] as number) * normalDensity((nodes[i] as number) + k - u - shift);
    a[row * size + row] = (a[row * size + row] as number) + 1;
  });
  return solveInPlace(a, b)[0] ?? Number.NaN;
}

/** Of both sides together: 1/ARL = 1/ARL⁺ + 1/ARL⁻ (Montgomery, Introduction to Statistical Quality Control, eq. 9.7). */
export const cusumRunLength = (k: number, h: number, shift: number): number =>
  1 / (1 / cusumRunLengthOneSided(k, h, shift) + 1 / cusumRunLengthOneSided(k, h, -shift));

/** h at which a two-sided CUSUM signals falsely once in so many samples on the mean. 10 to 10⁷ samples. */
export const cusumLimit = (k: number, samples: number): number =>
  rootBetween((h) => Math.log(cusumRunLength(k, h, 0)), Math.log(samples), 0.1, 20);

/**
 * Mean number of samples until a two-sided EWMA that starts at the target leaves its steady limits ± L σ √(λ/(2−λ)):
 * L(u) = 1 + (1/λ) ∫ L(x) φ((x − (1−λ)u)/λ − δ) dx over the limits (Crowder 1987, Technometrics 29; Lucas & Saccucci 1990).
 */
export function ewmaRunLength(lambda: number, width: number, shift: number): number {
  const limit = width * Math.sqrt(lambda / (2 - lambda));
  const { nodes, weights } = gaussLegendre(nodeCount, -limit, limit);
  const seen = (from: number, i: number): number =>
    ((weights[i] as number) / lambda) * normalDensity(((nodes[i] as number) - (1 - lambda) * from) / lambda - shift);
  const a = new Float64Array(nodeCount * nodeCount);
  const b = new Float64Array(nodeCount).fill(1);
  nodes.forEach((u, row) => {
    for (let i = 0; i < nodeCount; i += 1) a[row * nodeCount + i] = (row === i ? 1 : 0) - seen(u, i);
  });
  const lengths = solveInPlace(a, b);
  return nodes.reduce((sum, _, i) => sum + seen(0, i) * (lengths[i] as number), 1);
}

/** Mean number of samples until one alone lies beyond ± width standard deviations: 1/p (NIST/SEMATECH e-Handbook 6.3.1). */
export const shewhartRunLength = (width: number): number => 1 / (2 * normalProbability(-width));
