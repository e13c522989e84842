import type { BranchShare } from '@ebbline/shared/contract/live-feed';
import { pointDefinition } from '@ebbline/shared/contract/point-table';
import type { BranchFigure, Lead } from '../../components/leads';
import type { Places } from '../../components/places';

const words: { readonly [F in BranchFigure]: string } = {
  flow: 'flow',
  flowShare: 'share of the expected flow',
  heatRemoved: 'heat',
  returnTemperature: 'return temperature',
  returnPressure: 'return pressure',
  vacuumMargin: 'pressure below ambient',
  hottestPlate: 'hottest plate',
};

/** The point behind a figure of a branch; null where there is none. */
function pointOf(branch: Pick<BranchShare, 'id' | 'hottestPlateId'>, what: BranchFigure): string | null {
  switch (what) {
    case 'hottestPlate':
      return branch.hottestPlateId === null ? null : `plate.${branch.hottestPlateId}.temperature`;
    case 'returnTemperature':
      return `branch.${branch.id}.return.temperature`;
    case 'returnPressure':
      return `branch.${branch.id}.return.pressure`;
    default:
      return `branch.${branch.id}.${what}`;
  }
}

/** Whereto a point leads: one that is worked out opens to its grounds, a measured one to its trend. @param whose what it is, for who listens */
export function leadOf(places: Places, unit: string, point: string, whose: string): Lead {
  return pointDefinition(point)?.kind === 'derived'
    ? { to: places.value(unit, point), hint: `what stands behind ${whose}`, look: 'opens' }
    : { to: places.trend([{ unit, point }]), hint: `trend of ${whose}`, look: 'fact-value' };
}

/** Whereto a figure of a branch leads; null where no point stands behind it. */
export function leadOfBranch(
  places: Places,
  unit: string,
  branch: Pick<BranchShare, 'id' | 'name' | 'hottestPlateId'>,
  what: BranchFigure,
): Lead | null {
  const point = pointOf(branch, what);
  return point === null ? null : leadOf(places, unit, point, `${words[what]} of ${branch.name}`);
}
