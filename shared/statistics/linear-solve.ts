/** x of A x = b by Gaussian elimination with row pivots; `a` row by row, `b` as many as rows. Both are changed; the answer stands in `b`. NaN where A is singular. */
export function solveInPlace(a: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const at = (row: number, column: number): number => a[row * n + column] as number;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let row = k + 1; row < n; row += 1) if (Math.abs(at(row, k)) > Math.abs(at(pivot, k))) pivot = row;
    swapRows(a, b, k, pivot);
    for (let row = k + 1; row < n; row += 1) {
      const share = at(row, k) / at(k, k);
      for (let column = k; column < n; column += 1) a[row * n + column] = at(row, column) - share * at(k, column);
      b[row] = (b[row] as number) - share * (b[k] as number);
    }
  }
  for (let row = n - 1; row >= 0; row -= 1) {
    let sum = b[row] as number;
    for (let column = row + 1; column < n; column += 1) sum -= at(row, column) * (b[column] as number);
    const value = sum / at(row, row);
    b[row] = Number.isFinite(value) ? value : Number.NaN;
  }
  return b;
}

function swapRows(a: Float64Array, b: Float64Array, one: number, other: number): void {
  if (one === other) return;
  const n = b.length;
  for (let column = 0; column < n; column += 1) {
    const kept = a[one * n + column] as number;
    a[one * n + column] = a[other * n + column] as number;
    a[other * n + column] = kept;
  }
  const kept = b[one] as number;
  b[one] = b[other] as number;
  b[other] = kept;
}
