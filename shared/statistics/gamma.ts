/** Below this the argument is raised by Γ(x + 1) = x Γ(x) until Stirling's series holds to 1e-15. */
const stirlingFrom = 15;

/** ln Γ(x) for x > 0: Stirling's series (NIST Digital Library of Mathematical Functions, 5.11.1), raised by recurrence (5.5.1). */
export function logGamma(x: number): number {
  let raised = x;
  let product = 1;
  while (raised < stirlingFrom) {
    product *= raised;
    raised += 1;
  }
  const r = 1 / (raised * raised);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / raised;
  return (raised - 0.5) * Math.log(raised) - raised + Math.log(2 * Math.PI) / 2 + series - Math.log(product);
}

const smallest = 1e-300;

/**
 * Upper regularised incomplete gamma function Q(a, x), a > 0, x ≥ 0: the series (NIST DLMF 8.7.1) for small x, the continued
 * fraction (8.9.2, by Lentz) for large. Relative error about 1e-13.
 */
export function upperGamma(a: number, x: number): number {
  if (!(x > 0)) return 1;
  const scale = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? 1 - scale * lowerSeries(a, x) : scale * upperFraction(a, x);
}

/** P(a, x) = 1 − Q(a, x), without loss of digits where it is small. */
export function lowerGamma(a: number, x: number): number {
  if (!(x > 0)) return 0;
  if (x >= a + 1) return 1 - upperGamma(a, x);
  return Math.exp(a * Math.log(x) - x - logGamma(a)) * lowerSeries(a, x);
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; Math.abs(term) > Math.abs(sum) * 1e-17 && n < 10_000; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / smallest;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < 10_000; n += 1) {
    const step = -n * (n - a);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return fraction;
}
