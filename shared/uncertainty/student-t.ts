/**
 * Student's t distribution with `nu` degrees of freedom: probability that |t| stays below `t`,
 * 1 − I_x(ν/2, 1/2) with x = ν/(ν + t²) (Abramowitz & Stegun 26.7.1 with 26.5.27).
 */
export function studentTCoverage(t: number, nu: number): number {
  return 1 - incompleteBeta(nu / (nu + t * t), nu / 2, 0.5);
}

/**
 * Coverage factor k_p = t_p(ν) of an interval with probability p (GUM G.3.2, table G.2); ν at least 1. By bisection, as
 * the coverage grows with t.
 */
export function studentTFactor(nu: number, probability: number): number {
  let low = 0;
  let high = 1;
  while (studentTCoverage(high, nu) < probability) high *= 2;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (studentTCoverage(middle, nu) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Regularised incomplete beta function I_x(a, b), by its continued fraction (DLMF 8.17.22, modified Lentz). */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(1 - x) - logBeta(a, b)) / a;
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / notZero(1 - ((a + b) * x) / (a + 1), tiny);
  let fraction = d;
  for (let m = 1; m <= 300; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / notZero(1 + even * d, tiny);
    c = notZero(1 + even / c, tiny);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / notZero(1 + odd * d, tiny);
    c = notZero(1 + odd / c, tiny);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-14) break;
  }
  return front * fraction;
}

const notZero = (value: number, tiny: number): number => (Math.abs(value) < tiny ? tiny : value);

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** ln Γ(z), z > 0: Stirling's series (Abramowitz & Stegun 6.1.40) from z = 10 upward, below by Γ(z + 1) = z Γ(z). */
function logGamma(z: number): number {
  let shifted = z;
  let below = 0;
  while (shifted < 10) {
    below += Math.log(shifted);
    shifted += 1;
  }
  const inverse = 1 / shifted;
  const square = inverse * inverse;
  const series = inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188))));
  return (shifted - 0.5) * Math.log(shifted) - shifted + 0.5 * Math.log(2 * Math.PI) + series - below;
}
