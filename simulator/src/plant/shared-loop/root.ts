/**
 * Zero of a continuous function that changes sign between `low` and `high`, by false position in its Illinois form
 * (Dowell and Jarratt 1971): the end that stays has its weight halved.
 */
export function root(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0 || Math.sign(fa) === Math.sign(fb)) return Math.abs(fa) <= Math.abs(fb) ? a : b;
  for (let i = 0; i < 60; i += 1) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) < tolerance || Math.abs(b - a) < 1e-12) return x;
    if (Math.sign(fx) === Math.sign(fb)) fa /= 2;
    else [a, fa] = [b, fb];
    [b, fb] = [x, fx];
  }
  return b;
}
