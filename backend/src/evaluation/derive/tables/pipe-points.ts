import { frictionLoss } from '@ebbline/shared/hydraulics/pipe-friction';
import { headRatio } from '@ebbline/shared/hydraulics/pump-affinity';
import { pumpHydraulicPower } from '@ebbline/shared/hydraulics/pump-power';
import { flowShare, relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import { meanVelocity, velocityShare } from '@ebbline/shared/hydraulics/velocity';
import { vacuumMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveBranchVacuumMargin, hasBranchPressure } from '../points/branch-vacuum-margin';
import { velocityLimitSource } from '../pipe-plan';
import { deriveBranchResistance, hasBranchResistance } from '../points/branch-resistance';
import {
  derivePumpEfficiencyRatio,
  derivePumpHeadRatio,
  derivePumpPower,
  hasPumpEfficiencyRatio,
  hasPumpHeadRatio,
  hasPumpPower,
} from '../points/pump-figures';
import {
  deriveMainFriction,
  deriveMainVelocity,
  deriveMainVelocityShare,
  deriveManifoldShare,
  deriveManifoldVelocity,
  hasMainFriction,
  hasMainVelocity,
  hasMainVelocityShare,
  hasManifoldShare,
  hasManifoldVelocity,
} from '../points/velocities';

const pressures = [
  'pump.discharge.pressure',
  'pump.inlet.pressure or separator.pressure',
  'transfer.flow or loop.flow',
];
const permissible = 'own rule; what is permissible at the temperature of the water, against erosion corrosion';

/** What the pump gives, and what pipes do to the water. */
export const pipePoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'pumpHydraulicPower',
    unit: 'W',
    inputs: pressures,
    formula: 'P = q·(p_discharge − p_inlet)',
    source: 'ISO 9906:2012, pump power output, with equal heights and bores',
    equation: pumpHydraulicPower,
    derive: derivePumpPower,
    applies: hasPumpPower,
  },
  {
    id: 'pumpHeadRatio',
    unit: '1',
    inputs: [...pressures, 'pump.speed'],
    siteFigures: ['commissioning.pump.flow', 'commissioning.pump.speed', 'commissioning.pump.rise'],
    formula: 'Δp ÷ (Δp₀·(n/n₀)²), while q/n is within 5 % of q₀/n₀',
    source: 'ISO 9906:2012, conversion to another speed',
    equation: headRatio,
    derive: derivePumpHeadRatio,
    applies: hasPumpHeadRatio,
  },
  {
    id: 'pumpEfficiencyRatio',
    unit: '1',
    inputs: ['pumpEfficiency', 'pump.speed', 'transfer.flow or loop.flow'],
    siteFigures: ['commissioning.pump.flow', 'commissioning.pump.speed', 'commissioning.pumpEfficiency'],
    formula: 'η ÷ η₀, while q/n is within 5 % of q₀/n₀',
    source: 'ISO 9906:2012, overall efficiency, compared at equal flow over speed',
    equation: flowShare,
    derive: derivePumpEfficiencyRatio,
    applies: hasPumpEfficiencyRatio,
  },
  {
    id: 'mainVelocity',
    unit: 'm/s',
    inputs: ['loop.flow'],
    siteFigures: ['mains.bore'],
    formula: 'v = q ÷ (π·D²/4)',
    source: 'continuity',
    equation: meanVelocity,
    derive: deriveMainVelocity,
    applies: hasMainVelocity,
  },
  {
    id: 'mainVelocityShare',
    unit: '1',
    inputs: ['mainVelocity', 'return.temperature'],
    formula: 'v ÷ v_permissible(T_return)',
    source: permissible,
    choice: velocityLimitSource,
    equation: velocityShare,
    derive: deriveMainVelocityShare,
    applies: hasMainVelocityShare,
  },
  {
    id: 'mainFrictionLoss',
    unit: 'Pa',
    inputs: ['loop.flow', 'supply.temperature', 'return.temperature'],
    siteFigures: ['mains.bore', 'mains.length', 'mains.roughness'],
    formula: 'Δp = f·(L/D)·ρ·v²/2, 1/√f = −2·log₁₀(ε/(3.7·D) + 2.51/(Re·√f)), or f = 64/Re below Re 2,300',
    source: 'Darcy–Weisbach; Colebrook (1939); Hagen–Poiseuille',
    equation: frictionLoss,
    derive: deriveMainFriction,
    applies: hasMainFriction,
  },
  {
    id: 'branch.<id>.vacuumMargin',
    unit: 'Pa',
    inputs: ['ambient.pressure', 'branch.<id>.return.pressure'],
    formula: 'p_amb − p_branch, at the branch’s own sensor',
    source: 'definition; while the branch is isolated no margin of the loop holds for it: own rule',
    equation: vacuumMargin,
    derive: deriveBranchVacuumMargin,
    applies: hasBranchPressure,
  },
  {
    id: 'branch.<id>.resistanceRatio',
    unit: '1',
    inputs: ['drivingPressure', 'branch.<id>.flow', 'branch.<id>.isolated'],
    formula: '(Δp_driving ÷ Δp₀) ÷ (q ÷ q₀)ⁿ',
    source: 'Darcy–Weisbach with a constant friction factor (n = 2), n by the commissioning record',
    equation: relativeResistance,
    derive: deriveBranchResistance,
    applies: hasBranchResistance,
  },
  {
    id: 'branch.<id>.manifoldVelocity',
    unit: 'm/s',
    inputs: ['branch.<id>.flow'],
    formula: 'v = q ÷ A',
    source: 'continuity',
    equation: meanVelocity,
    derive: deriveManifoldVelocity,
    applies: hasManifoldVelocity,
  },
  {
    id: 'branch.<id>.manifoldVelocityShare',
    unit: '1',
    inputs: ['branch.<id>.manifoldVelocity', 'branch.<id>.return.temperature or return.temperature'],
    formula: 'v ÷ v_permissible(T_return)',
    source: permissible,
    choice: velocityLimitSource,
    equation: velocityShare,
    derive: deriveManifoldShare,
    applies: hasManifoldShare,
  },
];
