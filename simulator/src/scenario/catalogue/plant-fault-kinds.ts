import { faultKinds, type FaultKind } from '../../faults/fault';
import { faultTable } from '../../faults/fault-table';
import type { FleetUnit } from '../demo-fleet';
import { directionChoice, sizeChoice, type Choice, type ScenarioKind } from './scenario-kind';

const checkValve: Choice = {
  key: 'checkValve',
  title: 'inlet check valve',
  values: ['good', 'stuckOpen'],
  usual: 'good',
};
const choices: Partial<Record<FaultKind, readonly Choice[]>> = {
  cutServerHose: [checkValve],
  loadStep: [directionChoice],
};
const about: Partial<Record<FaultKind, string>> = {
  cutServerHose: 'one server’s hose lies open: room air goes into the rack’s return',
  slowInLeak: 'a fitting on the receiver lets room air in',
  facilityFlowLost: 'the building’s water stops',
  loadStep: 'all racks take on or drop work at once',
  connectionLost: 'the gateway loses its line to the broker; the plant runs on',
};

export const plantKinds = (fleet: readonly FleetUnit[]): readonly ScenarioKind[] =>
  faultKinds.map((fault): ScenarioKind => {
    const { title, inRack } = faultTable[fault];
    return {
      id: fault,
      title,
      kind: 'fault',
      about: about[fault] ?? title,
      units: fleet.map(({ id }) => id),
      needsBranch: inRack,
      choices: [sizeChoice, ...(choices[fault] ?? [])],
    };
  });
