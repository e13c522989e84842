import type { GuidedReading } from '@ebbline/shared/contract/guided-test';
import type { Measured } from './guided-record';
import type { MeasurePlan } from './guided-test';
import type { MeanSeries } from './mean-series';
import { driftOf, isSteady } from './steadiness';

/** Whether everything that is watched has been steady over the window, and the least time is over. */
export function mayEnd(
  { readings, windowS, blockS, leastS }: MeasurePlan,
  series: MeanSeries,
  seconds: number,
): boolean {
  if (seconds < Math.max(leastS, windowS)) return false;
  return readings.every(
    ({ allowedDrift }, i) => allowedDrift === null || isSteady(driftOf(series, i, windowS, blockS), allowedDrift),
  );
}

/** Means over the window, with what the scatter of its blocks says of them (GUM 4.2.3: s/√n). */
export function measuredOf(plan: MeasurePlan, series: MeanSeries, seconds: number): Measured {
  const from = series.windowFrom(plan.windowS);
  const readings = plan.readings.map(({ reading, title, quantity }, i): GuidedReading => {
    const means = (series.means[i] ?? []).slice(from);
    const n = means.length;
    const mean = n === 0 ? series.overall(i) : means.reduce((sum, one) => sum + one, 0) / n;
    const squares = means.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    return {
      reading,
      title,
      quantity,
      mean,
      scatter: n < 2 ? 0 : Math.sqrt(squares / (n - 1) / n),
      degreesOfFreedom: Math.max(1, n - 1),
      least: series.least[i] ?? mean,
      most: series.most[i] ?? mean,
    };
  });
  const unseen = plan.readings.flatMap(({ reading }, i) => {
    const samples = series.unseen[i] ?? 0;
    return samples === 0 ? [] : [{ reading, samples }];
  });
  return { seconds, samples: series.samples, readings, ...(unseen.length === 0 ? {} : { unseen }) };
}
