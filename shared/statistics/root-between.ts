/** Where a rising function meets a value, between two bounds, by halving until the bounds are neighbours. */
export function rootBetween(rising: (x: number) => number, value: number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (rising(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
