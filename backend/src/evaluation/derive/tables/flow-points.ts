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
    inputs: ['pump.inlet.pressure or separator.pressure', 'loop.flow', 'return.temperature'],
    siteFigures: ['elevations.separatorSurface', 'elevations.pumpInlet', 'elevations.accuracy', 'pump.suctionLoss'],
    formula: 'NPSH = (p_inlet − p_v) / (ρ·g)',
    source: 'ISO 9906:2012, without velocity head',
    equation: npshAvailable,
    derive: deriveNpshAvailable,
    applies: hasNpsh,
  },
  {
    id: 'expectedFlow',
    unit: 'm3/s',
    inputs: ['drivingPressure', 'branch.<id>.isolated'],
    siteFigures: ['ratedFlow', 'commissioning.loop.loss', 'commissioning.loop.exponent'],
    formula: 'q = q₀·(Δp/Δp₀)^(1/n)',
    source: 'Darcy–Weisbach, turned round; commissioned resistance',
    equation: flowOfPressure,
    derive: deriveExpectedFlow,
    applies: hasLoopLoss,
  },
  {
    id: 'flowShare',
    unit: '1',
    inputs: ['loop.flow', 'expectedFlow'],
    siteFigures: ['ratedFlow'],
    formula: 'q / q_expected',
    source: 'own rule',
    equation: flowShare,
    derive: deriveFlowShare,
    applies: hasFlowShare,
  },
  {
    id: 'loopResistance',
    unit: '1',
    inputs: ['drivingPressure', 'loop.flow'],
    siteFigures: ['ratedFlow', 'commissioning.loop.loss', 'commissioning.loop.exponent'],
    formula: '(Δp/Δp₀) / (q/q₀)^n',
    source: 'Darcy–Weisbach; commissioned resistance',
    equation: relativeResistance,
    derive: deriveLoopResistance,
    applies: hasFlowShare,
  },
  {
    id: 'branch.<id>.flowShare',
    unit: '1',
    inputs: ['branch.<id>.flow', 'loop.flow', 'branch.<id>.isolated'],
    siteFigures: ['ratedFlow'],
    formula: 'q_branch / (q·q₀,branch / Σ q₀,open)',
    source: 'own rule',
    equation: flowShare,
    derive: deriveBranchFlowShare,
    applies: hasBranchShares,
  },
  {
    id: 'filterResistance',
    unit: '1',
    inputs: ['filter.pressureDrop', 'transfer.flow or loop.flow', 'pump.running', 'pump.standby.running'],
    siteFigures: ['ratedFlow', 'commissioning.filter.loss', 'commissioning.filter.exponent'],
    formula: '(Δp/Δp₀) / (q/q₀)^n',
    source: 'Darcy–Weisbach; commissioned resistance',
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
    siteFigures: ['ratedFlow'],
    formula: 'η = q·(p_discharge − p_inlet) / P',
    source: 'ISO 9906:2012, overall efficiency',
    equation: pumpEfficiency,
    derive: derivePumpEfficiency,
    applies: hasPumpEfficiency,
  },
];
