import { addPower } from '@ebbline/shared/heat/add-power';
import { approach } from '@ebbline/shared/heat/approach';
import { capture } from '@ebbline/shared/heat/capture';
import { dewPointMargin } from '@ebbline/shared/heat/dew-point-margin';
import { heatRate } from '@ebbline/shared/heat/heat-rate';
import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { supplyMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { npshMargin } from '@ebbline/shared/hydraulics/npsh';
import { boilingMargin, drivingPressure, vacuumMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { gasLoadBySpeed } from '@ebbline/shared/hydraulics/vacuum-suction';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveApproach } from '../points/approach';
import { deriveBoilingMargin } from '../points/boiling-margin';
import { deriveCapture } from '../points/capture';
import { deriveChipPower } from '../points/chip-power';
import { deriveDewPointMargin } from '../points/dew-point-margin';
import { deriveDrivingPressure } from '../points/driving-pressure';
import { deriveGasLoad } from '../points/gas-load';
import { deriveBranchHeat, deriveHeatRemoved } from '../points/heat-removed';
import { deriveLowerWallMargin } from '../points/lower-wall-margin';
import { deriveMassFlow } from '../points/mass-flow';
import { deriveNodePressures, deriveNodePressuresStopped } from '../points/node-pressures';
import { deriveVacuumMargin, deriveVacuumMarginWorst } from '../points/vacuum-margins';
import { dryGasSource, vapourPressureSource } from './vapour-pressure-choice';

const nodePressures = [
  'supplyTank.pressure or supply.pressure',
  'separator.pressure or return.pressure',
  'supply.temperature',
  'return.temperature',
  'loop.flow',
];

/** Heat, margins, driving pressure and gas load: what every loop is looked at by. */
export const loopPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'massFlow',
    unit: 'kg/s',
    inputs: ['loop.flow', 'supply.temperature or return.temperature'],
    formula: 'q_m = ρ(T_meter)·q',
    source: 'mass balance',
    equation: massFlow,
    derive: deriveMassFlow,
  },
  {
    id: 'heatRemoved',
    unit: 'W',
    inputs: ['loop.flow', 'supply.temperature', 'return.temperature'],
    siteFigures: ['volumes.supplyToReturn', 'transit.platesToReturn', 'transit.storedHeat', 'transit.spread'],
    formula:
      'Q = ρ·q·c_p·(T_return − T_supply), with the flow at the plates and the supply temperature of the water that returns now: V + C/(ρ·c_p) of passed water ago',
    source: 'first law, steady flow; alignment by passed volume: own rule',
    equation: heatRate,
    derive: deriveHeatRemoved,
  },
  {
    id: 'branch.<id>.heatRemoved',
    unit: 'W',
    inputs: ['branch.<id>.flow', 'supply.temperature', 'branch.<id>.return.temperature'],
    formula: 'Q = ρ·q·c_p·(T_return − T_supply), with the supply temperature of the water that leaves the plates now',
    source: 'first law, steady flow; alignment by passed volume: own rule',
    equation: heatRate,
    derive: deriveBranchHeat,
  },
  {
    id: 'chipPower',
    unit: 'W',
    inputs: ['branch.<id>.power or plate.<id>.power'],
    formula: 'P = Σ P_i',
    source: 'definition',
    equation: addPower,
    derive: deriveChipPower,
  },
  {
    id: 'capture',
    unit: '1',
    inputs: ['heatRemoved', 'chipPower'],
    siteFigures: ['transit.platesToReturn', 'transit.plateLag', 'transit.sensorLag'],
    formula:
      'Q ÷ P, with the power of the chips when the water that returns now passed the plates, behind the lags of plate and sensor',
    source: 'definition; first-order lag, Incropera eq. 5.6; alignment by passed volume: own rule',
    equation: capture,
    derive: deriveCapture,
  },
  {
    id: 'approach',
    unit: 'K',
    inputs: ['supply.temperature', 'facility.supply.temperature'],
    formula: 'T_supply − T_facility,supply',
    source: 'definition',
    equation: approach,
    derive: deriveApproach,
  },
  {
    id: 'node.<id>.pressure',
    unit: 'Pa',
    inputs: nodePressures,
    formula:
      'p(z) = p_a + ρ·g·(z_a − z) ∓ Δp_r·(q/q_r)²: − on the supply main, from the supply tank; + on the return main, to the separator',
    source:
      'Bernoulli with losses (Darcy–Weisbach, constant friction factor); ρ at the temperature of the leg, IAPWS SR6-08',
    equation: supplyMainPressure,
    derive: deriveNodePressures,
  },
  {
    id: 'node.<id>.pressureStopped',
    unit: 'Pa',
    inputs: nodePressures.filter((id) => id !== 'loop.flow'),
    formula: 'p(z) = p_a + ρ·g·(z_a − z)',
    source: 'hydrostatics; ρ at the temperature of the leg, IAPWS SR6-08',
    equation: supplyMainPressure,
    derive: deriveNodePressuresStopped,
  },
  {
    id: 'vacuumMargin',
    unit: 'Pa',
    inputs: ['ambient.pressure', ...nodePressures],
    siteFigures: ['elevations.supplyTankSurface', 'elevations.returnInlet', 'elevations.accuracy', 'ratedFlow'],
    formula: 'p_amb − max(p_anchor − ρ·g·(z − z_anchor) ± Δp_loss)',
    source: 'Bernoulli with losses; own rule for the places',
    equation: vacuumMargin,
    derive: deriveVacuumMargin,
  },
  {
    id: 'vacuumMarginWorst',
    unit: 'Pa',
    inputs: ['ambient.pressure', ...nodePressures],
    siteFigures: ['elevations.supplyTankSurface', 'elevations.returnInlet', 'elevations.accuracy', 'ratedFlow'],
    formula: 'p_amb − max(p_running, p_stopped), p = p_anchor − ρ·g·(z − z_anchor) ± Δp_loss',
    source: 'Bernoulli with losses; own rule for the worse state',
    equation: vacuumMargin,
    derive: deriveVacuumMarginWorst,
  },
  {
    id: 'boilingMargin',
    unit: 'Pa',
    inputs: nodePressures,
    siteFigures: ['elevations.supplyTankSurface', 'elevations.returnInlet', 'elevations.accuracy', 'ratedFlow'],
    formula: 'min(p − p_v(T))',
    source: 'Bernoulli with losses',
    choice: vapourPressureSource,
    equation: boilingMargin,
    derive: deriveBoilingMargin,
  },
  {
    id: 'lowerWallMargin',
    unit: 'Pa',
    inputs: [...nodePressures, 'pump.inlet.pressure', 'plate.<id>.power'],
    siteFigures: [
      'elevations.returnInlet',
      'elevations.accuracy',
      'pump.npshLimit',
      'plateWallResistance',
      'ratedFlow',
    ],
    formula: 'nearest of p − p_v(T), ρ·g·(NPSH − limit), p − p_v(T_wall)',
    source: 'own rule; ISO 9906:2012',
    choice: vapourPressureSource,
    equation: npshMargin,
    derive: deriveLowerWallMargin,
  },
  {
    id: 'drivingPressure',
    unit: 'Pa',
    inputs: nodePressures.slice(0, 4),
    siteFigures: ['elevations.supplyTankSurface', 'elevations.returnInlet', 'elevations.accuracy'],
    formula: 'p_supply + ρ·g·z_supply − p_return − ρ·g·z_return',
    source: 'Bernoulli',
    equation: drivingPressure,
    derive: deriveDrivingPressure,
  },
  {
    id: 'gasLoad',
    unit: 'm3/s',
    inputs: [
      'vacuum.exhaustFlow or vacuum.speed or vacuum.running',
      'vacuum.bleedFlow',
      'vacuum.running',
      'vacuum.standby.running',
      'separator.pressure',
      'return.temperature',
    ],
    siteFigures: ['volumes.separatorGas'],
    formula: 'exhaust − bleed, or s·S(p)·(p − p_v) as free air, or d(p·V)/dt of a pause',
    source: 'Dalton and ideal gas law; best first is own rule',
    choice: dryGasSource,
    equation: gasLoadBySpeed,
    derive: deriveGasLoad,
  },
  {
    id: 'dewPointMargin',
    unit: 'K',
    inputs: ['supply.temperature', 'facility.supply.temperature', 'dewPoint'],
    formula: 'min(T_supply, T_facility,supply) − T_dew',
    source: 'definition',
    equation: dewPointMargin,
    derive: deriveDewPointMargin,
  },
];
