import { splitPoint } from '@ebbline/shared/contract/point-table';
import type { Reading } from '@ebbline/shared/contract/reading';

export interface PointGroup {
  readonly id: 'derived' | 'measured' | 'nodes' | 'branches' | 'servers' | 'plates' | 'tanks';
  readonly title: string;
  readonly points: readonly Reading[];
}

const groups: readonly Pick<PointGroup, 'id' | 'title'>[] = [
  { id: 'derived', title: 'Derived' },
  { id: 'measured', title: 'Measured at the unit and in the hall' },
  { id: 'nodes', title: 'Wetted places' },
  { id: 'tanks', title: 'Tanks' },
  { id: 'branches', title: 'Branches' },
  { id: 'servers', title: 'Servers' },
  { id: 'plates', title: 'Plates' },
];

/** How sure a power is, kept in history for its energy: it stands beside the power's own value already. */
const isUncertaintyOf = /^(heatRemoved|facilityHeat|chipPower)Uncertainty$/;

const groupOfPart = { node: 'nodes', branch: 'branches', server: 'servers', plate: 'plates', tank: 'tanks' } as const;

function groupOf(point: Reading): PointGroup['id'] {
  const part = splitPoint(point.id);
  return part === null ? point.kind : groupOfPart[part.group];
}

/** Points by where they belong, in the order they came; groups without points are left out. */
export function groupPoints(points: readonly Reading[]): readonly PointGroup[] {
  return groups
    .map((group) => ({
      ...group,
      points: points.filter((point) => groupOf(point) === group.id && !isUncertaintyOf.test(point.id)),
    }))
    .filter((group) => group.points.length > 0);
}
