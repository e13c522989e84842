export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Nodes and weights of Gauss–Legendre quadrature between two bounds: roots of P_n by Newton's method (NIST DLMF 3.5.15, 18.9.1). */
export function gaussLegendre(count: number, from: number, to: number): QuadratureRule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step += 1) {
      let before = 1;
      let value = x;
      for (let n = 2; n <= count; n += 1) [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
      slope = (count * (x * value - before)) / (x * x - 1);
      const move = value / slope;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    nodes[count - 1 - i] = from + ((x + 1) * (to - from)) / 2;
    weights[count - 1 - i] = (to - from) / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
