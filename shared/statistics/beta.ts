import { logGamma } from './gamma';

const smallest = 1e-300;
const nonZero = (value: number): number => (Math.abs(value) < smallest ? smallest : value);

/** Regularised incomplete beta function I_x(a, b), a, b > 0, 0 ≤ x ≤ 1: continued fraction (NIST DLMF 8.17.22, by Lentz). */
export function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  // The fraction converges fast on this side of the mean; I_x(a, b) = 1 − I_{1−x}(b, a) brings the other to it.
  return x < (a + 1) / (a + b + 2) ? (front * fractionOf(a, b, x)) / a : 1 - (front * fractionOf(b, a, 1 - x)) / b;
}

function fractionOf(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < 10_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return fraction;
}
