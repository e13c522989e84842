import { lineFit } from '@ebbline/shared/statistics/line-fit';
import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import type { MeanSeries } from './mean-series';

/** How a reading moved over the window. */
export interface Drift {
  /** Slope × window, in the unit of the reading; NaN before the window is full. */
  readonly drift: number;
  /** Of the drift, for 95.45 %. */
  readonly expanded: number;
}

/** Fewer means than this tell no slope with an uncertainty that is worth something. Own rule. */
export const fewestMeans = 6;

/**
 * Slope of the newest means by least squares (GUM, JCGM 100:2008, H.3) over the window, with Student's factor for n − 2 degrees
 * of freedom.
 */
export function driftOf(series: MeanSeries, reading: number, windowS: number, blockS: number): Drift {
  const means = series.means[reading] ?? [];
  const wanted = Math.round(windowS / blockS);
  if (means.length < Math.max(fewestMeans, wanted)) return { drift: Number.NaN, expanded: Number.NaN };
  const { slope, slopeU, degreesOfFreedom } = lineFit(series.atS, means, series.windowFrom(windowS), means.length);
  return { drift: slope * windowS, expanded: coverageFactorOf(degreesOfFreedom) * slopeU * windowS };
}

/** The whole interval of the drift lies within what is allowed: neither a slope nor noise that could hide one. Own rule. */
export const isSteady = ({ drift, expanded }: Drift, allowed: number): boolean => Math.abs(drift) + expanded <= allowed;
