import { alternatingTankGas } from '@ebbline/shared/hydraulics/alternating-tank-gas';
import { equivalentHole } from '@ebbline/shared/hydraulics/equivalent-hole';
import { pressureRise } from '@ebbline/shared/hydraulics/pressure-rise';
import { largestOpeningCarried, openingsCarried, vacuumReserve } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { gasLoadBySpeed } from '@ebbline/shared/hydraulics/vacuum-suction';
import type { DerivedPointOfUnit } from '../derived-point';
import {
  deriveEquivalentHole,
  deriveEquivalentHoleSupply,
  hasEquivalentHole,
  hasEquivalentHoleSupply,
} from '../points/equivalent-hole';
import { deriveGasAllowance, deriveInLeak, hasGasAllowance } from '../points/in-leak';
import {
  deriveLargestOpening,
  deriveOpeningsCarried,
  deriveOpeningsCarriedAll,
  hasOpenings,
} from '../points/openings-carried';
import { deriveVacuumCapacity, hasVacuumCapacity } from '../points/vacuum-capacity';
import { deriveVacuumReserve, deriveVacuumReserveAll } from '../points/vacuum-reserve';
import { dryGasSource } from './vapour-pressure-choice';

/** What the gas that is taken away, and the gas that collects meanwhile, rest on. */
const gas = [
  'vacuum.exhaustFlow or vacuum.speed',
  'vacuum.bleedFlow',
  'vacuum.running',
  'vacuum.standby.running',
  'separator.pressure',
  'return.temperature',
  'separator.level',
];
const opening = 'choked orifice and isentropic flow: NACA Report 1135 (1953)';
const throughput = 'throughput of a vacuum pump with Dalton’s law: ISO 21360-1:2020 (from memory)';

/** Gas, what may come of it, and what the vacuum source has left. */
export const airPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'gasAllowance',
    unit: 'm3/s',
    inputs: ['loop.flow', 'supplyTank.pressure or supply.pressure', 'separator.pressure', 'topUp.volume'],
    siteFigures: ['commissioning.gasLoad'],
    formula:
      'q_allowed = q_commissioned + q_fill + q_permits, and with alternating tanks + q·(p_discharge − p_fill)/p_free',
    source: 'own rule; dissolved air after Weiss, Deep-Sea Research 17 (1970) 721; ideal gas law',
    equation: alternatingTankGas,
    derive: deriveGasAllowance,
    applies: hasGasAllowance,
  },
  {
    id: 'inLeak',
    unit: 'm3/s',
    inputs: [...gas, 'gasAllowance'],
    siteFigures: ['volumes.separatorGas', 'tanks.separatorArea', 'tanks.separatorUsualLevel', 'commissioning.gasLoad'],
    formula: 'q_in = q_removed + d[(p − p_v)·V]/dt·T_free/(p_free·T) − (q_allowed − q_permits)',
    source: 'pressure-rise method: 40 CFR 1065.644; Dalton’s law',
    choice: dryGasSource,
    equation: pressureRise,
    derive: deriveInLeak,
    applies: hasGasAllowance,
  },
  {
    id: 'equivalentHole',
    unit: 'm',
    inputs: ['inLeak', 'separator.pressure', 'ambient.pressure', 'hall.temperature'],
    siteFigures: ['openingDischargeCoefficient'],
    formula: 'd = √(4·A/π), A = ṁ·√T₀/(0.0404·C_d·p_amb) where p ≤ 0.528·p_amb, else by isentropic flow',
    source: opening,
    equation: equivalentHole,
    derive: deriveEquivalentHole,
    applies: hasEquivalentHole,
  },
  {
    id: 'equivalentHoleSupply',
    unit: 'm',
    inputs: ['inLeak', 'supplyTank.pressure or supply.pressure', 'ambient.pressure', 'hall.temperature'],
    siteFigures: ['openingDischargeCoefficient'],
    formula: 'd = √(4·A/π), A = ṁ/(C_d·p_amb·√{2κ/[(κ−1)·R·T₀]·[r^(2/κ) − r^((κ+1)/κ)]}), r = p/p_amb',
    source: opening,
    equation: equivalentHole,
    derive: deriveEquivalentHoleSupply,
    applies: hasEquivalentHoleSupply,
  },
  {
    id: 'vacuumCapacity',
    unit: 'm3/s',
    inputs: ['separator.pressure', 'return.temperature', 'vacuum.sealWater.temperature'],
    siteFigures: ['vacuumSource.sealWaterTemperature'],
    formula: 'q_max = S(p)·(p − p_v)/p_free·T_free/T, S by the site’s curve, times (p − p_v,seal)/(p − p_v,curve)',
    source: throughput,
    choice: dryGasSource,
    equation: gasLoadBySpeed,
    derive: deriveVacuumCapacity,
    applies: hasVacuumCapacity,
  },
  {
    id: 'vacuumReserve',
    unit: 'm3/s',
    inputs: ['vacuumCapacity', ...gas],
    formula: 'q_reserve = q_max − q_coming, of one source',
    source: throughput,
    equation: vacuumReserve,
    derive: deriveVacuumReserve,
    applies: hasVacuumCapacity,
  },
  {
    id: 'vacuumReserveAll',
    unit: 'm3/s',
    inputs: ['vacuumCapacity', 'vacuum.available', 'vacuum.trap.full', ...gas],
    siteFigures: ['vacuumSource.count'],
    formula:
      'q_reserve = n·q_max − q_coming; n: sources, less a standby that is not available and does not run, less one with a full trap',
    source: throughput,
    equation: vacuumReserve,
    derive: deriveVacuumReserveAll,
    applies: hasVacuumCapacity,
  },
  {
    id: 'openingsCarried',
    unit: '1',
    inputs: ['vacuumReserve', 'vacuum.trap.full', 'ambient.pressure', 'hall.temperature', 'separator.pressure'],
    siteFigures: ['hoseBore', 'openingDischargeCoefficient'],
    formula: 'n = q_reserve ÷ q_hose, q_hose = 0.0404·C_d·A·p_amb/(ρ_free·√T₀) where choked; 0 with a full trap',
    source: opening,
    equation: openingsCarried,
    derive: deriveOpeningsCarried,
    applies: hasOpenings,
  },
  {
    id: 'openingsCarriedAll',
    unit: '1',
    inputs: ['vacuumReserveAll', 'ambient.pressure', 'hall.temperature', 'separator.pressure'],
    siteFigures: ['hoseBore', 'openingDischargeCoefficient'],
    formula: 'n = q_reserve ÷ q_hose, q_hose = 0.0404·C_d·A·p_amb/(ρ_free·√T₀) where choked',
    source: opening,
    equation: openingsCarried,
    derive: deriveOpeningsCarriedAll,
    applies: hasOpenings,
  },
  {
    id: 'largestOpeningCarried',
    unit: 'm',
    inputs: ['vacuumReserve', 'vacuum.trap.full', 'ambient.pressure', 'hall.temperature', 'separator.pressure'],
    siteFigures: ['openingDischargeCoefficient'],
    formula: 'd = √(4·A/π), A = S(p)·(p − p_v)·√T₀/(0.0404·C_d·p_amb·R·T) where choked; 0 with a full trap',
    source: opening,
    equation: largestOpeningCarried,
    derive: deriveLargestOpening,
    applies: hasVacuumCapacity,
  },
];
