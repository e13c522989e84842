import { cusumAbove } from '@ebbline/shared/statistics/cusum';
import { hotellingLimit } from '@ebbline/shared/statistics/hotelling';
import { speLimit } from '@ebbline/shared/statistics/principal-components';
import { theilSenSlope } from '@ebbline/shared/statistics/theil-sen';
import { timeToLimit } from '@ebbline/shared/statistics/time-to-limit';
import type { DerivedPointOfUnit } from '../derived-point';
import { hasCleanConductance } from '../points/exchanger-fouling';
import { hasFilterResistance } from '../points/filter-resistance';
import { hasGasAllowance } from '../points/in-leak';
import { derivePatternDistance, derivePatternResidual, hasPattern } from '../points/pattern';
import { hasPlateRatio } from '../points/plate-resistance';
import { deriveShift, hasKnownGood, hasShift } from '../points/shifts';
import {
  deriveFilterTrend,
  deriveInLeakTrend,
  deriveMarginTrend,
  derivePlateTrend,
  deriveUaTrend,
} from '../points/slow-trends';
import { deriveFilterTimeToLimit, deriveMarginTimeToLimit } from '../points/trends';
import { patternSignals, shiftSignals } from '../watched-signals';

const time = {
  unit: 's',
  formula: 't = (limit − now) ÷ slope',
  source: 'straight line by Theil–Sen (Sen 1968), told where Mann–Kendall |z| > 2; own rule',
  equation: timeToLimit,
} as const;

const slope = {
  formula: 'd = 86 400 s · median of (yⱼ − yᵢ) ÷ (xⱼ − xᵢ)',
  source: 'Sen 1968, J. Amer. Stat. Assoc. 63:1379–1389',
  equation: theilSenSlope,
} as const;

const hasNodes: DerivedPointOfUnit['applies'] = ({ unit }) => unit.nodes.length > 0;

const shiftOf = (signal: (typeof shiftSignals)[number]): DerivedPointOfUnit => ({
  id: `${signal}Shift`,
  unit: '1',
  inputs: [`means of ${signal} over 10 min`, 'knownGood'],
  formula: 'C⁺ = max(0, x − (μ₀ + σ/2) + C⁺), C⁻ = max(0, (μ₀ − σ/2) − x + C⁻); the larger ÷ (h σ)',
  source:
    'tabular CUSUM (Montgomery, Introduction to Statistical Quality Control, eq. 9.2); h by its run length (Page 1954)',
  equation: cusumAbove,
  derive: deriveShift(signal, `${signal}Shift`),
  applies: hasShift(signal),
  isSet: hasKnownGood,
  watches: signal,
});

/** What comes, by how things have gone, and what is no longer as it was. */
export const trendPoints: readonly DerivedPointOfUnit[] = [
  {
    ...time,
    id: 'marginTimeToLimit',
    inputs: ['vacuumMarginWorst'],
    derive: deriveMarginTimeToLimit,
    applies: hasNodes,
  },
  {
    ...time,
    id: 'filterTimeToLimit',
    inputs: ['filterResistance'],
    derive: deriveFilterTimeToLimit,
    applies: hasFilterResistance,
  },
  {
    ...slope,
    id: 'marginTrend',
    unit: 'Pa',
    inputs: ['vacuumMarginWorst'],
    derive: deriveMarginTrend,
    applies: hasNodes,
  },
  {
    ...slope,
    id: 'filterTrend',
    unit: '1',
    inputs: ['filterResistance'],
    derive: deriveFilterTrend,
    applies: hasFilterResistance,
  },
  {
    ...slope,
    id: 'inLeakTrend',
    unit: 'm3/s',
    inputs: ['inLeak'],
    derive: deriveInLeakTrend,
    applies: hasGasAllowance,
  },
  { ...slope, id: 'uaTrend', unit: '1', inputs: ['uaRatio'], derive: deriveUaTrend, applies: hasCleanConductance },
  {
    ...slope,
    id: 'plateTrend',
    unit: '1',
    inputs: ['plate.<id>.resistanceRatio'],
    derive: derivePlateTrend,
    applies: hasPlateRatio,
  },
  ...shiftSignals.map(shiftOf),
  {
    id: 'patternDistance',
    unit: '1',
    inputs: [...patternSignals, 'knownGood'],
    formula: 'T² = Σ tₐ² ÷ λₐ over the kept components, ÷ p (n+1)(n−1) ÷ (n (n−p)) · F',
    source: 'Hotelling T² of new points (Montgomery, Introduction to Statistical Quality Control, eq. 11.20)',
    equation: hotellingLimit,
    derive: derivePatternDistance,
    applies: hasPattern,
    isSet: hasKnownGood,
  },
  {
    id: 'patternResidual',
    unit: '1',
    inputs: [...patternSignals, 'knownGood'],
    formula: 'SPE = |x − P Pᵀ x|² ÷ its limit',
    source: 'Jackson & Mudholkar 1979, Technometrics 21',
    equation: speLimit,
    derive: derivePatternResidual,
    applies: hasPattern,
    isSet: hasKnownGood,
  },
];
