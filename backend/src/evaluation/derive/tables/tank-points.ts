import { exhaustWater } from '@ebbline/shared/hydraulics/exhaust-water';
import { counted, tankRate, tankVolume, timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import { waterBalance, waterBalanceSignificance } from '@ebbline/shared/hydraulics/water-balance';
import { theilSenSlope } from '@ebbline/shared/statistics/theil-sen';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveExhaustWaterLoss, hasExhaustWaterLoss } from '../points/exhaust-water-loss';
import { deriveSeparatorRate, deriveSupplyTankRate, hasSeparatorRate, hasSupplyTankRate } from '../points/tank-rates';
import { deriveTimeToEmpty, deriveTimeToFull, hasTimeToEmpty, hasTimeToFull } from '../points/times-of-tanks';
import { deriveLoopWaterTrend } from '../points/trends';
import { deriveTopUpRate, hasTopUp } from '../points/top-up-rate';
import { deriveWaterBalance, deriveWaterBalanceSignificance, hasWaterBalance } from '../points/water-balance';
import { deriveLoopWaterRate, deriveLoopWaterVolume, deriveWaterVolume, hasWaterVolume } from '../points/water-volumes';
import { dryGasSource } from './vapour-pressure-choice';

const water = 'conservation of water';

/** Water in the tanks, where it goes, and how long it lasts. */
export const tankPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'supplyTankRate',
    unit: 'm3/s',
    inputs: ['tank.<id>.level or supplyTank.level or transfer.flow', 'loop.flow'],
    siteFigures: ['tanks.supplyArea'],
    formula:
      'dV/dt = A·dL/dt, of the last minute, or ten seconds where they say something else; or q_transfer − q_loop',
    source: water,
    equation: tankRate,
    derive: deriveSupplyTankRate,
    applies: hasSupplyTankRate,
  },
  {
    id: 'separatorRate',
    unit: 'm3/s',
    inputs: ['separator.level'],
    siteFigures: ['tanks.separatorArea'],
    formula: 'dV/dt = A·dL/dt, of the last minute, or ten seconds where they say something else',
    source: water,
    equation: tankRate,
    derive: deriveSeparatorRate,
    applies: hasSeparatorRate,
  },
  {
    id: 'waterVolume',
    unit: 'm3',
    inputs: ['supplyTank.level', 'separator.level', 'tank.<id>.level'],
    siteFigures: ['tanks.supplyArea', 'tanks.separatorArea'],
    formula: 'V = Σ A·L',
    source: 'definition',
    equation: tankVolume,
    derive: deriveWaterVolume,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterVolume',
    unit: 'm3',
    inputs: ['waterVolume'],
    formula: 'V_loop = Σ V of all units on the loop',
    source: 'definition',
    equation: tankVolume,
    derive: deriveLoopWaterVolume,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterRate',
    unit: 'm3/s',
    inputs: ['supplyTankRate', 'separatorRate'],
    formula: 'dV_loop/dt = Σ dV/dt of the tanks of all units on the loop',
    source: water,
    equation: tankRate,
    derive: deriveLoopWaterRate,
    applies: hasWaterVolume,
  },
  {
    id: 'loopWaterTrend',
    unit: 'm3/s',
    inputs: ['loopWaterVolume', 'topUp.volume'],
    formula: 'median of the slopes of all pairs of hourly means of V_loop − V_topUp, over a day',
    source: 'Sen, J. Am. Stat. Assoc. 63 (1968) 1379',
    equation: theilSenSlope,
    derive: deriveLoopWaterTrend,
    applies: hasWaterVolume,
  },
  {
    id: 'topUpRate',
    unit: 'm3/s',
    inputs: ['topUp.volume'],
    formula: 'q = ΔV/Δt of the last ten minutes',
    source: 'definition',
    equation: counted,
    derive: deriveTopUpRate,
    applies: hasTopUp,
  },
  {
    id: 'exhaustWaterLoss',
    unit: 'm3/s',
    inputs: ['vacuum.exhaustFlow or vacuum.speed', 'vacuum.bleedFlow', 'separator.pressure', 'return.temperature'],
    formula: 'q_w = M_w/ρ·p_free·q_gas/(R·T_free)·p_v/(p − p_v)',
    source: 'Dalton’s law, ideal gas; the gas leaves saturated over the water',
    choice: dryGasSource,
    equation: exhaustWater,
    derive: deriveExhaustWaterLoss,
    applies: hasExhaustWaterLoss,
  },
  {
    id: 'waterBalance',
    unit: 'm3/s',
    inputs: ['loopWaterVolume', 'topUp.volume', 'exhaustWaterLoss'],
    siteFigures: ['volumes.water'],
    formula: 'median slope over a day of V_loop − V_topUp + V_exhaust, of all units on the loop',
    source: `${water}; Sen, J. Am. Stat. Assoc. 63 (1968) 1379`,
    equation: waterBalance,
    derive: deriveWaterBalance,
    applies: hasWaterBalance,
  },
  {
    id: 'waterBalanceSignificance',
    unit: '1',
    inputs: ['waterBalance'],
    formula: 'z = q/u(q)',
    source: 'JCGM 100:2008 (GUM), 6.3.3',
    equation: waterBalanceSignificance,
    derive: deriveWaterBalanceSignificance,
    applies: hasWaterBalance,
  },
  {
    id: 'timeToEmpty',
    unit: 's',
    inputs: ['supplyTank.level', 'supplyTankRate'],
    siteFigures: ['volumes.supplyTankUsable', 'tanks.supplyUsualLevel', 'tanks.supplyArea'],
    formula: 't = V_usable ÷ −dV/dt',
    source: water,
    equation: timeUntilGone,
    derive: deriveTimeToEmpty,
    applies: hasTimeToEmpty,
  },
  {
    id: 'timeToFull',
    unit: 's',
    inputs: ['separator.level', 'separatorRate', 'loopWaterTrend'],
    siteFigures: ['volumes.separatorRoom', 'tanks.separatorUsualLevel', 'tanks.separatorArea'],
    formula: 't = V_room ÷ dV/dt, by the last minute, or by the day',
    source: water,
    equation: timeUntilGone,
    derive: deriveTimeToFull,
    applies: hasTimeToFull,
  },
];
