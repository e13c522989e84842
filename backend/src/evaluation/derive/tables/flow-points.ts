import { npshAvailable } from '@ebbline/shared/hydraulics/npsh';
import { pumpEfficiency } from '@ebbline/shared/hydraulics/pump-power';
import { flowOfPressure, flowShare, relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveBranchFlowShare, hasBranchShares } from '../points/branch-flow-share';
import { deriveFilterResistance, hasFilterResistance } from '../points/filter-resistance';
import {
  deriveExpectedFlow,
  deriveFlowShare,
  deriveLoopResistance,
  hasFlowShare,
  hasLoopLoss,
} from '../points/flow-shares';
import { deriveNpshAvailable, hasNpsh } from '../points/npsh-available';
import { derivePumpEfficiency, hasPumpEfficiency } from '../points/pump-efficiency';

/** Flows against what commissioning found, filter and pump. */
export const flowPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'npshAvailable',
    unit: 'm',
    inputs: ['pump.inlet.pressure, or else separator.pressure and loop.flow', 'return.temperature'],
    equation: npshAvailable,
    derive: deriveNpshAvailable,
    applies: hasNpsh,
  },
  {
    id: 'expectedFlow',
    unit: 'm3/s',
    inputs: ['drivingPressure', 'branch.<id>.isolated'],
    equation: flowOfPressure,
    derive: deriveExpectedFlow,
    applies: hasLoopLoss,
  },
  {
    id: 'flowShare',
    unit: '1',
    inputs: ['loop.flow', 'expectedFlow'],
    equation: flowShare,
    derive: deriveFlowShare,
    applies: hasFlowShare,
  },
  {
    id: 'loopResistance',
    unit: '1',
    inputs: ['drivingPressure', 'loop.flow'],
    equation: relativeResistance,
    derive: deriveLoopResistance,
    applies: hasFlowShare,
  },
  {
    id: 'branch.<id>.flowShare',
    unit: '1',
    inputs: ['branch.<id>.flow', 'loop.flow', 'branch.<id>.isolated'],
    equation: flowShare,
    derive: deriveBranchFlowShare,
    applies: hasBranchShares,
  },
  {
    id: 'filterResistance',
    unit: '1',
    inputs: ['filter.pressureDrop', 'transfer.flow or loop.flow', 'pump.running'],
    equation: relativeResistance,
    derive: deriveFilterResistance,
    applies: hasFilterResistance,
  },
  {
    id: 'pumpEfficiency',
    unit: '1',
    inputs: [
      'pump.power',
      'pump.discharge.pressure',
      'pump.inlet.pressure or separator.pressure',
      'transfer.flow or loop.flow',
    ],
    equation: pumpEfficiency,
    derive: derivePumpEfficiency,
    applies: hasPumpEfficiency,
  },
];
