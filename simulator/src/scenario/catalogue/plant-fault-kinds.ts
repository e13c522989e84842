import { faultKinds, type FaultKind } from '../../faults/fault';
import { faultTable } from '../../faults/fault-table';
import type { FleetUnit } from '../demo-fleet';
import { plantFaultAbout } from './plant-fault-about';
import { directionChoice, freeAirChoice, sizeChoice, type Choice, type ScenarioKind } from './scenario-kind';

const checkValve: Choice = {
  key: 'checkValve',
  title: 'inlet check valve',
  values: ['good', 'stuckOpen'],
  usual: 'good',
};
const choices: Partial<Record<FaultKind, readonly Choice[]>> = {
  cutServerHose: [checkValve, freeAirChoice],
  loadStep: [directionChoice],
};

/** A part that a shape has not cannot fail. */
const absentIn: Readonly<Record<FleetUnit['shape'], readonly FaultKind[]>> = {
  a: [],
  b: ['pumpHeadLoss', 'pumpTrip', 'filterLoading'],
  c: ['ventStuck'],
};
/** Units of a shared loop have no large openings: their spills are not modelled. */
const absentOnSharedLoop: readonly FaultKind[] = ['cutRackMain'];

/** The barometer is the site's: there it is called a deep low. */
const ofUnits = faultKinds.filter((fault) => fault !== 'ambientFall');

const canHave = (unit: FleetUnit, fault: FaultKind): boolean =>
  !absentIn[unit.shape].includes(fault) && !(unit.loop !== null && absentOnSharedLoop.includes(fault));

export const plantKinds = (fleet: readonly FleetUnit[]): readonly ScenarioKind[] =>
  ofUnits.map((fault): ScenarioKind => {
    const { title, inRack, options } = faultTable[fault];
    return {
      id: fault,
      title,
      kind: 'fault',
      about: plantFaultAbout[fault],
      units: fleet.filter((unit) => canHave(unit, fault)).map(({ id }) => id),
      needsBranch: inRack,
      choices: [sizeChoice, ...(choices[fault] ?? []), ...(options ? [optionOf(options)] : [])],
    };
  });

const optionOf = (options: readonly string[]): Choice => ({
  key: 'option',
  title: 'in which way',
  values: options,
  usual: options[0] ?? '',
});
