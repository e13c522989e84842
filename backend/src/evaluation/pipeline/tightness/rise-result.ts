import type { TightnessResult, TightnessSteadiness, TightnessVerdict } from '@ebbline/shared/contract/tightness-test';
import { freeAirK, freeAirPa } from '@ebbline/shared/fluid-properties/air';
import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { studentQuantile } from '@ebbline/shared/statistics/distributions';
import { coverageFactor, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { zeroCelsiusK } from '@ebbline/shared/units/constants';
import { gasVolumeHalfWidth } from '../../derive/derive-constants';
import { meanOf, type RiseSeries } from './rise-series';

/** Fewer means than this make no result. Own rule. */
export const fewestBlocks = 6;
/** Each half needs so many to tell whether the rate stays. Own rule. */
const fewestOfHalf = 5;
/** Between begin and end of a test the error of one and the same sensor moves by no more than this share of its accuracy. Own rule. */
const driftShare = 0.1;
/** The gas follows the thermometer in the water to within this, K: what it cools or warms by itself meanwhile. Own rule. */
const gasFollowsK = 0.5;
/** Rates of the two halves may differ by this share of the limit and are called steady. Own rule. */
const steadyShare = 0.25;
/** Share of Student's distribution below the factor of an interval of 95.45 %. */
const below = 0.97725;

/** Standard uncertainties of what a test reads, as the site file states them, and what the vapour is of. */
export interface RiseAccuracies {
  readonly pressurePa: number;
  readonly temperatureK: number;
  /** 0 where the gas volume does not follow a level. */
  readonly levelM: number;
  readonly areaM2: number;
  readonly dry: boolean;
  readonly fluid: Fluid;
}

/** Pa m³/K of gas a second, as free m³/s: Q = (T_f / p_f) · d(pV/T)/dt (ideal gas; 40 CFR 1065.644 has the same as moles). */
export const freeAirOfSlope = (gasPerSecond: number): number => (gasPerSecond * freeAirK) / freeAirPa;

/** What comes in by the series so far; null while there is too little of it. */
export function riseResult(series: RiseSeries, accuracies: RiseAccuracies): TightnessResult | null {
  if (series.blocks < fewestBlocks) return null;
  const { slope, slopeU, meanY, degreesOfFreedom } = series.line();
  const freeAir = freeAirOfSlope(slope);
  const temperatureK = meanOf(series.temperatureK);
  const gasVolume = meanOf(series.volumeM3);
  const budget = budgetOf(series, accuracies, { freeAir, gas: meanY, slopeU, temperatureK, gasVolume });
  const variance = budget.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  const u = Math.sqrt(variance);
  const ofScatter = freeAirOfSlope(slopeU);
  // Welch–Satterthwaite (GUM G.4.1): the scatter alone has few degrees of freedom. Rounded down.
  const degrees = Math.floor((degreesOfFreedom * variance ** 2) / ofScatter ** 4);
  const many = !(degrees < 1000);
  const factor = many ? coverageFactor : studentQuantile(below, degrees);
  return {
    throughput: slope * temperatureK,
    freeAir,
    standardUncertainty: u,
    degreesOfFreedom: many ? null : degrees,
    coverageFactor: factor,
    expandedUncertainty: factor * u,
    pressureRise: (slope * series.spanS() * temperatureK) / gasVolume,
    gasVolume,
    gasTemperature: temperatureK - zeroCelsiusK,
    blocks: series.blocks,
    budget,
  };
}

interface Means {
  readonly freeAir: number;
  readonly gas: number;
  readonly slopeU: number;
  readonly temperatureK: number;
  readonly gasVolume: number;
}

function budgetOf(
  series: RiseSeries,
  { pressurePa, temperatureK: thermometerK, levelM, areaM2, dry, fluid }: RiseAccuracies,
  { freeAir, gas, slopeU, temperatureK, gasVolume }: Means,
): TightnessResult['budget'] {
  const spanS = series.spanS();
  // A sensor that has moved by u at the end turns the line by u/τ; both ends may have.
  const drift = (u: number): number => freeAirOfSlope((Math.SQRT2 * driftShare * u) / spanS);
  const gasPerPa = gasVolume / temperatureK;
  const vapourPerK = dry ? 0 : fluid.vapourPressureSlope(celsius(temperatureK - zeroCelsiusK));
  const gasPerK = gas / temperatureK + vapourPerK * gasPerPa;
  return [
    { from: 'scatter about the line', contribution: freeAirOfSlope(slopeU) },
    { from: 'gas volume', contribution: Math.abs(freeAir) * rectangular(gasVolumeHalfWidth) },
    { from: 'separator.pressure, drift', contribution: drift(pressurePa * gasPerPa) },
    { from: 'return.temperature, drift', contribution: drift(thermometerK * gasPerK) },
    { from: 'separator.level, drift', contribution: drift((levelM * areaM2 * gas) / gasVolume) },
    {
      from: 'gas warmer or colder than the thermometer',
      contribution: freeAirOfSlope((rectangular(gasFollowsK) * gasPerK) / spanS),
    },
  ];
}

/** Whether the rate of the second half is that of the first, by three standard uncertainties and by a part of the limit. */
export function steadinessOf(series: RiseSeries, limitM3PerS: number): TightnessSteadiness {
  const { blocks } = series;
  if (blocks < 2 * fewestOfHalf) return 'tooEarly';
  const middle = blocks >> 1;
  const first = series.line(0, middle);
  const second = series.line(middle, blocks);
  const grown = freeAirOfSlope(second.slope - first.slope);
  const u = freeAirOfSlope(Math.hypot(first.slopeU, second.slopeU));
  if (Math.abs(grown) <= Math.max(3 * u, steadyShare * limitM3PerS)) return 'steady';
  return grown > 0 ? 'growing' : 'falling';
}

/**
 * The whole interval has to lie on one side of the limit (guarded acceptance and rejection, JCGM 106:2012, 8.3). A rate that falls
 * may end below the limit, so it does not fail; one that grows does not pass; gas that goes out is no tight loop.
 */
export function verdictOf(
  { freeAir, expandedUncertainty }: TightnessResult,
  steadiness: TightnessSteadiness,
  limitM3PerS: number,
): TightnessVerdict {
  if (freeAir + expandedUncertainty < 0 || steadiness === 'tooEarly') return 'notDecided';
  if (freeAir + expandedUncertainty <= limitM3PerS) return steadiness === 'growing' ? 'notDecided' : 'passes';
  if (freeAir - expandedUncertainty > limitM3PerS) return steadiness === 'falling' ? 'notDecided' : 'fails';
  return 'notDecided';
}
