import { hotellingLimit } from '@ebbline/shared/statistics/hotelling';
import { componentDistances, speLimit } from '@ebbline/shared/statistics/principal-components';
import { symmetricEigen } from '@ebbline/shared/statistics/symmetric-eigen';

/** Share of good means that pass one limit: at a mean every ten minutes twice a year. Own rule. */
export const patternAlpha = 4e-5;

/** So much of the spread is kept in principal components; the rest is what SPE judges. Common practice, no source. */
const keptSpread = 0.9;

/** T² along the kept components and SPE off them, each over its limit; NaN where there are no such components. */
export interface Pattern {
  judge(sample: ArrayLike<number>): { readonly along: number; readonly off: number };
}

/** From mean and sums of products of `count` good means: signals in standard deviations, so that each weighs the same. One without spread is left out. */
export function makePattern(mean: ArrayLike<number>, products: ArrayLike<number>, count: number): Pattern {
  const size = mean.length;
  const varianceOf = (i: number): number => (products[i * size + i] ?? 0) / (count - 1);
  const moving = [...new Array<number>(size).keys()].filter((i) => varianceOf(i) > 0);
  const deviation = moving.map((i) => Math.sqrt(varianceOf(i)));
  const correlation = Float64Array.from(
    moving.flatMap((i, a) =>
      moving.map((j, b) => (products[i * size + j] ?? 0) / (count - 1) / ((deviation[a] ?? 1) * (deviation[b] ?? 1))),
    ),
  );
  const eigen = symmetricEigen(correlation, moving.length);
  const kept = componentsKept(eigen.values);
  const alongLimit = kept > 0 && count > kept ? hotellingLimit(kept, count, patternAlpha) : Number.NaN;
  const offLimit = kept < moving.length ? speLimit(eigen.values, kept, patternAlpha) : Number.NaN;
  const away = new Float64Array(moving.length);
  return {
    judge: (sample) => {
      moving.forEach((i, place) => {
        away[place] = ((sample[i] ?? Number.NaN) - (mean[i] ?? 0)) / (deviation[place] ?? 1);
      });
      const { t2, spe } = componentDistances(away, eigen, kept);
      return { along: t2 / alongLimit, off: spe / offLimit };
    },
  };
}

function componentsKept(values: Float64Array): number {
  const whole = values.reduce((sum, value) => sum + value, 0);
  let sum = 0;
  let kept = 0;
  while (kept < values.length && sum < keptSpread * whole) {
    sum += values[kept] as number;
    kept += 1;
  }
  return kept;
}
