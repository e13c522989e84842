/** So many moments at least, of which each of both had another value than the one before at some: less tells nothing. */
const fewestMoments = 24;
const fewestValues = 5;

/**
 * Spearman's rank correlation of two series over the moments that both have, after a straight line is taken out of each: two that
 * merely drift do not move together. −1 to 1; null where too little was heard, or one of them stood still.
 */
export function movesWith(one: Float64Array, other: Float64Array): number | null {
  const pairs: [number, number][] = [];
  for (let i = 0; i < Math.min(one.length, other.length); i += 1) {
    const [a, b] = [one[i] ?? Number.NaN, other[i] ?? Number.NaN];
    if (Number.isFinite(a) && Number.isFinite(b)) pairs.push([a, b]);
  }
  if (pairs.length < fewestMoments) return null;
  const columns = [pairs.map(([a]) => a), pairs.map(([, b]) => b)] as const;
  if (columns.some((column) => new Set(column).size < fewestValues)) return null;
  const [x, y] = columns.map((column) => ranksOf(withoutLine(column))) as [readonly number[], readonly number[]];
  return pearson(x, y);
}

function withoutLine(values: readonly number[]): readonly number[] {
  const middle = (values.length - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  let [products, squares] = [0, 0];
  values.forEach((value, i) => {
    products += (i - middle) * (value - mean);
    squares += (i - middle) ** 2;
  });
  return values.map((value, i) => value - mean - (products / squares) * (i - middle));
}

/** Equal values share the mean of their ranks. */
function ranksOf(values: readonly number[]): readonly number[] {
  const order = values.map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value);
  const ranks = new Array<number>(values.length).fill(0);
  for (let from = 0; from < order.length;) {
    let to = from;
    while (to + 1 < order.length && order[to + 1]?.value === order[from]?.value) to += 1;
    for (let k = from; k <= to; k += 1) ranks[order[k]?.i ?? 0] = (from + to) / 2;
    from = to + 1;
  }
  return ranks;
}

function pearson(x: readonly number[], y: readonly number[]): number | null {
  const [meanX, meanY] = [x, y].map((all) => all.reduce((sum, value) => sum + value, 0) / all.length) as [
    number,
    number,
  ];
  let [xy, xx, yy] = [0, 0, 0];
  x.forEach((value, i) => {
    const [dx, dy] = [value - meanX, (y[i] ?? 0) - meanY];
    xy += dx * dy;
    xx += dx * dx;
    yy += dy * dy;
  });
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : null;
}
