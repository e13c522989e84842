export interface Eigen {
  /** Largest first. */
  readonly values: Float64Array;
  /** One a row, in the order of the values, of length 1. */
  readonly vectors: Float64Array;
}

/** Eigenvalues and vectors of a symmetric matrix, row by row, by Jacobi's rotations (Golub & Van Loan, Matrix Computations, 8.5). */
export function symmetricEigen(matrix: Float64Array, size: number): Eigen {
  const a = matrix.slice();
  const v = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) v[i * size + i] = 1;
  for (let sweep = 0; sweep < 60 && offDiagonal(a, size) > 0; sweep += 1)
    for (let p = 0; p < size; p += 1) for (let q = p + 1; q < size; q += 1) rotate(a, v, size, p, q);
  const order = [...new Array(size).keys()].sort((i, j) => (a[j * size + j] ?? 0) - (a[i * size + i] ?? 0));
  return {
    values: Float64Array.from(order, (i) => a[i * size + i] ?? 0),
    vectors: Float64Array.from(order.flatMap((i) => [...v.subarray(i * size, (i + 1) * size)])),
  };
}

function offDiagonal(a: Float64Array, size: number): number {
  let sum = 0;
  for (let p = 0; p < size; p += 1) for (let q = p + 1; q < size; q += 1) sum += (a[p * size + q] as number) ** 2;
  return sum;
}

/** Turns the plane of p and q until their product is gone; rows of `v` turn with it. */
function rotate(a: Float64Array, v: Float64Array, size: number, p: number, q: number): void {
  const pq = a[p * size + q] as number;
  if (pq === 0) return;
  const theta = ((a[q * size + q] as number) - (a[p * size + p] as number)) / (2 * pq);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const turn = (cells: Float64Array, one: number, other: number): void => {
    const x = cells[one] as number;
    const y = cells[other] as number;
    cells[one] = c * x - t * c * y;
    cells[other] = t * c * x + c * y;
  };
  for (let i = 0; i < size; i += 1) turn(a, i * size + p, i * size + q);
  for (let i = 0; i < size; i += 1) {
    turn(a, p * size + i, q * size + i);
    turn(v, p * size + i, q * size + i);
  }
}
