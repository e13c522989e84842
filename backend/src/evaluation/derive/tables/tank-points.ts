import { counted, tankRate, tankVolume, timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import { theilSenSlope } from '@ebbline/shared/statistics/theil-sen';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveSeparatorRate, deriveSupplyTankRate, hasSeparatorRate, hasSupplyTankRate } from '../points/tank-rates';
import { deriveTimeToEmpty, deriveTimeToFull, hasTimeToEmpty, hasTimeToFull } from '../points/times-of-tanks';
import { deriveLoopWaterTrend } from '../points/trends';
import { deriveTopUpRate, hasTopUp } from '../points/top-up-rate';
import { deriveLoopWaterRate, deriveLoopWaterVolume, deriveWaterVolume, hasWaterVolume } from '../points/water-volumes';

/** Water in the tanks, where it goes, and how long it lasts. */
export const tankPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'supplyTankRate',
    unit: 'm3/s',
    inputs: ['supplyTank.level, or else transfer.flow and loop.flow', 'tank.<id>.level'],
    equation: tankRate,
    derive: deriveSupplyTankRate,
    applies: hasSupplyTankRate,
  },
  {
    id: 'separatorRate',
    unit: 'm3/s',
    inputs: ['separator.level'],
    equation: tankRate,
    derive: deriveSeparatorRate,
    applies: hasSeparatorRate,
  },
  {
    id: 'waterVolume',
    unit: 'm3',
    inputs: ['supplyTank.level', 'separator.level', 'tank.<id>.level'],
    equation: tankVolume,
    derive: deriveWaterVolume,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterVolume',
    unit: 'm3',
    inputs: ['waterVolume of every unit on the loop'],
    equation: tankVolume,
    derive: deriveLoopWaterVolume,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterRate',
    unit: 'm3/s',
    inputs: ['supplyTankRate and separatorRate of every unit on the loop'],
    equation: tankRate,
    derive: deriveLoopWaterRate,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterTrend',
    unit: 'm3/s',
    inputs: ['loopWaterVolume', 'topUp.volume of every unit on the loop'],
    equation: theilSenSlope,
    derive: deriveLoopWaterTrend,
    applies: hasWaterVolume,
  },
  {
    id: 'topUpRate',
    unit: 'm3/s',
    inputs: ['topUp.volume'],
    equation: counted,
    derive: deriveTopUpRate,
    applies: hasTopUp,
  },
  {
    id: 'timeToEmpty',
    unit: 's',
    inputs: ['supplyTank.level', 'supplyTankRate'],
    equation: timeUntilGone,
    derive: deriveTimeToEmpty,
    applies: hasTimeToEmpty,
  },
  {
    id: 'timeToFull',
    unit: 's',
    inputs: ['separator.level', 'separatorRate'],
    equation: timeUntilGone,
    derive: deriveTimeToFull,
    applies: hasTimeToFull,
  },
];
