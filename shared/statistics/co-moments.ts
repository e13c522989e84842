/**
 * Takes one sample of several signals into their means and their sums of products of deviations, without loss of digits
 * (Chan, Golub & LeVeque 1983, The American Statistician 37:242–247). `count` counts this sample; the sums over count − 1 are covariances.
 */
export function addToMoments(sample: Float64Array, count: number, mean: Float64Array, products: Float64Array): void {
  const size = sample.length;
  for (let i = 0; i < size; i += 1) {
    const before = (sample[i] as number) - (mean[i] as number);
    for (let j = 0; j <= i; j += 1) {
      const other = (sample[j] as number) - (mean[j] as number);
      products[i * size + j] = (products[i * size + j] as number) + (before * other * (count - 1)) / count;
      products[j * size + i] = products[i * size + j] as number;
    }
  }
  for (let i = 0; i < size; i += 1)
    mean[i] = (mean[i] as number) + ((sample[i] as number) - (mean[i] as number)) / count;
}
