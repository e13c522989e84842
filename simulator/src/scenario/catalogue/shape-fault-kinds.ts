import type { FleetUnit } from '../demo-fleet';
import { shapeFaultKinds, shapeFaultTable } from '../shape-faults';
import { sizeChoice, type ScenarioKind } from './scenario-kind';

export const shapeKinds = (fleet: readonly FleetUnit[]): readonly ScenarioKind[] =>
  shapeFaultKinds
    .map((fault): ScenarioKind => {
      const { title, about, fits } = shapeFaultTable[fault];
      const units = fleet.filter(fits).map(({ id }) => id);
      return { id: fault, title, kind: 'fault', about, units, needsBranch: false, choices: [sizeChoice] };
    })
    .filter(({ units }) => units.length > 0);
